import { type ReactNode, useId } from 'react';
import './LooksLike.css';
import { LookPicture } from './LookPicture.tsx';
import { coveredLooks, type Look, type LookWords, uncoveredLooks } from './look.ts';
import { tellUncovered } from './tell-uncovered.ts';

export type { Look } from './look.ts';

/** Which looks like yours? Picture buttons; below, those that can't be worked out yet, with what can still be done. */
export function LooksLike(props: {
  readonly chosen?: Look | undefined;
  readonly onChoose: (look: Look) => void;
}): ReactNode {
  const { chosen, onChoose } = props;
  const id = useId();
  const instead = chosen && tellUncovered(chosen);
  const name = uncoveredLooks.find(({ look }) => look === chosen)?.word;
  return (
    <section className="looks-like" aria-labelledby={`${id}-title`}>
      <h2 id={`${id}-title`}>Which looks like yours?</h2>
      <LookRow looks={coveredLooks} chosen={chosen} onChoose={onChoose} />
      <h3 className="looks-like-second">These we can’t work out yet</h3>
      <LookRow looks={uncoveredLooks} chosen={chosen} onChoose={onChoose} />
      <p className="looks-like-instead" aria-live="polite">
        {instead ? (
          <>
            <strong>{name}.</strong> {instead}
          </>
        ) : (
          'Touch one to see what can still be done.'
        )}
      </p>
    </section>
  );
}

function LookRow(props: {
  readonly looks: readonly LookWords[];
  readonly chosen: Look | undefined;
  readonly onChoose: (look: Look) => void;
}): ReactNode {
  const { looks, chosen, onChoose } = props;
  return (
    <ul className="looks-like-row">
      {looks.map(({ look, word, trade }) => (
        <li key={look}>
          <button
            type="button"
            className="looks-like-choice"
            aria-pressed={look === chosen}
            onClick={() => onChoose(look)}
          >
            <LookPicture look={look} />
            <span className="looks-like-word">{word}</span>
            <span className="looks-like-trade">{trade}</span>
          </button>
        </li>
      ))}
    </ul>
  );
}
