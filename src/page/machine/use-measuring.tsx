import '../maker/maker.css';
import '../questions/why.css';
import { type ReactNode, useEffect, useState } from 'react';
import type { CompensationFile, Fail, Job, Wheel } from '../../index.ts';
import { readField } from '../entries/read-field.ts';
import { TakeField } from '../entries/TakeField.tsx';
import { changeMaking, type MakingWish } from '../maker/making-wish.ts';
import type { QuestionParts } from '../questions/question.ts';
import { type Certainty, Verdict } from '../slip/Verdict.tsx';
import { handOver } from '../state/save-file.ts';
import { usePage, useStoreOfPage } from '../state/use-page.ts';
import type { Asks } from '../worker/asks.ts';
import { hearOut } from '../worker/hear-out.ts';
import { CouponSheet } from './CouponSheet.tsx';
import {
  type CouponAct,
  isSameAct,
  listCouponActs,
  putCouponReading,
  readCouponAct,
  tellCouponAct,
} from './coupon-acts.ts';
import { nameMachine, usualMachineName } from './name-machine.ts';
import { tellFigures } from './tell-machine.ts';

/** *My printer, as measured*: the coupon, its readings, and what the files will take back. Nothing while it is shut. */
export function useMeasuring(props: {
  readonly job: Job;
  readonly wheel: Wheel;
  readonly wish: MakingWish;
  /** What the part is made of, a key of the materials */
  readonly material: string | undefined;
  readonly isOpen: boolean;
  readonly onClose: () => void;
}): QuestionParts | undefined {
  const { job, wheel, wish, material, isOpen, onClose } = props;
  const store = useStoreOfPage();
  const machines = usePage((state) => state.machines);
  const drafts = usePage((state) => state.drafts);
  const { process } = wish;
  const thing = process?.key === 'laser-cut' ? 'cutter' : 'printer';
  const [name, setName] = useState<string>();
  const [asked, setAsked] = useState<CouponAct>();
  const [coupon, setCoupon] = useState(0);
  const machine = name ?? wish.machine?.file.machine ?? usualMachineName(process?.key);
  const shownName = (name === undefined ? wish.machine?.name : undefined) ?? nameMachine(machine, material);
  const kept = machines.find((one) => one.name === shownName && one.file.process === process?.key);
  const file: CompensationFile = kept?.file ?? {
    format: 'sparetooth-compensation',
    version: 1,
    machine,
    ...(material === undefined ? {} : { material }),
    ...(process ? { process: process.key } : {}),
    ...(job.kit ? { kit: kitOf(job) } : {}),
  };
  const { came, fail } = useCompensation(isOpen && process ? file : undefined);
  if (!isOpen || !process) return undefined;
  const acts = listCouponActs(process.key);
  const readings = file.coupons?.[coupon]?.readings ?? [];
  const hasStarted = file.coupons !== undefined;
  const act = asked ?? acts.find((one) => !readings.some((reading) => isSameAct(one, reading)));
  const draft = act ? `machine ${shownName} ${coupon} ${act.of} ${act.nominalMm ?? ''}` : '';
  const text = drafts[draft] ?? '';
  const count = came?.found.calibration.coupons ?? 0;
  const keep = (next: CompensationFile): void => {
    void store.keepMachine(shownName, next);
    if (wheel.making?.machine !== shownName)
      store.changeWheel(wheel.id, `drawn for ${shownName}`, (one) =>
        changeMaking(one, { machine: shownName }),
      );
  };
  return {
    drawing: came ? (
      <CouponSheet face={came.face} act={hasStarted ? act : undefined} name={shownName} />
    ) : (
      <p className="make-wait">One moment …</p>
    ),
    answer: <Answer came={came} fail={fail} thing={thing} />,
    next: !hasStarted ? (
      <Print
        processKey={process.key}
        name={machine}
        onName={setName}
        thing={thing}
        onStart={() => keep({ ...file, coupons: [{ readings: [] }] })}
        onImport={async (bytes) => {
          try {
            const opened = await store.worker.ask('machine', { bytes });
            const called = nameMachine(opened.machine || machine, opened.material);
            await store.keepMachine(called, opened);
            setName(undefined);
            store.changeWheel(wheel.id, `drawn for ${called}`, (one) =>
              changeMaking(one, { machine: called }),
            );
            if (opened.process !== process.key)
              store.say(`${called} is kept, but it makes parts another way than this one is made.`);
          } catch (error) {
            store.fail(error);
          }
        }}
        onClose={onClose}
      />
    ) : (
      <div className="entry">
        {act ? (
          <TakeCoupon
            key={draft}
            act={act}
            coupon={coupon}
            text={text}
            onType={(typed) => store.keepDraft(draft, typed)}
            onTake={() => {
              const content = readField(text, 'mm');
              if ('wrong' in content) return content.wrong;
              const read = readCouponAct(act, content.lengths);
              if ('wrong' in read) return read.wrong;
              store.keepDraft(draft, '');
              setAsked(undefined);
              keep(putCouponReading(file, coupon, read.reading));
              return undefined;
            }}
            others={acts.filter((one) => !isSameAct(one, act))}
            onOther={setAsked}
          />
        ) : (
          <p>
            {count < 3
              ? `That was coupon ${coupon + 1}. A second and a third say how much one print differs from the next.`
              : 'That is as sure as coupons make it.'}
          </p>
        )}
        <div className="entry-row">
          <button type="button" className={act ? undefined : 'next'} onClick={onClose}>
            {act ? 'That will do: back to the part' : 'Back to the part'}
          </button>
          {!act && coupon < 4 && (
            <button type="button" onClick={() => setCoupon(coupon + 1)}>
              Read another coupon
            </button>
          )}
          {kept && kept.past.length > 0 && (
            <button type="button" onClick={() => void store.stepMachineBack(shownName)}>
              Take the last reading back
            </button>
          )}
        </div>
      </div>
    ),
    why: <Readings came={came} file={file} name={shownName} />,
  };
}

