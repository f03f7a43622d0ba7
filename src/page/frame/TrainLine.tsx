import './train-line.css';
import { type ReactNode, useEffect, useRef } from 'react';
import type { Job, Wheel } from '../../index.ts';
import { isAskedOf, questions } from '../address.ts';
import { TrainGear, WholeTrain } from '../drawing/TrainGear.tsx';
import { useIsNarrow } from '../slip/Slip.tsx';
import { orderWheels } from '../state/order-wheels.ts';
import { usePage, useStoreOfPage } from '../state/use-page.ts';
import { JobMenu } from './JobMenu.tsx';

/**
 * Top of the page: the job, its gears as circles with their state, undo, the files; under it the questions that can be
 * asked of what is looked at: a gear, or, without one, the whole train.
 */
export function TrainLine({
  job,
  wheel,
}: {
  readonly job: Job | undefined;
  readonly wheel: Wheel | undefined;
}): ReactNode {
  const store = useStoreOfPage();
  const place = usePage((state) => state.place);
  const isNarrow = useIsNarrow();
  return (
    <header className="train">
      <div className="train-row">
        <h1 className="train-title">
          <span className="train-name">Sparetooth</span>
          <span className="train-job">{job?.title ?? ''}</span>
        </h1>
        <nav aria-label="Gears of this job" className="train-gears">
          {job && (isNarrow ? <OneOf job={job} wheel={wheel} /> : <AllGears job={job} wheel={wheel} />)}
        </nav>
        <Steps />
        <JobMenu job={job} wheel={wheel} />
      </div>
      <nav aria-label="Questions" className="train-questions">
        {questions
          .filter((one) => isAskedOf(one, place.subject))
          .map(({ key, words }) => (
            <button
              key={key}
              type="button"
              className="train-question"
              aria-current={key === place.question ? 'page' : undefined}
              onClick={() => store.go({ question: key, ...(wheel ? { wheelId: wheel.id } : {}) })}
            >
              {words}
            </button>
          ))}
      </nav>
    </header>
  );
}

interface OnLine {
  readonly job: Job;
  /** Without one the whole train is looked at */
  readonly wheel: Wheel | undefined;
}

function AllGears({ job, wheel }: OnLine): ReactNode {
  const store = useStoreOfPage();
  const answers = usePage((state) => state.answers);
  const list = useRef<HTMLUListElement>(null);
  // A long train runs out of the window: what is looked at is brought into it.
  // biome-ignore lint/correctness/useExhaustiveDependencies: whenever another gear is looked at
  useEffect(() => {
    list.current?.querySelector('[aria-current]')?.scrollIntoView({ block: 'nearest', inline: 'nearest' });
  }, [wheel?.id]);
  return (
    <>
      <ul className="train-list" ref={list}>
        <li>
          <button
            type="button"
            className="train-gear"
            aria-current={wheel ? undefined : 'true'}
            onClick={() => store.turnTo('train')}
          >
            <WholeTrain isOpen={!wheel} />
            <span className="train-gear-name">gear train</span>
          </button>
        </li>
        {orderWheels(job).map((one) => (
          <li key={one.id}>
            <button
              type="button"
              className="train-gear"
              aria-current={one.id === wheel?.id ? 'true' : undefined}
              onClick={() => store.turnTo({ wheelId: one.id })}
            >
              <TrainGear
                wheel={one}
                verdict={answers[one.id]?.report.verdict}
                isOpen={one.id === wheel?.id}
              />
              <span className="train-gear-name">{one.name ?? one.id}</span>
            </button>
          </li>
        ))}
      </ul>
      <button type="button" className="plain" onClick={() => store.addGear()}>
        + gear
      </button>
    </>
  );
}

/** On a narrow screen one gear stands for the line, or the whole train, which comes before the first. */
function OneOf({ job, wheel }: OnLine): ReactNode {
  const store = useStoreOfPage();
  const wheels = orderWheels(job);
  const at = wheels.findIndex((one) => one.id === wheel?.id);
  const step = (by: number): void => {
    // −1 is the train.
    const to = ((at + by + 1 + wheels.length + 1) % (wheels.length + 1)) - 1;
    store.turnTo(to < 0 ? 'train' : { wheelId: wheels[to].id });
  };
  return (
    <div className="train-one">
      <button type="button" className="plain" aria-label="Gear before" onClick={() => step(-1)}>
        ‹
      </button>
      <span>{wheel ? `gear ${at + 1} of ${wheels.length}` : 'gear train'}</span>
      <button type="button" className="plain" aria-label="Next gear" onClick={() => step(1)}>
        ›
      </button>
    </div>
  );
}

function Steps(): ReactNode {
  const store = useStoreOfPage();
  const past = usePage((state) => state.open?.past.at(-1)?.what);
  const future = usePage((state) => state.open?.future.at(-1)?.what);
  return (
    <div className="train-steps">
      <button
        type="button"
        className="plain"
        disabled={past === undefined}
        title={past === undefined ? undefined : `Undo: ${past}`}
        aria-label={past === undefined ? 'Undo' : `Undo: ${past}`}
        onClick={() => store.undo()}
      >
        Undo
      </button>
      <button
        type="button"
        className="plain"
        disabled={future === undefined}
        title={future === undefined ? undefined : `Redo: ${future}`}
        aria-label={future === undefined ? 'Redo' : `Redo: ${future}`}
        onClick={() => store.redo()}
      >
        Redo
      </button>
    </div>
  );
}
