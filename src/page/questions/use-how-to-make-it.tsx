import '../maker/maker.css';
import './why.css';
import { lazy, type ReactNode, Suspense, useState } from 'react';
import type { Job, MadePart, Wheel } from '../../index.ts';
import { GearDrawing } from '../drawing/GearDrawing.tsx';
import { Changes } from '../maker/Changes.tsx';
import { AskMaker, MadeBy } from '../maker/ChooseMaker.tsx';
import { FolderContents, SaveFolder } from '../maker/Folder.tsx';
import { changeMaking, readMakingWish, switchChange } from '../maker/making-wish.ts';
import { OldAndNew } from '../maker/OldAndNew.tsx';
import { type DesignAnswer, tellDesignAnswer, tellDesignFail } from '../maker/tell-design-answer.ts';
import { splitMaterial } from '../maker/tell-made-by.ts';
import { type FoundDesign, useDesign } from '../maker/use-design.ts';
import { WaysOut } from '../maker/WaysOut.tsx';
import { Verdict } from '../slip/Verdict.tsx';
import { usePage, useStoreOfPage } from '../state/use-page.ts';
import { formatLength } from '../words/format-length.ts';
import { titleBlockOf } from '../words/title-block-of.ts';
import type { QuestionParts } from './question.ts';

// three and its scene are loaded only when the solid is asked for; the sheet's pages likewise.
const SolidView = lazy(() => import('../solid/SolidView.tsx'));
const SheetPreview = lazy(() => import('../maker/SheetPreview.tsx'));

type View = 'old-and-new' | 'solid' | 'sheet';

