import type { ReactNode } from 'react';
import { capitalize, defaultKit, isCovered, type Job, tellOdds, type Wheel } from '../../index.ts';
import { GearDrawing } from '../drawing/GearDrawing.tsx';
import { ActEntry } from '../entries/ActEntry.tsx';
import { readField } from '../entries/read-field.ts';
import { Instead } from '../slip/Instead.tsx';
import { NextActPart } from '../slip/NextActPart.tsx';
import { Slips } from '../slip/Slips.tsx';
import { Verdict } from '../slip/Verdict.tsx';
import { tellUncovered } from '../start/tell-uncovered.ts';
import { listNextActs, type NextAct } from '../state/choose-next.ts';
import { dropReading } from '../state/edit-job.ts';
import { isKnownBySpec } from '../state/is-specified.ts';
import type { GearAnswer } from '../state/page-state.ts';
import { draftKey } from '../state/page-store.ts';
import { isSameSlot, type Slot, slotKey, slotOf } from '../state/slot.ts';
import { subjectOf } from '../state/subject-of.ts';
import { usePage, useStoreOfPage } from '../state/use-page.ts';
import { formatLength } from '../words/format-length.ts';
import { nameAct } from '../words/name-act.ts';
import { nameModule } from '../words/name-module.ts';
import { nameWheel } from '../words/name-wheel.ts';
import { splitTrade, tellAnswer } from '../words/tell-answer.ts';
import { tellEnding } from '../words/tell-ending.ts';
import { titleBlockOf } from '../words/title-block-of.ts';
import { withNames } from '../words/with-names.ts';
import type { QuestionParts } from './question.ts';
import { Why } from './Why.tsx';

/** *What is it?* for one gear. */
export function useWhatIsIt(job: Job, wheel: Wheel): QuestionParts {
  const store = useStoreOfPage();
  const answer = usePage((state) => state.answers[wheel.id]);
  const isWorking = usePage((state) => state.working.has(wheel.id));
  const act = usePage((state) => state.act);
  const drafts = usePage((state) => state.drafts);
  const { unit } = usePage((state) => state.settings);
  const isExample = usePage((state) => state.isExample);
  const acts = listNextActs(wheel, answer?.report);
  const slot = act ?? suspectSlot(wheel, answer) ?? acts.find((one) => one.purpose !== 'more')?.slot;
  const text = slot ? (drafts[draftKey(wheel.id, slot)] ?? '') : '';
  const open = (next: Slot): void => store.openAct(next);

  return {
    drawing: (
      <GearDrawing
        wheel={wheel}
        report={answer?.report}
        drawing={answer?.drawing}
        asked={answer?.asked ?? []}
        active={slot}
        typedMm={typedLength(text, unit)}
        isWorking={isWorking}
        unit={unit}
        titleBlock={titleBlockOf(
          job,
          wheel,
          isExample ? 'An invented example' : job.invented ? 'Invented' : undefined,
        )}
        onTouch={open}
      />
    ),
    answer: <Answer wheel={wheel} answer={answer} isWorking={isWorking} />,
    next: (
      <Next
        // A new act starts with its own fields.
        key={slot ? `${wheel.id} ${slotKey(slot)}` : wheel.id}
        job={job}
        wheel={wheel}
        answer={answer}
        acts={acts}
        slot={slot}
        isByHand={act !== undefined}
        text={text}
      />
    ),
    why: (
      <Why
        wheel={wheel}
        report={answer?.report}
        unit={unit}
        onOpen={open}
        onDrop={(index) => store.changeWheel(wheel.id, 'reading removed', (one) => dropReading(one, index))}
      />
    ),
  };
}

function Answer(props: {
  readonly wheel: Wheel;
  readonly answer: GearAnswer | undefined;
  readonly isWorking: boolean;
}): ReactNode {
  const { wheel, answer, isWorking } = props;
  if (!isCovered(wheel)) {
    return (
      <Verdict
        sentence="Stop here: this kind can't be worked out yet."
        certainty="nothing-fits"
        isWorking={false}
      />
    );
  }
  if (isKnownBySpec(wheel)) {
    const { teeth, moduleMm } = wheel.spec ?? {};
    const [size, trade] = splitTrade(nameModule(moduleMm ?? 0));
    return (
      <Verdict
        sentence={
          <>
            {teeth === undefined ? capitalize(size) : `${capitalize(size)}, ${teeth} teeth.`}{' '}
            {trade && <small>({trade})</small>}
          </>
        }
        certainty="certain"
        word="as this job says"
        isWorking={isWorking}
      />
    );
  }
  const words = tellAnswer(answer?.report);
  return (
    <Verdict
      sentence={
        <>
          {words.sentence} {words.trade && <small>({words.trade})</small>}
        </>
      }
      odds={words.odds}
      certainty={answer?.report.verdict ?? 'undecided'}
      isWorking={isWorking}
    >
      {words.more.map((line) => (
        <p key={line} className="verdict-more">
          {line}
        </p>
      ))}
    </Verdict>
  );
}