function useCompensation(file: CompensationFile | undefined): {
  readonly came: Asks['compensation']['answer'] | undefined;
  readonly fail: Fail | undefined;
} {
  const store = useStoreOfPage();
  const [state, setState] = useState<{
    readonly came?: Asks['compensation']['answer'];
    readonly fail?: Fail;
  }>({});
  const key = file && JSON.stringify(file);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the file is known by what it says
  useEffect(() => {
    if (!file) return;
    return hearOut(store.worker.ask('compensation', { file }), {
      onAnswer: (came) => setState({ came }),
      onFail: (fail) => setState((old) => ({ ...old, fail })),
      onTrouble: store.fail,
    });
  }, [store, key]);
  return { came: state.came, fail: state.fail };
}

function Answer(props: {
  readonly came: Asks['compensation']['answer'] | undefined;
  readonly fail: Fail | undefined;
  readonly thing: string;
}): ReactNode {
  const { came, fail, thing } = props;
  if (fail)
    return (
      <Verdict sentence={`${fail.message}.`} certainty="undecided" word="can't tell yet" isWorking={false}>
        <p className="verdict-more">{fail.remedy}</p>
      </Verdict>
    );
  if (!came) return <Verdict sentence="Working it out." certainty="undecided" word="working" isWorking />;
  const { found } = came;
  const { coupons, betweenPrintsMm } = found.calibration;
  const certainty: Certainty = found.from === 'usual' ? 'undecided' : coupons >= 3 ? 'certain' : 'likely';
  return (
    <Verdict
      sentence={
        found.from === 'usual'
          ? `What is usual for such a ${thing}, not yet yours.`
          : `My ${thing}, as ${found.from === 'coupons' ? 'measured' : 'corrected by a part'}.`
      }
      certainty={certainty}
      word={
        found.from === 'coupons'
          ? `${coupons} ${coupons === 1 ? 'coupon' : 'coupons'}`
          : found.from === 'usual'
            ? 'nothing measured'
            : 'from a part'
      }
      isWorking={false}
    >
      {[
        ...tellFigures(found.figures, found.uncertainty),
        ...(found.from === 'coupons'
          ? [`One print differs from the next by about ${betweenPrintsMm.toFixed(2)} mm a side.`]
          : []),
      ].map((line) => (
        <p key={line} className="verdict-more">
          {line}
        </p>
      ))}
    </Verdict>
  );
}