/** *How to make it* for one gear: who makes it, the part that lasts, and the folder that they are given. */
export function useHowToMakeIt(job: Job, wheel: Wheel): QuestionParts {
  const store = useStoreOfPage();
  const { unit } = usePage((state) => state.settings);
  const machines = usePage((state) => state.machines);
  const wish = readMakingWish(wheel, machines);
  const found = useDesign(job, wheel.id, wish);
  const [view, setView] = useState<View>('old-and-new');
  const { design } = found;
  const shown = found.ask && design ? view : 'old-and-new';
  const isMade = wish.process !== undefined;
  return {
    drawing: (
      <>
        {found.ask && design && isMade && <Views view={shown} onView={setView} />}
        <Suspense fallback={<p className="make-wait">One moment …</p>}>
          {shown === 'solid' ? (
            <SolidView
              job={job}
              wheelId={wheel.id}
              process={wish.process?.key}
              material={wish.material}
              isLasting={isMade}
              onClose={() => setView('old-and-new')}
            />
          ) : shown === 'sheet' && found.ask ? (
            <SheetPreview ask={found.ask} />
          ) : (
            <Drawn job={job} wheel={wheel} found={found} />
          )}
        </Suspense>
      </>
    ),
    answer: <Answer told={tell(found, job)} isWorking={found.isWorking} />,
    next: !wish.maker ? (
      <AskMaker wheel={wheel} />
    ) : (
      <div className="entry">
        <MadeBy
          job={job}
          wheel={wheel}
          wish={wish}
          materialFound={
            design?.handed.part.design && splitMaterial(design.handed.part.design.material.name)[0]
          }
        />
        {found.fail && (
          <WaysOut
            fail={found.fail}
            onIdentify={() => store.go({ question: 'what-is-it' })}
            onMaker={(maker, process) =>
              store.changeWheel(wheel.id, 'made another way', (one) =>
                changeMaking(one, { maker, process, material: undefined, machine: undefined }),
              )
            }
            onAllTheSame={() =>
              store.changeWheel(wheel.id, 'made though it is too fine', (one) =>
                switchChange(one, 'fineness', false),
              )
            }
          />
        )}
        {found.ask && design && (
          <>
            <SaveFolder
              ask={found.ask}
              name={design.handed.handOver.for.name.replace(/^I'll /, 'who will ')}
            />
            <BeforeMaking part={design.handed.part} />
            <FolderContents handed={design.handed} />
          </>
        )}
      </div>
    ),
    why: design ? (
      <div className="why">
        {design.handed.part.design && (
          <Changes job={job} wheel={wheel} changes={design.handed.part.design.changes} unit={unit} />
        )}
        <Figures part={design.handed.part} unit={unit} />
      </div>
    ) : (
      <p>The changes and their reasons stand here once somebody is chosen.</p>
    ),
  };
}

function tell({ ask, design, fail }: FoundDesign, job: Job): DesignAnswer {
  if (!ask)
    return {
      sentence: 'That depends on who makes it.',
      certainty: 'undecided',
      word: 'yours to choose',
      more: ['Each maker gets a folder with just the right files, a message and a shopping list.'],
    };
  if (fail) return tellDesignFail(fail, job);
  if (design) return tellDesignAnswer(design.handed, job);
  return { sentence: 'Working it out.', certainty: 'undecided', word: 'working', more: [] };
}

function Answer({
  told,
  isWorking,
}: {
  readonly told: DesignAnswer;
  readonly isWorking: boolean;
}): ReactNode {
  return (
    <Verdict sentence={told.sentence} certainty={told.certainty} word={told.word} isWorking={isWorking}>
      {told.more.map((line) => (
        <p key={line} className="verdict-more">
          {line}
        </p>
      ))}
    </Verdict>
  );
}

const viewWords: readonly (readonly [View, string])[] = [
  ['old-and-new', 'Old and new'],
  ['solid', 'Show the solid'],
  ['sheet', 'Making sheet'],
];

function Views(props: { readonly view: View; readonly onView: (view: View) => void }): ReactNode {
  // The solid has buttons of its own there, with the way back among them.
  if (props.view === 'solid') return null;
  return (
    <div className="make-views">
      {viewWords.map(([key, words]) => (
        <button key={key} type="button" aria-pressed={key === props.view} onClick={() => props.onView(key)}>
          {words}
        </button>
      ))}
    </div>
  );
}

function Drawn(props: { readonly job: Job; readonly wheel: Wheel; readonly found: FoundDesign }): ReactNode {
  const { job, wheel, found } = props;
  const store = useStoreOfPage();
  const answer = usePage((state) => state.answers[wheel.id]);
  const isExample = usePage((state) => state.isExample);
  const { unit } = usePage((state) => state.settings);
  const { design } = found;
  const note = isExample
    ? 'An invented example'
    : design?.handed.part.isTrial
      ? 'Trial part'
      : job.invented
        ? 'Invented'
        : undefined;
  const titleBlock = titleBlockOf(job, wheel, note);
  if (found.ask && design) {
    const material = design.handed.part.design?.material.name ?? wheel.material;
    return (
      <OldAndNew
        drawing={design.drawing}
        isWorking={found.isWorking}
        unit={unit}
        titleBlock={{ ...titleBlock, material: material && splitMaterial(material)[0] }}
      />
    );
  }
  return (
    <GearDrawing
      wheel={wheel}
      report={answer?.report}
      drawing={answer && { ...answer.drawing, gears: answer.drawing.gears.slice(0, 1), expected: [] }}
      asked={[]}
      isWorking={found.isWorking}
      unit={unit}
      titleBlock={titleBlock}
      onTouch={(slot) => {
        store.go({ question: 'what-is-it' });
        store.openAct(slot);
      }}
    />
  );
}

/** What speaks against the part as it is, and what can hurt, beside the step where it can. */
function BeforeMaking({ part }: { readonly part: MadePart }): ReactNode {
  const cautions = part.design?.cautions ?? [];
  return (
    <>
      <section>
        <h3 className="make-title">Before you make it</h3>
        <ul className="make-list">
          {part.warnings
            .filter((warning) => cautions.length === 0 || !warning.startsWith('Not for lifting'))
            .map((warning) => (
              <li key={warning}>{warning}</li>
            ))}
        </ul>
      </section>
      {cautions.length > 0 && (
        <section>
          <h3 className="make-title">Take care</h3>
          <ul className="make-list">
            {cautions.map((caution) => (
              <li key={caution}>{caution}</li>
            ))}
          </ul>
        </section>
      )}
      {part.trialPlate && (
        <section>
          <h3 className="make-title">The trial plate: thin gears to roll by hand against the mate</h3>
          <ul className="make-list">
            {part.trialPlate.marks.map(({ mark, what }) => (
              <li key={mark}>{`${mark}: ${what}`}</li>
            ))}
          </ul>
        </section>
      )}
    </>
  );
}

function Figures({ part, unit }: { readonly part: MadePart; readonly unit: 'mm' | 'in' }): ReactNode {
  const { spec } = part;
  const rows: [string, string][] = [
    ['teeth', String(spec.teeth)],
    ['module', `${Number(spec.moduleMm.toFixed(4))} mm`],
    ['pressure angle', `${Number(spec.pressureAngleDeg.toFixed(2))}°`],
    ['slant (helix angle)', `${Number(spec.helixAngleDeg.toFixed(2))}°`],
    ['shift (profile shift)', spec.profileShift.toFixed(3)],
    ['rack: addendum, dedendum', `${Number(spec.addendum.toFixed(3))}, ${Number(spec.dedendum.toFixed(3))}`],
    ['thinned by', `${formatLength(spec.thinningMm, unit)} ${unit}`],
  ];
  return (
    <table className="why-readings">
      <tbody>
        {rows.map(([name, value]) => (
          <tr key={name}>
            <th scope="row">{name}</th>
            <td>{value}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
