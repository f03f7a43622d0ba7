import '../maker/maker.css';
import './why.css';
import { lazy, type ReactNode, Suspense, useState } from 'react';
import type { Job, MadeReport, Wheel } from '../../index.ts';
import { GearDrawing } from '../drawing/GearDrawing.tsx';
import { ActEntry } from '../entries/ActEntry.tsx';
import { readField } from '../entries/read-field.ts';
import { usePair } from '../fits/use-pair.ts';
import { asMadeWheel, editMade } from '../made/edit-made.ts';
import { NextPrint } from '../made/NextPrint.tsx';
import { tellMadeAnswer } from '../made/tell-made-answer.ts';
import { type FoundMade, useMade } from '../made/use-made.ts';
import { ProofSheet } from '../proof/ProofSheet.tsx';
import { Instead } from '../slip/Instead.tsx';
import { NextActPart } from '../slip/NextActPart.tsx';
import { Verdict } from '../slip/Verdict.tsx';
import { draftKey } from '../state/page-store.ts';
import { findReading, isSameSlot, type Slot, slotKey, slotOf } from '../state/slot.ts';
import { subjectOf } from '../state/subject-of.ts';
import { usePage, useStoreOfPage } from '../state/use-page.ts';
import { formatLength } from '../words/format-length.ts';
import { nameAct } from '../words/name-act.ts';
import { nameWheel } from '../words/name-wheel.ts';
import { titleBlockOf } from '../words/title-block-of.ts';
import type { QuestionParts } from './question.ts';

const RecordSheet = lazy(() => import('../made/RecordSheet.tsx'));

type View = 'measured' | 'rolled' | 'record';

/** *Is the new one right?* for a gear with a part that was made for it. */
export function useIsItRight(job: Job, wheel: Wheel): QuestionParts {
  const store = useStoreOfPage();
  const { unit } = usePage((state) => state.settings);
  const act = usePage((state) => state.act);
  const drafts = usePage((state) => state.drafts);
  const hasActed = usePage((state) => state.hasActed);
  const [view, setView] = useState<View>();
  const made = useMade(job, wheel.id, wheel.made !== undefined);
  const { found } = made;
  const part = asMadeWheel(wheel);
  const acts = listActs(found?.spanTeeth, part);
  const open = acts.find((slot) => findReading(part, slot) < 0);
  // Over how many teeth is known with the first answer: until then nothing is asked.
  const slot = found ? (act ?? open) : undefined;
  const key = slot ? `made ${draftKey(wheel.id, slot)}` : '';
  const text = drafts[key] ?? '';
  const proof = found?.report.proof;
  const rolled = usePair(job, wheel.id, proof?.mate, proof ? found?.report.spec : undefined);
  const hasPicture = rolled.pair !== undefined && found?.report.verdict !== 'unread';
  const shown = view === 'rolled' && !hasPicture ? 'measured' : (view ?? 'measured');
  const titleBlock = titleBlockOf(job, part, job.invented ? 'Invented' : 'The new one');
  return {
    drawing: (
      <>
        {wheel.made && (
          <div className="make-views">
            {listViews(hasPicture).map(([one, words]) => (
              <button key={one} type="button" aria-pressed={one === shown} onClick={() => setView(one)}>
                {words}
              </button>
            ))}
          </div>
        )}
        {shown === 'record' ? (
          <Suspense fallback={<p className="make-wait">One moment …</p>}>
            <RecordSheet job={job} wheel={wheel} made={found?.report} />
          </Suspense>
        ) : shown === 'rolled' && rolled.pair ? (
          <div className="make-under">
            <ProofSheet
              pair={rolled.pair}
              moduleMm={found?.report.spec.moduleMm ?? 1}
              names={{
                driver: nameWheel(job, rolled.pair.driver.wheelId),
                driven: nameWheel(job, rolled.pair.driven.wheelId),
              }}
              isWorking={rolled.isWorking}
              unit={unit}
              // A narrow sheet has no line to spare for a note.
              titleBlock={{ ...titleBlock, note: undefined }}
            />
          </div>
        ) : (
          <div className={wheel.made ? 'make-under' : undefined}>
            <GearDrawing
              wheel={part}
              drawing={found?.drawing}
              asked={[]}
              active={slot}
              typedMm={typedLength(text, unit)}
              isWorking={made.isWorking}
              unit={unit}
              titleBlock={titleBlock}
              onTouch={(touched) => store.openAct(touched)}
            />
          </div>
        )}
      </>
    ),
    answer: <Answer job={job} wheel={wheel} made={made} />,
    next: !wheel.made ? (
      <div className="entry-row">
        <button type="button" className="next" onClick={() => store.go({ question: 'how-to-make-it' })}>
          How to make it
        </button>
      </div>
    ) : made.fail ? (
      <div className="entry-row">
        <button type="button" className="next" onClick={() => store.go({ question: 'how-to-make-it' })}>
          How to make it
        </button>
      </div>
    ) : slot ? (
      <NextActPart
        key={`${wheel.id} ${slotKey(slot)}`}
        slot={slot}
        subject={subjectOf(part, found)}
        entry={
          <ActEntry
            job={{ ...job, wheels: [part] }}
            wheel={part}
            slot={slot}
            unit={unit}
            text={text}
            onType={(typed) => store.keepDraft(key, typed)}
            onUnit={(next) => store.set({ unit: next })}
            onTake={(what, edit) => {
              store.keepDraft(key, '');
              store.openAct(undefined);
              store.change(`the new one: ${what}`, (one) => editMade(one, wheel.id, edit));
            }}
          />
        }
        instead={
          <Instead
            slots={acts.filter((one) => !isSameSlot(one, slot))}
            most={6}
            onOpen={(next) => store.openAct(next)}
          />
        }
        takesFocus={hasActed}
      />
    ) : (
      <NextPrint
        wheel={wheel}
        report={made.isWorking ? undefined : found?.report}
        acts={acts}
        onRecord={() => setView('record')}
      />
    ),
    why: found ? (
      <Dimensions job={job} wheel={wheel} report={found.report} unit={unit} />
    ) : (
      <p>One moment …</p>
    ),
  };
}

