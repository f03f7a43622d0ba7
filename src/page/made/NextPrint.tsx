import '../maker/maker.css';
import type { ReactNode } from 'react';
import { type MadeReport, processes, type Wheel } from '../../index.ts';
import { nameMachine, usualMachineName } from '../machine/name-machine.ts';
import { tellFigures } from '../machine/tell-machine.ts';
import { changeMaking } from '../maker/making-wish.ts';
import { Instead } from '../slip/Instead.tsx';
import type { Slot } from '../state/slot.ts';
import { usePage, useStoreOfPage } from '../state/use-page.ts';

/** What the part tells of the machine that made it, to be taken back next time, and the record of the repair. */
export function NextPrint(props: {
  readonly wheel: Wheel;
  readonly report: MadeReport | undefined;
  readonly acts: readonly Slot[];
  readonly onRecord: () => void;
}): ReactNode {
  const { wheel, report, acts, onRecord } = props;
  const store = useStoreOfPage();
  const machines = usePage((state) => state.machines);
  const name = wheel.making?.machine ?? nameMachine(usualMachineName(report?.process), wheel.made?.material);
  const kept = machines.find((one) => one.name === name);
  if (!report) return <p>One moment …</p>;
  const { compensation, uncertainty } = report.next;
  const isTaken =
    kept?.file.coupons === undefined &&
    JSON.stringify(kept?.file.compensation) === JSON.stringify(compensation) &&
    wheel.making?.machine === name;
  const isPrinted = processes.find(({ key }) => key === report.process)?.isLayered === true;
  const isRight = report.verdict === 'fits';
  const take = (): void => {
    void store.keepMachine(name, {
      format: 'sparetooth-compensation',
      version: 1,
      machine: kept?.file.machine ?? usualMachineName(report.process),
      ...(wheel.made?.material === undefined ? {} : { material: wheel.made.material }),
      process: report.process,
      compensation,
      uncertainty,
    });
    store.changeWheel(wheel.id, 'the next one corrected', (one) => changeMaking(one, { machine: name }));
  };
  return (
    <div className="entry">
      <p>
        {isRight && report.chance < 0.8
          ? 'Try it in its place before you rely on it: turn it by hand once round, nothing switched on.'
          : isRight
            ? 'It can go in. Turn it by hand once round before anything is switched on.'
            : isPrinted
              ? 'Print another one, with what this one tells of the printer taken back.'
              : 'Have another one made, and send these sizes with it.'}
      </p>
      {isPrinted && (
        <section>
          <h3 className="make-title">For the next one</h3>
          <ul className="make-list">
            {tellFigures(compensation, uncertainty).map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
          <div className="entry-row">
            <button
              type="button"
              className={isRight || isTaken ? undefined : 'next'}
              disabled={isTaken}
              onClick={take}
            >
              {isTaken ? 'Taken: it is in the next files' : 'Take this for the next one'}
            </button>
            {isTaken && kept && (
              <button
                type="button"
                onClick={() => {
                  void store.stepMachineBack(name);
                  if (kept.past.length === 0)
                    store.changeWheel(wheel.id, 'the correction taken back', (one) =>
                      changeMaking(one, { machine: undefined }),
                    );
                }}
              >
                Put it back as it was
              </button>
            )}
          </div>
        </section>
      )}
      <div className="entry-row">
        <button type="button" className={isRight ? 'next' : undefined} onClick={onRecord}>
          Repair record
        </button>
        <button
          type="button"
          className={!isRight && isTaken ? 'next' : undefined}
          onClick={() => store.go({ question: 'how-to-make-it' })}
        >
          Make another one
        </button>
      </div>
      <Instead slots={acts} most={6} onOpen={(slot) => store.openAct(slot)} />
    </div>
  );
}
