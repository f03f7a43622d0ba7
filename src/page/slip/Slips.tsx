import './slips.css';
import type { ReactNode } from 'react';
import { type Job, tellSlip, type Wheel, type WheelReport } from '../../index.ts';
import { applyRepair, nameRepair } from '../state/apply-repair.ts';
import { type Slot, slotOf } from '../state/slot.ts';

/** Readings that don't agree, each with the kindest way to put it right in one tap. */
export function Slips(props: {
  readonly job: Job;
  readonly wheel: Wheel;
  readonly report: WheelReport;
  readonly onOpen: (slot: Slot) => void;
  /** Mending it is what to do next */
  readonly isNext: boolean;
  readonly onRepair: (what: string, edit: (wheel: Wheel) => Wheel) => void;
}): ReactNode {
  const { job, wheel, report, onOpen, onRepair, isNext } = props;
  if (report.suspect.length === 0) return null;
  return (
    <section className="slips">
      <h3 className="slips-title">Doesn't agree</h3>
      {report.suspect.map((suspect) => {
        const words = nameRepair(suspect);
        const reading = wheel.readings?.[suspect.reading];
        const slot = reading ? slotOf(reading) : { of: 'zero' };
        return (
          <div key={suspect.reading} className="slips-one">
            <p>{tellSlip(report, suspect, job)}</p>
            <div className="entry-row">
              {words !== undefined && (
                <button
                  type="button"
                  className={isNext ? 'next' : undefined}
                  onClick={() => onRepair(words, (one) => applyRepair(one, suspect))}
                >
                  {words}
                </button>
              )}
              <button type="button" onClick={() => onOpen(slot)}>
                {suspect.of === 'zero' ? 'Set the zero' : 'Take it again'}
              </button>
            </div>
          </div>
        );
      })}
    </section>
  );
}