function Print(props: {
  readonly processKey: string;
  readonly name: string;
  readonly onName: (name: string) => void;
  readonly thing: string;
  readonly onStart: () => void;
  readonly onImport: (bytes: Uint8Array) => void;
  readonly onClose: () => void;
}): ReactNode {
  const { processKey, name, onName, thing, onStart, onImport, onClose } = props;
  const store = useStoreOfPage();
  const [coupon, setCoupon] = useState<Asks['coupon']['answer']>();
  useEffect(() => {
    return hearOut(store.worker.ask('coupon', { process: processKey }), {
      onAnswer: setCoupon,
      onTrouble: store.fail,
    });
  }, [store, processKey]);
  return (
    <div className="entry">
      <label className="make-name">
        {`What do you call this ${thing}?`}
        <input value={name} autoComplete="off" onChange={(event) => onName(event.currentTarget.value)} />
      </label>
      {coupon && (
        <>
          <ul className="make-files">
            {coupon.files
              .filter((one) => !one.name.endsWith('.json'))
              .map((one) => (
                <li key={one.name}>
                  <button type="button" onClick={() => handOver(one.bytes, one.name, 'model/stl')}>
                    {`Save ${one.name}`}
                  </button>
                  <span>{`${Math.ceil(one.bytes.length / 1000)} kB, in mm`}</span>
                </li>
              ))}
          </ul>
          {/* The last of the steps is the command line's. */}
          <ol className="make-list">
            {coupon.steps.slice(0, -1).map((step) => (
              <li key={step}>{step}</li>
            ))}
          </ol>
        </>
      )}
      <div className="entry-row">
        <button type="button" className="next" disabled={name.trim() === ''} onClick={onStart}>
          It is made: read the first one
        </button>
        <button type="button" onClick={onClose}>
          Back to the part
        </button>
      </div>
      <label className="make-name">
        {`Or open the file of a ${thing} that was measured before`}
        <input
          type="file"
          accept=".json,application/json"
          data-testid="open-machine"
          onChange={(event) => {
            const [chosen] = event.currentTarget.files ?? [];
            if (chosen) void chosen.arrayBuffer().then((bytes) => onImport(new Uint8Array(bytes)));
          }}
        />
      </label>
    </div>
  );
}

function TakeCoupon(props: {
  readonly act: CouponAct;
  readonly coupon: number;
  readonly text: string;
  readonly onType: (text: string) => void;
  readonly onTake: () => string | undefined;
  readonly others: readonly CouponAct[];
  readonly onOther: (act: CouponAct) => void;
}): ReactNode {
  const { act, coupon, text, onType, onTake, others, onOther } = props;
  const words = tellCouponAct(act);
  return (
    <>
      <h3 className="make-title">
        {words.title} <small className="entry-hint">{`coupon ${coupon + 1}`}</small>
      </h3>
      <p>{words.how}</p>
      <TakeField
        label={words.label}
        text={text}
        mode="decimal"
        onType={onType}
        onTake={onTake}
        unit={<span className="entry-unit">mm</span>}
      />
      <details>
        <summary>Something else instead</summary>
        <ul className="make-who">
          {others.map((one) => (
            <li key={`${one.of} ${one.nominalMm}`}>
              <button type="button" className="plain" onClick={() => onOther(one)}>
                {tellCouponAct(one).title}
              </button>
            </li>
          ))}
        </ul>
      </details>
    </>
  );
}

function Readings(props: {
  readonly came: Asks['compensation']['answer'] | undefined;
  readonly file: CompensationFile;
  readonly name: string;
}): ReactNode {
  const { came, file, name } = props;
  const readings = came?.found.calibration.readings ?? [];
  return (
    <div className="why">
      {readings.length === 0 ? (
        <p>The readings stand here once there are some.</p>
      ) : (
        <table className="why-readings">
          <thead>
            <tr>
              <th scope="col">reading</th>
              <th scope="col">read, mm</th>
              <th scope="col">expected</th>
            </tr>
          </thead>
          <tbody>
            {readings.map(({ coupon, reading, of, readMm, expectedMm, isLeftOut }) => {
              const taken = file.coupons?.[coupon]?.readings?.[reading];
              const words = tellCouponAct({ of, nominalMm: taken?.nominalMm }).title;
              return (
                <tr key={`${coupon} ${reading}`} className={isLeftOut ? 'why-suspect' : undefined}>
                  <th scope="row">
                    {`${coupon + 1}: ${words}${isLeftOut ? ' (so far off that it was not used)' : ''}`}
                  </th>
                  <td>{readMm.toFixed(2)}</td>
                  <td>{expectedMm.toFixed(2)}</td>
                </tr>
              );
            })}
          </tbody>
        </table>
      )}
      <div className="entry-row">
        <button
          type="button"
          onClick={() =>
            handOver(
              new TextEncoder().encode(`${JSON.stringify(file, null, 2)}\n`),
              `${name.replace(/[^\p{L}\p{N}.]+/gu, '-')}.json`,
              'application/json',
            )
          }
        >
          Save these figures as a file
        </button>
      </div>
    </div>
  );
}

/** What of the kit a coupon's readings are weighed by. */
function kitOf({ kit }: Job): NonNullable<CompensationFile['kit']> {
  const { caliper, uMm, zeroMm, zeroUMm } = kit ?? {};
  return {
    ...(caliper === undefined ? {} : { caliper }),
    ...(uMm === undefined ? {} : { uMm }),
    ...(zeroMm === undefined ? {} : { zeroMm }),
    ...(zeroUMm === undefined ? {} : { zeroUMm }),
  };
}