/** What decides first: tooth thickness, tips, bore. Then what else can be taken. */
function listActs(spanTeeth: number | undefined, part: Wheel): Slot[] {
  const first: Slot[] = [
    ...(spanTeeth === undefined ? [] : [{ of: 'span', teeth: spanTeeth }]),
    { of: 'outside' },
    { of: 'bore' },
  ];
  const taken = (part.readings ?? [])
    .map(slotOf)
    .filter(({ of }) => of !== 'teeth' && of !== 'unknown')
    .filter((one) => !first.some((other) => isSameSlot(one, other)));
  return [...first, ...taken];
}

function listViews(hasPicture: boolean): readonly (readonly [View, string])[] {
  return [
    ['measured', 'As measured'],
    ...(hasPicture ? [['rolled', 'Rolled with its mate'] as const] : []),
    ['record', 'Repair record'],
  ];
}

function Answer(props: { readonly job: Job; readonly wheel: Wheel; readonly made: FoundMade }): ReactNode {
  const { job, wheel, made } = props;
  const { found, fail, isWorking } = made;
  if (!wheel.made)
    return (
      <Verdict
        sentence="No part was made for this gear yet."
        certainty="undecided"
        word="nothing to check"
        isWorking={false}
      />
    );
  if (fail)
    return (
      <Verdict
        sentence={`Not yet: ${fail.message}.`}
        certainty="undecided"
        word="can't tell yet"
        isWorking={false}
      >
        <p className="verdict-more">{fail.remedy}</p>
      </Verdict>
    );
  if (!found)
    return <Verdict sentence="Working it out." certainty="undecided" word="working" isWorking={true} />;
  const told = tellMadeAnswer(found.report, job);
  return (
    <Verdict
      sentence={told.sentence}
      odds={told.odds}
      certainty={told.certainty}
      word={told.word}
      isWorking={isWorking}
    >
      {told.more.map((line) => (
        <p key={line} className="verdict-more">
          {line}
        </p>
      ))}
    </Verdict>
  );
}

const dimensionNames: Readonly<Record<MadeReport['dimensions'][number]['of'], string>> = {
  'tip-diameter': 'across the tips',
  'tooth-thickness': 'tooth thickness',
  bore: 'bore',
  'hub-diameter': 'hub',
};

/** Meant and made beside each other, and every reading with a way to take it away. */
function Dimensions(props: {
  readonly job: Job;
  readonly wheel: Wheel;
  readonly report: MadeReport;
  readonly unit: 'mm' | 'in';
}): ReactNode {
  const { wheel, report, unit } = props;
  const store = useStoreOfPage();
  const show = (mm: number): string => formatLength(mm, unit);
  return (
    <div className="why">
      <section>
        <h3 className="why-title">{`Meant and made, ${unit}`}</h3>
        <table className="why-readings">
          <thead>
            <tr>
              <th scope="col">size</th>
              <th scope="col">meant</th>
              <th scope="col">made</th>
              <th scope="col">off by</th>
              <th scope="col">give or take</th>
            </tr>
          </thead>
          <tbody>
            {report.dimensions.map(({ of, meantMm, madeMm, errorMm, uMm, isRead, verdict }) => (
              <tr key={of} className={isRead && verdict !== 'fits' ? 'why-suspect' : undefined}>
                <th scope="row">{dimensionNames[of]}</th>
                <td>{show(meantMm)}</td>
                <td>{isRead ? show(madeMm) : `(${show(madeMm)})`}</td>
                <td>{`${errorMm > 0 ? '+' : ''}${show(errorMm)}`}</td>
                <td>{show(uMm)}</td>
              </tr>
            ))}
          </tbody>
        </table>
        <p className="entry-hint">In parentheses: not read yet, but what this machine usually makes of it.</p>
      </section>
      <section>
        <h3 className="why-title">Its readings</h3>
        {(wheel.made?.readings ?? []).length === 0 && <p>None yet.</p>}
        <ul className="make-files">
          {(wheel.made?.readings ?? []).map((reading) => {
            const slot = slotOf(reading);
            return (
              <li key={slotKey(slot)}>
                <button type="button" onClick={() => store.openAct(slot)}>
                  Take again
                  <span className="unseen">{`: ${nameAct(slot)}`}</span>
                </button>
                <span>{nameAct(slot)}</span>
              </li>
            );
          })}
        </ul>
      </section>
    </div>
  );
}

/** The typed length, for the jaws: nothing while the text is no length. */
function typedLength(text: string, unit: 'mm' | 'in'): number | undefined {
  if (text.trim() === '') return undefined;
  const content = readField(text, unit);
  return 'lengths' in content ? content.lengths[content.lengths.length - 1] : undefined;
}
