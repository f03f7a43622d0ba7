import './maker.css';
import type { ReactNode } from 'react';
import { capitalize, type Fail, makers, processes } from '../../index.ts';

/** What can be done instead where there is no part for this maker. */
export function WaysOut(props: {
  readonly fail: Fail;
  readonly onIdentify: () => void;
  readonly onMaker: (maker: string, process: string) => void;
  readonly onAllTheSame: () => void;
}): ReactNode {
  const { fail, onIdentify, onMaker, onAllTheSame } = props;
  if (fail.code === 'not-identified') {
    return (
      <div className="entry-row">
        <button type="button" className="next" onClick={onIdentify}>
          What is it?
        </button>
      </div>
    );
  }
  if (fail.code !== 'too-fine') return null;
  const keys = Array.isArray(fail.details.processes) ? fail.details.processes : [];
  const ways = processes.flatMap((process) => {
    const maker = makers.find((one) => one.processes.includes(process.key));
    return keys.includes(process.key) && maker ? [{ process, maker }] : [];
  });
  return (
    <section>
      <h3 className="make-title">Fine enough for these teeth</h3>
      <ul className="make-who">
        {ways.map(({ process, maker }, k) => (
          <li key={process.key}>
            <button
              type="button"
              className={k === 0 ? 'next' : undefined}
              onClick={() => onMaker(maker.key, process.key)}
            >
              {capitalize(process.name)}
            </button>
          </li>
        ))}
        <li>
          <button type="button" onClick={onAllTheSame}>
            Try it all the same
          </button>
        </li>
      </ul>
    </section>
  );
}
