import './kind-choice.css';
import type { ReactNode } from 'react';
import type { WheelKind } from '../state/edit-train.ts';
import { wheelKinds } from './wheel-kinds.ts';

/** What a wheel is, as one of a few buttons in plain words. */
export function KindChoice(props: {
  readonly chosen?: WheelKind | undefined;
  readonly onChoose: (kind: WheelKind) => void;
}): ReactNode {
  const { chosen, onChoose } = props;
  return (
    <ul className="kind-choice">
      {wheelKinds.map(({ kind, words, trade }) => (
        <li key={kind}>
          <button type="button" aria-pressed={kind === chosen} onClick={() => onChoose(kind)}>
            {words} <small>{trade}</small>
          </button>
        </li>
      ))}
    </ul>
  );
}
