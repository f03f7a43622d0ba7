import { type ReactNode, useId, useState } from 'react';
import { readField } from '../entries/read-field.ts';
import './Happened.css';
import { HappenedPicture } from './HappenedPicture.tsx';
import { type DamageKind, damageWords, type Happening } from './happening.ts';

export type { Happening } from './happening.ts';

/** What happened to the gear: as many kinds of damage as are seen, or sound, lost, not known. */
export function Happened(props: { readonly onChoose: (happening: Happening) => void }): ReactNode {
  const { onChoose } = props;
  const id = useId();
  const [seen, setSeen] = useState<readonly DamageKind[]>([]);
  const [goneText, setGoneText] = useState('');
  const [gapText, setGapText] = useState('');
  const [isTried, setTried] = useState(false);
  const gone = readGone(seen.includes('teeth-missing') ? goneText : '');
  const gap = readGap(seen.includes('split') ? gapText : '');
  const toggle = (kind: DamageKind): void =>
    setSeen(seen.includes(kind) ? seen.filter((one) => one !== kind) : [...seen, kind]);
  const goOn = (): void => {
    setTried(true);
    if (gone.wrong || gap.wrong) return;
    onChoose({
      state: 'damaged',
      damage: seen.map((kind) => ({
        kind,
        ...(kind === 'teeth-missing' && gone.value !== undefined ? { count: gone.value } : {}),
        ...(kind === 'split' && gap.value !== undefined ? { gapMm: gap.value } : {}),
      })),
    });
  };
  return (
    <form
      className="happened"
      aria-labelledby={`${id}-title`}
      onSubmit={(event) => {
        event.preventDefault();
        if (seen.length > 0) goOn();
      }}
    >
      <h2 id={`${id}-title`}>What happened to it?</h2>
      <p className="happened-hint">Touch everything you see.</p>
      <ul className="happened-row">
        {damageWords.map(({ kind, word, more }) => (
          <li key={kind}>
            <button
              type="button"
              className="happened-choice"
              aria-pressed={seen.includes(kind)}
              onClick={() => toggle(kind)}
            >
              <HappenedPicture state={kind} />
              <span>{word}</span>
              <span className="happened-more">{more}</span>
            </button>
          </li>
        ))}
      </ul>
      {seen.includes('teeth-missing') && (
        <NumberField
          label="How many teeth seem to be gone?"
          hint="Leave it empty if you can’t tell."
          text={goneText}
          onText={setGoneText}
          mode="numeric"
          wrong={isTried ? gone.wrong : undefined}
        />
      )}
      {seen.includes('split') && (
        <NumberField
          label="How wide does the split stand open at the rim?"
          hint="mm, as it lies; leave it empty if it is closed or you can’t tell."
          text={gapText}
          onText={setGapText}
          mode="decimal"
          wrong={isTried ? gap.wrong : undefined}
        />
      )}
      {seen.length > 0 && (
        <button type="submit" className="next happened-act">
          Go on
        </button>
      )}
      <p className="happened-hint">Or none of these:</p>
      <ul className="happened-row">
        {others.map(({ state, word, more }) => (
          <li key={word}>
            <button type="button" className="happened-choice" onClick={() => onChoose({ state, damage: [] })}>
              {state === 'damaged' ? (
                <span className="happened-mark">?</span>
              ) : (
                <HappenedPicture state={state} />
              )}
              <span>{word}</span>
              <span className="happened-more">{more}</span>
            </button>
          </li>
        ))}
      </ul>
    </form>
  );
}

const others = [
  { state: 'sound', word: 'Nothing', more: 'it is whole' },
  { state: 'lost', word: 'Lost', more: 'only its place is left' },
  { state: 'damaged', word: 'Don’t know', more: 'that is fine' },
] as const;

function NumberField(props: {
  readonly label: string;
  readonly hint: string;
  readonly text: string;
  readonly onText: (text: string) => void;
  readonly mode: 'numeric' | 'decimal';
  readonly wrong: string | undefined;
}): ReactNode {
  const { label, hint, text, onText, mode, wrong } = props;
  const id = useId();
  return (
    <div className="happened-field">
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        type="text"
        inputMode={mode}
        autoComplete="off"
        value={text}
        aria-invalid={wrong !== undefined}
        aria-describedby={`${id}-more`}
        onChange={(event) => onText(event.target.value)}
      />
      <p
        id={`${id}-more`}
        className={wrong ? 'happened-wrong' : 'happened-more'}
        role={wrong ? 'alert' : undefined}
      >
        {wrong ?? hint}
      </p>
    </div>
  );
}

interface Read {
  readonly value?: number | undefined;
  readonly wrong?: string | undefined;
}

function readGone(text: string): Read {
  if (text.trim() === '') return {};
  const count = Number(text.trim());
  return Number.isInteger(count) && count >= 1 && count <= 1000
    ? { value: count }
    : { wrong: `“${text.trim().slice(0, 24)}” is not a number of teeth. Type a whole number such as 2.` };
}

function readGap(text: string): Read {
  if (text.trim() === '') return {};
  const read = readField(text, 'mm');
  if ('wrong' in read) return read;
  return { value: read.lengths.reduce((sum, one) => sum + one, 0) / read.lengths.length };
}
