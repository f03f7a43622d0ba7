import './next-act.css';
import { type ReactNode, useEffect, useRef, useState } from 'react';
import { capitalize } from '../../index.ts';
import { ActSketch } from '../acts/ActSketch.tsx';
import type { SketchSubject } from '../acts/sketch-subject.ts';
import { tellAct } from '../acts/tell-act.ts';
import type { Slot } from '../state/slot.ts';

/** The one next act of every question: what to do, its sketch, how long it takes, and the field or buttons. */
export function NextActPart(props: {
  readonly slot: Slot;
  readonly subject: SketchSubject;
  readonly why?: string | undefined;
  readonly entry: ReactNode;
  /** Other acts that could be done instead */
  readonly instead: ReactNode;
  /** This one can't be taken on this gear */
  readonly onLeaveOut?: (() => void) | undefined;
  /** This act follows something that the person did: its field takes the focus, else its title */
  readonly takesFocus: boolean;
  readonly onExpected?: (() => string | undefined) | undefined;
}): ReactNode {
  const { slot, subject, why, entry, instead, onLeaveOut, onExpected, takesFocus } = props;
  const words = tellAct(slot, subject);
  const isPicture = slot.of === 'looks-like' || slot.of === 'happened';
  const [shown, setShown] = useState<string>();
  const part = useRef<HTMLDivElement>(null);
  const title = useRef<HTMLHeadingElement>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: once, when this act comes up
  useEffect(() => {
    if (!takesFocus) return;
    const field = part.current?.querySelector<HTMLInputElement>('.entry-field input');
    (field ?? title.current)?.focus({ preventScroll: true });
    // No further than needed: the answer above stays in sight where there is room.
    field?.closest('.entry')?.scrollIntoView({ block: 'nearest' });
  }, []);
  return (
    <div className="next-act" ref={part}>
      <h3 className={isPicture ? 'unseen' : 'next-act-title'} ref={title} tabIndex={-1}>
        {words.title} {words.trade && <small>{words.trade}</small>}
        <span className="next-act-minutes">{tellMinutes(words.minutes)}</span>
      </h3>
      {why && <p className="next-act-why">{`${capitalize(why)}.`}</p>}
      {!isPicture && (
        <figure className="next-act-sketch">
          <ActSketch slot={slot} subject={subject} />
        </figure>
      )}
      {entry}
      {!isPicture && (
        <details className="next-act-how">
          <summary>How to take it</summary>
          <ol>
            {words.steps.map((step) => (
              <li key={step}>{step}</li>
            ))}
          </ol>
          <p>
            <strong>Don't:</strong> {words.dont}
          </p>
          {words.notes.map((note) => (
            <p key={note}>{note}</p>
          ))}
        </details>
      )}
      <div className="next-act-instead">
        {onExpected && (
          <button type="button" className="plain" onClick={() => setShown(onExpected())}>
            Show first what is expected
          </button>
        )}
        {onLeaveOut && (
          <button type="button" className="plain" onClick={onLeaveOut}>
            I can't take this one
          </button>
        )}
      </div>
      <div role="status">{shown && <p>{shown}</p>}</div>
      {instead}
    </div>
  );
}

function tellMinutes(minutes: number): string {
  return minutes < 1 ? 'half a minute' : minutes === 1 ? '1 minute' : `${minutes} minutes`;
}
