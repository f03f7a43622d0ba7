import '../slip/next-act.css';
import { type ReactNode, useEffect, useRef } from 'react';
import type { DriveReport, Job, Wheel } from '../../index.ts';
import { ActEntry } from '../entries/ActEntry.tsx';
import { NextActPart } from '../slip/NextActPart.tsx';
import { editWheel } from '../state/edit-job.ts';
import { addWheelOfKind, shaftOf } from '../state/edit-train.ts';
import { draftKey } from '../state/page-store.ts';
import { type Slot, slotKey } from '../state/slot.ts';
import { subjectOf } from '../state/subject-of.ts';
import { usePage, useStoreOfPage } from '../state/use-page.ts';
import { nameWheel } from '../words/name-wheel.ts';
import { AgainstEntry } from './AgainstEntry.tsx';
import { actKey, type TrainAct, type TrainNext } from './choose-train-next.ts';
import { KindChoice } from './KindChoice.tsx';
import { MotorEntry } from './MotorEntry.tsx';
import { SeatEntry } from './SeatEntry.tsx';
import { SizeEntry } from './SizeEntry.tsx';
import { WantedEntry } from './WantedEntry.tsx';

/** The one next act about the train, and the others in a list. */
export function TrainNextPart(props: {
  readonly job: Job;
  readonly report: DriveReport | undefined;
  readonly acts: readonly TrainNext[];
  /** What was opened by touch; else the first of `acts` */
  readonly opened: TrainAct | undefined;
  readonly onOpen: (act: TrainAct | undefined) => void;
}): ReactNode {
  const { job, acts, opened, onOpen } = props;
  const act = opened ?? acts[0]?.act;
  const why = acts.find((one) => act && actKey(one.act) === actKey(act))?.why;
  const others = acts.filter((one) => !act || actKey(one.act) !== actKey(act)).slice(0, 8);
  return (
    <>
      {act ? (
        <OpenAct key={actKey(act)} {...props} act={act} why={why} />
      ) : (
        <p>Nothing more is needed here. Touch a gear to work on it.</p>
      )}
      {(others.length > 0 || act?.of !== 'add') && (
        <details className="next-act-how">
          <summary>Something else instead</summary>
          <ul className="next-act-others">
            {others.map((one) => (
              <li key={actKey(one.act)}>
                <button type="button" className="plain" onClick={() => onOpen(one.act)}>
                  {nameTrainAct(one.act, job)}
                </button>
              </li>
            ))}
            {act?.of !== 'add' && (
              <li>
                <button type="button" className="plain" onClick={() => onOpen({ of: 'add' })}>
                  add a gear
                </button>
              </li>
            )}
          </ul>
        </details>
      )}
    </>
  );
}

function OpenAct(props: {
  readonly job: Job;
  readonly report: DriveReport | undefined;
  readonly act: TrainAct;
  readonly why: string | undefined;
  readonly opened: TrainAct | undefined;
  readonly onOpen: (act: TrainAct | undefined) => void;
}): ReactNode {
  const { job, report, act, why, opened, onOpen } = props;
  const store = useStoreOfPage();
  const drafts = usePage((state) => state.drafts);
  const { unit } = usePage((state) => state.settings);
  const answers = usePage((state) => state.answers);
  const title = useRef<HTMLHeadingElement>(null);
  const isByHand = opened !== undefined;
  useEffect(() => {
    if (isByHand) title.current?.focus({ preventScroll: true });
  }, [isByHand]);
  const wheel = 'wheelId' in act ? job.wheels?.find((one) => one.id === act.wheelId) : undefined;
  const key = `train ${actKey(act)}`;
  const text = drafts[key] ?? '';
  const onType = (typed: string): void => store.keepDraft(key, typed);
  const onTake = (what: string, edit: (job: Job) => Job): void => {
    store.keepDraft(key, '');
    onOpen(undefined);
    store.change(what, edit);
  };
  if (act.of === 'distance' && wheel) {
    const slot: Slot = { of: 'center-distance', mate: act.mate };
    const slotDraft = draftKey(wheel.id, slot);
    return (
      <NextActPart
        slot={slot}
        subject={subjectOf(wheel, answers[wheel.id])}
        why={why?.replace(/\.$/, '')}
        entry={
          <ActEntry
            job={job}
            wheel={wheel}
            slot={slot}
            unit={unit}
            text={drafts[slotDraft] ?? ''}
            onType={(typed) => store.keepDraft(slotDraft, typed)}
            onUnit={(next) => store.set({ unit: next })}
            onTake={(what, edit) => {
              store.keepDraft(slotDraft, '');
              onTake(what, edit);
            }}
          />
        }
        instead={null}
        takesFocus={isByHand}
        onLeaveOut={() =>
          onTake('distance of the posts left out', (one) =>
            editWheel(one, wheel.id, (was) => ({ ...was, leftOut: [...(was.leftOut ?? []), slotKey(slot)] })),
          )
        }
      />
    );
  }
  return (
    <div className="next-act">
      <h3 className="next-act-title" ref={title} tabIndex={-1}>
        {titleOf(act, job)}
      </h3>
      {why !== undefined && <p className="next-act-why">{why}</p>}
      <Entry {...{ job, report, act, wheel, text, onType, onTake, onOpen }} />
    </div>
  );
}