function Next(props: {
  readonly job: Job;
  readonly wheel: Wheel;
  readonly answer: GearAnswer | undefined;
  readonly acts: readonly NextAct[];
  readonly slot: Slot | undefined;
  readonly isByHand: boolean;
  readonly text: string;
}): ReactNode {
  const { job, wheel, answer, acts, slot, isByHand, text } = props;
  const store = useStoreOfPage();
  const { unit } = usePage((state) => state.settings);
  const isExample = usePage((state) => state.isExample);
  const hasActed = usePage((state) => state.hasActed);
  if (!isCovered(wheel)) {
    return (
      <p>
        {tellUncovered((wheel.look ?? wheel.kind) as never) ??
          'External and internal gears and straight bars can be worked out.'}
      </p>
    );
  }
  if (isExample && !isByHand) return <StartHere />;
  const ending = answer && !isByHand ? tellEnding(answer.report) : undefined;
  const isOpenAct =
    slot !== undefined &&
    (isByHand || acts.some((one) => one.purpose !== 'more' && isSameSlot(one.slot, slot)));
  const purpose = acts.find((one) => slot && isSameSlot(one.slot, slot));
  // A slip that is more likely than not comes first: every other reading is understood beside it.
  const isSlip = !isByHand && suspectSlot(wheel, answer) !== undefined;
  return (
    <>
      {answer && !isByHand && (
        <Slips
          job={job}
          wheel={wheel}
          report={answer.report}
          onOpen={(next) => store.openAct(next)}
          onRepair={(what, edit) => store.changeWheel(wheel.id, what, edit)}
          isNext={isSlip}
        />
      )}
      {answer && !isByHand && !isSlip && <Elsewhere job={job} wheel={wheel} answer={answer} />}
      {ending && !isSlip && (
        <div className="ending">
          <p>
            <strong>{ending.title}</strong> {ending.text}
          </p>
          {ending.makesPlate && (
            <div className="entry-row">
              <button type="button" onClick={() => store.go({ question: 'how-to-make-it' })}>
                Make the trial plate
              </button>
              <button type="button" onClick={() => store.openAct({ of: 'hand-roll' })}>
                I rolled them by hand
              </button>
            </div>
          )}
        </div>
      )}
      {isSlip && (
        <Instead slots={acts.map((one) => one.slot)} most={6} onOpen={(next) => store.openAct(next)} />
      )}
      {!isSlip && !isOpenAct && !ending && (
        <>
          <NothingMore onMake={() => store.go({ question: 'how-to-make-it' })} />
          <Instead slots={acts.map((one) => one.slot)} most={6} onOpen={(next) => store.openAct(next)} />
        </>
      )}
      {isOpenAct && !isSlip && slot && (
        <NextActPart
          slot={slot}
          subject={subjectOf(wheel, answer)}
          why={tellReason(answer, slot, purpose?.why, job, unit)}
          entry={
            <ActEntry
              job={job}
              wheel={wheel}
              slot={slot}
              unit={unit}
              text={text}
              report={answer?.report}
              onLay={hasOutside(wheel) ? () => store.show('lay') : undefined}
              onType={(typed) => store.keepDraft(draftKey(wheel.id, slot), typed)}
              onUnit={(next) => store.set({ unit: next })}
              onTake={(what, edit) => {
                store.keepDraft(draftKey(wheel.id, slot), '');
                store.openAct(undefined);
                store.change(what, edit);
              }}
            />
          }
          instead={
            <Instead
              slots={acts.map((one) => one.slot).filter((one) => !isSameSlot(one, slot))}
              most={5}
              onOpen={(next) => store.openAct(next)}
            />
          }
          takesFocus={hasActed}
          onExpected={expectedOf(answer, slot, unit)}
          onLeaveOut={
            purpose && purpose.purpose !== 'start'
              ? () => {
                  store.openAct(undefined);
                  store.changeWheel(wheel.id, `${nameAct(slot)} left out`, (one) => ({
                    ...one,
                    leftOut: [...(one.leftOut ?? []), slotKey(slot)],
                  }));
                }
              : undefined
          }
        />
      )}
    </>
  );
}

