import './why.css';
import type { ReactNode } from 'react';
import { capitalize, namePitch, tellOdds, type Wheel, type WheelReport } from '../../index.ts';
import { type Slot, slotOf } from '../state/slot.ts';
import { formatLength } from '../words/format-length.ts';
import { nameAct } from '../words/name-act.ts';

/** Why the answer is what it is: what it could also be, then every reading beside what was expected. */
export function Why(props: {
  readonly wheel: Wheel;
  readonly report: WheelReport | undefined;
  readonly unit: 'mm' | 'in';
  readonly onOpen: (slot: Slot) => void;
  readonly onDrop: (index: number) => void;
}): ReactNode {
  const { wheel, report, unit, onOpen, onDrop } = props;
  return (
    <div className="why">
      {report && <Rivals report={report} />}
      <Readings wheel={wheel} report={report} unit={unit} onOpen={onOpen} onDrop={onDrop} />
      {report?.notes.map((note) => (
        <p key={note}>{`${capitalize(note)}.`}</p>
      ))}
    </div>
  );
}

function Rivals({ report }: { readonly report: WheelReport }): ReactNode {
  if (report.verdict === 'nothing-fits' || report.candidates.length === 0) return null;
  const others = report.candidates.slice(1, 7).filter((one) => one.probability >= 0.005);
  if (others.length === 0) return null;
  return (
    <section>
      <h3 className="why-title">It could also be</h3>
      <ul className="why-rivals">
        {others.map((one) => (
          <li key={`${one.system}${one.size}${one.teeth}${one.pressureAngleDeg}`}>
            <span>{`${namePitch(one)}, ${one.teeth} teeth, ${one.pressureAngleDeg}°`}</span>
            <span className="why-odds">{tellOdds(one.probability)}</span>
          </li>
        ))}
      </ul>
    </section>
  );
}

function Readings(props: {
  readonly wheel: Wheel;
  readonly report: WheelReport | undefined;
  readonly unit: 'mm' | 'in';
  readonly onOpen: (slot: Slot) => void;
  readonly onDrop: (index: number) => void;
}): ReactNode {
  const { wheel, report, unit, onOpen, onDrop } = props;
  const readings = wheel.readings ?? [];
  if (readings.length === 0) return <p>No reading yet.</p>;
  const residuals = new Map(report?.candidates[0]?.residuals.map((one) => [one.reading, one]));
  const suspects = new Set(report?.suspect.map((one) => one.reading));
  return (
    <section>
      <h3 className="why-title">Read and expected</h3>
      <table className="why-readings">
        <thead>
          <tr>
            <th scope="col">reading, {unit}</th>
            <th scope="col">read</th>
            <th scope="col">expected</th>
            <th scope="col">
              <span className="unseen">remove</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {readings.map((reading, index) => {
            const residual = residuals.get(index);
            const name = nameAct(slotOf(reading));
            return (
              // biome-ignore lint/suspicious/noArrayIndexKey: a reading is known by its place, as in the job file
              <tr key={index} className={suspects.has(index) ? 'why-suspect' : undefined}>
                <th scope="row">
                  <button type="button" className="plain" onClick={() => onOpen(slotOf(reading))}>
                    {name}
                  </button>
                </th>
                <td>{residual ? formatLength(residual.read, unit) : tellValue(reading, unit)}</td>
                <td>{residual ? `(${formatLength(residual.expected, unit)})` : ''}</td>
                <td>
                  <button
                    type="button"
                    className="plain"
                    aria-label={`Remove ${name}`}
                    onClick={() => onDrop(index)}
                  >
                    ×
                  </button>
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </section>
  );
}

/** A reading that nothing is expected of, as it was given. */
function tellValue(reading: NonNullable<Wheel['readings']>[number], unit: 'mm' | 'in'): string {
  if (reading.of === 'teeth') {
    if (reading.count !== undefined) return String(reading.count);
    if (reading.left !== undefined) return `${reading.left} + ${(reading.missing ?? []).join(' or ')}`;
    return `${(reading.pitches ?? 0) + 1} over ${reading.overDeg ?? '?'}°`;
  }
  if (reading.of === 'helix-angle') return reading.deg === undefined ? '' : `${reading.deg}°`;
  if (reading.of === 'hand-roll') return reading.felt ?? '';
  if (reading.of === 'bore' && reading.goesMm !== undefined) {
    const stops = reading.stopsMm === undefined ? '' : `–${formatLength(reading.stopsMm, unit)}`;
    return `${formatLength(reading.goesMm, unit)}${stops}`;
  }
  const mm = 'mm' in reading ? reading.mm : undefined;
  if (mm === undefined) return '';
  const takings = typeof mm === 'number' ? [mm] : mm;
  return formatLength(takings.reduce((sum, one) => sum + one, 0) / takings.length, unit);
}
