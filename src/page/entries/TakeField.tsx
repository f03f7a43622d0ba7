import './entry.css';
import { type ReactNode, useId, useState } from 'react';

/**
 * The one large field of an act with its button. Enter takes what stands in it; the text stays as it was typed, right
 * or wrong, and what is wrong stands under it until it is typed again.
 */
export function TakeField(props: {
  readonly label: string;
  readonly text: string;
  readonly mode: 'decimal' | 'numeric';
  readonly onType: (text: string) => void;
  /** Takes the reading; returns what is wrong where it can't be taken */
  readonly onTake: () => string | undefined;
  readonly unit?: ReactNode;
  /** Further fields, between this one and the button */
  readonly children?: ReactNode;
  /** Further buttons, beside the one that takes */
  readonly beside?: ReactNode;
}): ReactNode {
  const { label, text, mode, onType, onTake, unit, children, beside } = props;
  const id = useId();
  const [wrong, setWrong] = useState<string>();
  const take = (): void => setWrong(onTake());
  return (
    <>
      <div>
        <label htmlFor={id} className="entry-label">
          {label}
        </label>
        <div className="entry-field">
          <input
            id={id}
            value={text}
            inputMode={mode}
            autoComplete="off"
            spellCheck={false}
            enterKeyHint="go"
            aria-invalid={wrong !== undefined}
            aria-describedby={wrong === undefined ? undefined : `${id}-wrong`}
            onChange={(event) => {
              setWrong(undefined);
              onType(event.currentTarget.value);
            }}
            onKeyDown={(event) => {
              if (event.key !== 'Enter' || event.nativeEvent.isComposing) return;
              event.preventDefault();
              take();
            }}
          />
          {unit}
        </div>
        <div id={`${id}-wrong`} role="status">
          {wrong === undefined ? null : <p className="entry-wrong">{wrong}</p>}
        </div>
      </div>
      {children}
      <div className="entry-row">
        <button type="button" className="next" onClick={take}>
          Take it
        </button>
        {beside}
      </div>
    </>
  );
}
