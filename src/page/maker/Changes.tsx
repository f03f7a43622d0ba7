import './maker.css';
import type { ReactNode } from 'react';
import { capitalize, type Job, type PartChange, type Wheel } from '../../index.ts';
import { useStoreOfPage } from '../state/use-page.ts';
import { formatLength } from '../words/format-length.ts';
import { withNames } from '../words/with-names.ts';
import { switchChange } from './making-wish.ts';

/** Everything that is changed so that it lasts, each with its reason and a button that leaves it out. */
export function Changes(props: {
  readonly job: Job;
  readonly wheel: Wheel;
  readonly changes: readonly PartChange[];
  readonly unit: 'mm' | 'in';
}): ReactNode {
  const { job, wheel, changes, unit } = props;
  const store = useStoreOfPage();
  if (changes.length === 0) return <p>Nothing had to be changed: it is a copy of the old gear.</p>;
  return (
    <section>
      <h3 className="why-title">Changed, so that it lasts</h3>
      <ul className="make-changes">
        {changes.map((change) => {
          const { key, what, why, isOn, canTurnOff, withdrawn } = change;
          const name = capitalize(what);
          return (
            <li key={key}>
              <div className="make-change-head">
                <span className={isOn ? undefined : 'make-change-off'}>
                  {name}
                  {tellStep(change, unit)}
                </span>
                {canTurnOff && withdrawn === undefined && (
                  <button
                    type="button"
                    onClick={() =>
                      store.changeWheel(wheel.id, isOn ? `${what}: left out` : `${what}: made`, (one) =>
                        switchChange(one, key, !isOn),
                      )
                    }
                  >
                    {isOn ? 'Leave it out' : 'Put it in'}
                    <span className="unseen">{`: ${what}`}</span>
                  </button>
                )}
              </div>
              {!isOn && (
                <p className="make-change-off">{withdrawn ? `Not made: ${withdrawn}` : 'Left out.'}</p>
              )}
              <p>{capitalize(withNames(why, job))}</p>
            </li>
          );
        })}
      </ul>
    </section>
  );
}

function tellStep({ from, to, unit: of }: PartChange, unit: 'mm' | 'in'): string {
  if (from === null && to === null) return '';
  const show = (value: number | string | null): string =>
    value === null
      ? 'none'
      : typeof value === 'string'
        ? value
        : of === 'mm'
          ? `${Math.abs(value) < 0.1 && unit === 'mm' ? value.toFixed(3) : formatLength(value, unit)}`
          : String(Number(value.toPrecision(4)));
  const name = of === 'mm' ? ` ${unit}` : of === 'degrees' ? '°' : '';
  return `: ${show(from)} → ${show(to)}${name}`;
}
