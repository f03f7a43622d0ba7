import { type ReactNode, useEffect, useId, useRef, useState } from 'react';
import type { ReadField } from './kit-fields.ts';

/**
 * A text field that keeps what was typed. It is read when it is left or Enter is pressed; what can't be read stays,
 * with what is wrong under it, and the job keeps its last value.
 */
export function KitField<T>(props: {
  readonly label: string;
  readonly trade?: string | undefined;
  readonly hint: string;
  /** What the job holds */
  readonly shown: string | number | undefined;
  readonly read: (text: string) => ReadField<T>;
  readonly onRead: (value: T | undefined) => void;
  readonly mode?: 'decimal' | 'text' | undefined;
  readonly isWide?: boolean | undefined;
}): ReactNode {
  const { label, trade, hint, shown, read, onRead, mode = 'decimal', isWide = false } = props;
  const id = useId();
  const held = shown === undefined ? '' : String(shown);
  const [text, setText] = useState(held);
  const [wrong, setWrong] = useState<string | undefined>(undefined);
  const takenText = useRef(held);
  // Undo, or another window, changed the job: what is shown follows. What was typed here and taken stays as typed.
  const heldBefore = useRef(held);
  useEffect(() => {
    if (heldBefore.current === held) return;
    heldBefore.current = held;
    const own = read(takenText.current);
    if (own.wrong === undefined && asShown(own.value) === held.replaceAll(/\s+/g, ' ')) return;
    takenText.current = held;
    setText(held);
    setWrong(undefined);
  }, [held, read]);
  const take = (): void => {
    if (text === takenText.current && wrong === undefined) return;
    const found = read(text);
    setWrong(found.wrong);
    if (found.wrong !== undefined) return;
    takenText.current = text;
    if (asShown(found.value) !== held.replaceAll(/\s+/g, ' ')) onRead(found.value);
  };
  return (
    <div className="kit-field">
      <label htmlFor={id}>
        {label} {trade && <span className="kit-trade">{trade}</span>}
      </label>
      <input
        id={id}
        type="text"
        inputMode={mode}
        autoComplete="off"
        className={isWide ? 'kit-field-wide' : undefined}
        value={text}
        aria-invalid={wrong !== undefined}
        aria-describedby={`${id}-more`}
        onChange={(event) => setText(event.target.value)}
        onBlur={take}
        onKeyDown={(event) => {
          if (event.key === 'Enter') take();
        }}
      />
      <p id={`${id}-more`} className={wrong ? 'kit-wrong' : 'kit-hint'} role={wrong ? 'alert' : undefined}>
        {wrong ?? hint}
      </p>
    </div>
  );
}

function asShown(value: unknown): string {
  if (value === undefined) return '';
  return Array.isArray(value) ? value.join(' ') : String(value);
}
