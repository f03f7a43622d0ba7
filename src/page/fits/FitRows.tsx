import './fit-rows.css';
import type { ReactNode } from 'react';
import type { SubstituteRow, WheelSubstitutes } from '../../index.ts';
import { fitKinds, sizeOf, tellFrom, tellRuns, tellSpeed, tellWork } from './tell-fits.ts';

/** Everything that was found, to compare side by side; the one that is touched stands on the sheet. */
export function FitRows(props: {
  readonly found: WheelSubstitutes;
  readonly chosen: SubstituteRow | undefined;
  readonly onChoose: (row: SubstituteRow) => void;
}): ReactNode {
  const { found, chosen, onChoose } = props;
  const rows = [...found.rows, ...found.traps];
  return (
    <>
      {fitKinds.map(({ kind, words }) => {
        const ofKind = rows.filter((row) => row.kind === kind);
        if (ofKind.length === 0) return null;
        return (
          <section key={kind}>
            <h3 className="why-title">{words}</h3>
            <ul className="fit-rows">
              {ofKind.map((row) => (
                <li key={`${row.name} ${row.part?.id ?? ''} ${row.pitch.moduleMm}`}>
                  <button
                    type="button"
                    className="fit-row"
                    aria-pressed={row === chosen}
                    onClick={() => onChoose(row)}
                  >
                    <span className="fit-row-name">{`${row.teeth} teeth, ${sizeOf(row)}${materialOf(row)}`}</span>
                    <span>{tellRuns(row)}</span>
                    <span>{tellSpeed(row)}</span>
                    <span>{tellWork(row)}</span>
                    <span>{tellFrom(row)}</span>
                  </button>
                </li>
              ))}
            </ul>
          </section>
        );
      })}
    </>
  );
}

function materialOf({ part }: SubstituteRow): string {
  return part?.material ? `, ${part.material}` : '';
}