function Entry(props: {
  readonly job: Job;
  readonly report: DriveReport | undefined;
  readonly act: TrainAct;
  readonly wheel: Wheel | undefined;
  readonly text: string;
  readonly onType: (text: string) => void;
  readonly onTake: (what: string, edit: (job: Job) => Job) => void;
  readonly onOpen: (act: TrainAct | undefined) => void;
}): ReactNode {
  const { job, report, act, wheel, text, onType, onTake, onOpen } = props;
  const store = useStoreOfPage();
  const { unit } = usePage((state) => state.settings);
  const from = report?.from ?? undefined;
  const to = report?.to ?? undefined;
  switch (act.of) {
    case 'add':
      return (
        <KindChoice
          onChoose={(kind) => {
            store.change('a gear added', (one) => addWheelOfKind(one, kind));
            const added = store.state.getState().open?.job.wheels ?? [];
            const last = added.at(-1);
            onOpen(last && added.length > 1 ? { of: 'against', wheelId: last.id } : undefined);
          }}
        />
      );
    case 'motor':
      return <MotorEntry {...{ job, from, text, onType, onTake }} />;
    case 'wanted':
      return (
        <WantedEntry {...{ job, from, to, text, onType, onTake }} onMotor={() => onOpen({ of: 'motor' })} />
      );
    default:
  }
  if (!wheel) return <p>That gear is no longer in this job.</p>;
  switch (act.of) {
    case 'kind':
      return (
        <KindChoice
          chosen={wheel.kind ?? 'external'}
          onChoose={(kind) =>
            onTake('what kind it is', (one) => editWheel(one, wheel.id, (was) => ({ ...was, kind })))
          }
        />
      );
    case 'against':
      return (
        <AgainstEntry
          job={job}
          wheel={wheel}
          reached={listReached(job, report)}
          onTake={onTake}
          onSeat={() => onOpen({ of: 'seat', wheelId: wheel.id })}
        />
      );
    case 'seat':
      return <SeatEntry job={job} wheel={wheel} onTake={onTake} />;
    case 'size':
      return <SizeEntry {...{ wheel, unit, text, onType, onTake }} />;
    case 'fits':
      return <Go words="What fits?" onGo={() => store.turnTo({ wheelId: wheel.id }, 'what-fits')} />;
    default:
      return (
        <Go
          words={`Work on ${wheel.name ?? wheel.id}`}
          onGo={() => store.turnTo({ wheelId: wheel.id }, 'what-is-it')}
        />
      );
  }
}

function Go({ words, onGo }: { readonly words: string; readonly onGo: () => void }): ReactNode {
  return (
    <div className="entry">
      <div className="entry-row">
        <button type="button" className="next" onClick={onGo}>
          {words}
        </button>
      </div>
    </div>
  );
}

/** Wheels that the turning reaches: their shaft's turns are known. */
function listReached(job: Job, report: DriveReport | undefined): ReadonlySet<string> {
  const shafts = new Set(report?.shafts.flatMap((shaft) => (shaft.turns ? [shaft.id] : [])));
  const ids = (job.wheels ?? []).filter(
    (wheel) => shafts.has(shaftOf(wheel)) || shaftOf(wheel) === job.motor?.shaft,
  );
  return new Set(ids.map((wheel) => wheel.id));
}

/** What an act is called in a list. */
function nameTrainAct(act: TrainAct, job: Job): string {
  const title = titleOf(act, job);
  return `${title.charAt(0).toLowerCase()}${title.slice(1)}`;
}

function titleOf(act: TrainAct, job: Job): string {
  const name = 'wheelId' in act ? nameWheel(job, act.wheelId) : '';
  switch (act.of) {
    case 'add':
      return 'Add a gear: what is it?';
    case 'motor':
      return 'The motor';
    case 'wanted':
      return 'What should come out?';
    case 'kind':
      return `What kind is ${name}?`;
    case 'against':
      return `What ${name} runs against`;
    case 'seat':
      return `What ${name} sits with`;
    case 'size':
      return `The size of ${name}`;
    case 'fits':
      return `What fits in place of ${name}?`;
    case 'distance':
      return `Distance of the posts: ${nameWheel(job, act.mate)} and ${name}`;
    default:
      return `Work on ${name}`;
  }
}
