import './make.css';
import { lazy, type ReactNode, Suspense, useEffect, useState } from 'react';
import { Fail, type Job, type MadePart, partFormats, processes, type Wheel } from '../../index.ts';
import { GearDrawing } from '../drawing/GearDrawing.tsx';
import { type Certainty, Verdict } from '../slip/Verdict.tsx';
import { handOver } from '../state/save-file.ts';
import { usePage, useStoreOfPage } from '../state/use-page.ts';
import { formatLength } from '../words/format-length.ts';
import { titleBlockOf } from '../words/title-block-of.ts';
import { Overtaken } from '../worker/ask-worker.ts';
import type { QuestionParts } from './question.ts';

// three and its scene are loaded only when the solid is asked for.
const SolidView = lazy(() => import('../solid/SolidView.tsx'));

type Plan = { readonly part: MadePart } | { readonly fail: Fail } | undefined;

/** *How to make it* for one gear: the part, what its maker must know, and its files. */
export function useHowToMakeIt(job: Job, wheel: Wheel): QuestionParts {
  const store = useStoreOfPage();
  const answer = usePage((state) => state.answers[wheel.id]);
  const { unit } = usePage((state) => state.settings);
  const isExample = usePage((state) => state.isExample);
  const [process, setProcess] = useState<string>(processes[0].key);
  const [plan, setPlan] = useState<Plan>();
  const [isSolid, setIsSolid] = useState(false);

  useEffect(() => {
    let isCurrent = true;
    store.worker
      .ask('make', {
        job,
        wheelId: wheel.id,
        process,
        answer: store.answerOf(job, wheel.id),
        formats: partFormats.map((one) => one.key),
      })
      .then(
        (part) => isCurrent && setPlan({ part }),
        (error: unknown) => {
          if (!isCurrent || error instanceof Overtaken) return;
          if (error instanceof Fail) setPlan({ fail: error });
          else store.fail(error);
        },
      );
    return () => {
      isCurrent = false;
    };
  }, [store, job, wheel.id, process]);

  const part = plan && 'part' in plan ? plan.part : undefined;
  return {
    drawing: isSolid ? (
      <Suspense fallback={<p className="make-wait">The solid is being made …</p>}>
        <SolidView job={job} wheelId={wheel.id} process={process} onClose={() => setIsSolid(false)} />
      </Suspense>
    ) : (
      <GearDrawing
        wheel={wheel}
        report={answer?.report}
        drawing={answer && { ...answer.drawing, gears: answer.drawing.gears.slice(0, 1), expected: [] }}
        asked={[]}
        isWorking={false}
        unit={unit}
        titleBlock={titleBlockOf(
          job,
          wheel,
          isExample ? 'An invented example' : part?.isTrial ? 'Trial part' : undefined,
        )}
        onTouch={(slot) => {
          store.go({ question: 'what-is-it' });
          store.openAct(slot);
        }}
      />
    ),
    answer: <Answer plan={plan} verdict={answer?.report.verdict} />,
    next: (
      <Next
        part={part}
        process={process}
        onProcess={setProcess}
        isSolid={isSolid}
        onSolid={() => setIsSolid((was) => !was)}
        onBack={() => store.go({ question: 'what-is-it' })}
      />
    ),
    why: part ? <Figures part={part} unit={unit} /> : <p>The figures stand here once there is an answer.</p>,
  };
}

function Answer(props: { readonly plan: Plan; readonly verdict: Certainty | undefined }): ReactNode {
  const { plan, verdict } = props;
  if (plan && 'fail' in plan) {
    const { message } = plan.fail;
    return (
      <Verdict
        sentence={`Not yet: ${message}.`}
        certainty={plan.fail.code === 'not-identified' ? 'undecided' : 'nothing-fits'}
        isWorking={false}
      >
        <p className="verdict-more">{plan.fail.remedy}</p>
      </Verdict>
    );
  }
  if (!plan) return <Verdict sentence="Working it out." certainty="undecided" isWorking />;
  const { part } = plan;
  return (
    <Verdict
      sentence={
        <>
          {part.isTrial ? 'A trial part' : 'A part'} of {part.spec.teeth} teeth, size{' '}
          {Number(part.spec.moduleMm.toFixed(4))}. <small>(module)</small>
        </>
      }
      // A spec that was given needs no verdict of its own.
      certainty={part.isTrial ? 'undecided' : (verdict ?? 'certain')}
      isWorking={false}
    >
      {part.isTrial && (
        <p className="verdict-more">
          The answer is not sure enough to rely on, or a reading doesn't agree: try it by hand first.
        </p>
      )}
    </Verdict>
  );
}

function Next(props: {
  readonly part: MadePart | undefined;
  readonly process: string;
  readonly onProcess: (key: string) => void;
  readonly isSolid: boolean;
  readonly onSolid: () => void;
  readonly onBack: () => void;
}): ReactNode {
  const { part, process, onProcess, isSolid, onSolid, onBack } = props;
  if (!part) {
    return (
      <div className="entry-row">
        <button type="button" className="next" onClick={onBack}>
          What is it?
        </button>
      </div>
    );
  }
  const [main, ...plate] = groupFiles(part);
  return (
    <div className="entry">
      <label>
        How will it be made?
        <br />
        <select value={process} onChange={(event) => onProcess(event.currentTarget.value)}>
          {processes.map(({ key, name }) => (
            <option key={key} value={key}>
              {name}
            </option>
          ))}
        </select>
      </label>
      <section>
        <h3 className="make-title">Before you make it</h3>
        <ul className="make-warnings">
          {part.warnings.map((warning) => (
            <li key={warning}>{warning}</li>
          ))}
        </ul>
      </section>
      <Files title={part.isTrial ? 'The trial part' : 'The part'} files={main} isNext />
      {plate.map((files) => (
        <div key={files[0].name}>
          <Files
            title="The trial plate: thin gears to roll by hand against the mate"
            files={files}
            isNext={false}
          />
          <ul className="make-warnings">
            {part.trialPlate?.marks.map(({ mark, what }) => (
              <li key={mark}>{`${mark}: ${what}`}</li>
            ))}
          </ul>
        </div>
      ))}
      <div className="entry-row">
        <button type="button" aria-pressed={isSolid} onClick={onSolid}>
          {isSolid ? 'Back to the drawing' : 'Show the solid'}
        </button>
      </div>
    </div>
  );
}

/** The part's files first, then those of the trial plate. */
function groupFiles(part: MadePart): (typeof part.files)[] {
  const count = partFormats.length;
  const groups = [part.files.slice(0, count)];
  if (part.files.length > count) groups.push(part.files.slice(count));
  return groups;
}

function Files(props: {
  readonly title: string;
  readonly files: MadePart['files'];
  readonly isNext: boolean;
}): ReactNode {
  const { title, files, isNext } = props;
  return (
    <section>
      <h3 className="make-title">{title}</h3>
      <ul className="make-files">
        {files.map((file) => {
          const format = partFormats.find((one) => file.name.endsWith(`.${one.extension}`));
          return (
            <li key={file.name}>
              <button
                type="button"
                className={isNext && format?.key === '3mf' ? 'next' : undefined}
                onClick={() =>
                  handOver(file.bytes, file.name, format?.mediaType ?? 'application/octet-stream')
                }
              >
                Save {format?.extension.toUpperCase()}
              </button>
              <span>
                {format?.forWhom}{' '}
                <span className="entry-hint">{`${Math.ceil(file.bytes.length / 1000)} kB`}</span>
              </span>
            </li>
          );
        })}
      </ul>
    </section>
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
