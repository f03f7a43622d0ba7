import './slip.css';
import { type ReactNode, useSyncExternalStore } from 'react';

/** Beside the sheet, or under it on a narrow screen. The parts are always these three. */
export function Slip(props: {
  readonly answer: ReactNode;
  readonly next: ReactNode;
  readonly why: ReactNode;
}): ReactNode {
  const isNarrow = useIsNarrow();
  const answer = (
    <section key="answer" className="slip-part" aria-labelledby="slip-answer">
      <h2 id="slip-answer" className="slip-title">
        Answer
      </h2>
      {props.answer}
    </section>
  );
  const next = (
    <section key="next" className="slip-part" aria-labelledby="slip-next">
      <h2 id="slip-next" className="slip-title">
        Do next
      </h2>
      {props.next}
    </section>
  );
  const why = isNarrow ? (
    <details key="why" className="slip-part">
      <summary>
        <h2 className="slip-title">Why</h2>
      </summary>
      {props.why}
    </details>
  ) : (
    <section key="why" className="slip-part" aria-labelledby="slip-why">
      <h2 id="slip-why" className="slip-title">
        Why
      </h2>
      {props.why}
    </section>
  );
  // On a narrow screen the field stands right under the sheet, where the thumb is.
  return <div className="slip">{isNarrow ? [next, answer, why] : [answer, next, why]}</div>;
}

const narrow = '(max-width: 900px)';

export function useIsNarrow(): boolean {
  return useSyncExternalStore(
    (changed) => {
      const query = window.matchMedia(narrow);
      query.addEventListener('change', changed);
      return () => query.removeEventListener('change', changed);
    },
    () => window.matchMedia(narrow).matches,
  );
}
