import './entry.css';
import { type ReactNode, useId } from 'react';

/** The one large field of an act. Enter takes what stands in it; the text stays as it was typed, right or wrong. */
export function Field(props: {
  readonly label: string;
  readonly text: string;
  readonly mode: 'decimal' | 'numeric' | 'text';
  readonly onType: (text: string) => void;
  readonly onTake: () => void;
  readonly wrong?: string | undefined;
  readonly unit?: ReactNode;
}): ReactNode {
  const { label, text, mode, onType, onTake, wrong, unit } = props;
  const id = useId();
  return (
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
          onChange={(event) => onType(event.currentTarget.value)}
          onKeyDown={(event) => {
            if (event.key !== 'Enter' || event.nativeEvent.isComposing) return;
            event.preventDefault();
            onTake();
          }}
        />
        {unit}
      </div>
      <div id={`${id}-wrong`} role="status">
        {wrong === undefined ? null : <p className="entry-wrong">{wrong}</p>}
      </div>
    </div>
  );
}