/** A reading on another gear that tells more of this one than any of its own. */
function Elsewhere(props: {
  readonly job: Job;
  readonly wheel: Wheel;
  readonly answer: GearAnswer;
}): ReactNode {
  const { job, wheel, answer } = props;
  const store = useStoreOfPage();
  const { next, verdict } = answer.report;
  const best = next.reduce((most, one) => Math.max(most, one.wheel === undefined ? one.gainBits : 0), 0);
  const other = next.find((one) => one.wheel !== undefined && one.gainBits > best);
  if (other?.wheel === undefined || other.wheel === wheel.id || verdict === 'certain') return null;
  const { wheel: id } = other;
  return (
    <div className="ending">
      <p>{`${capitalize(withNames(other.why, job))}.`}</p>
      <div className="entry-row">
        <button
          type="button"
          onClick={() => {
            store.turnTo({ wheelId: id }, 'what-is-it');
            store.openAct(slotOf(other));
          }}
        >
          {`On ${nameWheel(job, id)}: ${nameAct(slotOf(other))}`}
        </button>
      </div>
    </div>
  );
}

/** The reading that is more likely a slip than not. */
function suspectSlot(wheel: Wheel, answer: GearAnswer | undefined): Slot | undefined {
  const suspect = answer?.report.suspect[0];
  if (!suspect || suspect.probability < 0.5) return undefined;
  const reading = wheel.readings?.[suspect.reading];
  return reading ? slotOf(reading) : { of: 'zero' };
}

function StartHere(): ReactNode {
  const store = useStoreOfPage();
  return (
    <div className="entry">
      <p>
        This gear is invented: it shows what an answer looks like. Touch anything on the drawing to try it.
      </p>
      <div className="entry-row">
        <button type="button" className="next" onClick={() => store.newJob()}>
          Start with my gear
        </button>
      </div>
    </div>
  );
}

function NothingMore({ onMake }: { readonly onMake: () => void }): ReactNode {
  return (
    <div className="entry">
      <p>Nothing more is needed here.</p>
      <div className="entry-row">
        <button type="button" className="next" onClick={onMake}>
          How to make it
        </button>
      </div>
    </div>
  );
}

/** Why this act, and how far apart the two leading answers lie there; never the value itself. */
function tellReason(
  answer: GearAnswer | undefined,
  slot: Slot,
  why: string | undefined,
  job: Job,
  unit: 'mm' | 'in',
): string | undefined {
  const row = findExpected(answer, slot);
  const [first, second] = row ?? [];
  if (typeof first !== 'number' || typeof second !== 'number') return why;
  const gears = answer?.drawing.gears ?? [];
  // With many sizes open, the gap between two of them says nothing.
  if (gears.length < 2 || gears[0].share + gears[1].share < 0.7) return why;
  const gap = Math.abs(first - second);
  const error = job.kit?.uMm ?? defaultKit.zeroUMm;
  const times = gap / error;
  if (times < 0.5) return why;
  const apart = `${formatLength(gap, unit)} ${unit}`;
  const clause = `the two leading answers lie ${apart} apart there, ${times < 1.5 ? 'about' : `${Math.round(times)} times`} your caliper's error`;
  return why === undefined ? clause : `${why}; ${clause}`;
}

function findExpected(answer: GearAnswer | undefined, slot: Slot): readonly (number | null)[] | undefined {
  const at = (answer?.asked ?? []).findIndex((one) => isSameSlot(one, slot));
  return at < 0 ? undefined : answer?.drawing.expected[at];
}

/** What each rival would show, told only on request. */
function expectedOf(
  answer: GearAnswer | undefined,
  slot: Slot,
  unit: 'mm' | 'in',
): (() => string | undefined) | undefined {
  const row = findExpected(answer, slot);
  if (!answer || !row || row.every((one) => one === null)) return undefined;
  return () =>
    answer.drawing.gears
      .flatMap((gear, i) => {
        const value = row[i];
        return value === null || i > 2
          ? []
          : [
              `${formatLength(value, unit)} ${unit} if it is size ${Number(gear.moduleMm.toFixed(4))} (${tellOdds(gear.share)})`,
            ];
      })
      .join('; ');
}

/** The typed length, for the jaws: nothing while the text is no length. */
function typedLength(text: string, unit: 'mm' | 'in'): number | undefined {
  if (text.trim() === '') return undefined;
  const content = readField(text, unit);
  return 'lengths' in content ? content.lengths[content.lengths.length - 1] : undefined;
}

function hasOutside(wheel: Wheel): boolean {
  return (wheel.readings ?? []).some((reading) => reading.of === 'outside');
}
