import './fit-rows.css';
import type { ReactNode } from 'react';
import type { Job, SubstitutesReport, TrainRow } from '../../index.ts';
import { orderWheels } from '../state/order-wheels.ts';
import { useStoreOfPage } from '../state/use-page.ts';
import { nameWheel } from '../words/name-wheel.ts';
import { tellRuns } from './tell-fits.ts';
import { nameTrain, tellError, tellFine, tellNew, tellTrainRuns } from './tell-trains.ts';

/** The trains to compare side by side: those that nothing beats, then the others that came near. */
export function TrainRows(props: {
  readonly job: Job;
  readonly rows: readonly TrainRow[];
  readonly chosen: TrainRow | undefined;
  readonly onChoose: (row: TrainRow) => void;
}): ReactNode {
  const { job, rows, chosen, onChoose } = props;
  const groups = [
    { words: 'Nothing beats these', of: rows.filter((row) => row.isOnFront) },
    { words: 'Others that come near', of: rows.filter((row) => !row.isOnFront) },
  ];
  return groups.map(({ words, of }) =>
    of.length === 0 ? null : (
      <section key={words}>
        <h3 className="why-title">{words}</h3>
        <ul className="fit-rows">
          {of.map((row) => (
            <li key={row.meshes.map((mesh) => `${mesh.driver.name} ${mesh.driven.name}`).join('; ')}>
              <button
                type="button"
                className="fit-row"
                aria-pressed={row === chosen}
                onClick={() => onChoose(row)}
              >
                <span className="fit-row-name">{nameTrain(row)}</span>
                <span>{tellError(row)}</span>
                <span>{tellTrainRuns(row)}</span>
                <span className="fit-row-whole">{tellNew(row, job)}</span>
                <span className="fit-row-whole">{tellFine(row)}</span>
              </button>
            </li>
          ))}
        </ul>
      </section>
    ),
  );
}

/** One gear for another: the best that was found for each that is broken. */
export function GearByGear({
  job,
  report,
}: {
  readonly job: Job;
  readonly report: SubstitutesReport;
}): ReactNode {
  const store = useStoreOfPage();
  return (
    <section>
      <h3 className="why-title">One gear for another</h3>
      <ul className="fit-rows">
        {report.wheels.map((wheel) => {
          const best = wheel.rows.find((row) => row.fits);
          return (
            <li key={wheel.id}>
              <button
                type="button"
                className="fit-row"
                onClick={() => store.turnTo({ wheelId: wheel.id }, 'what-fits')}
              >
                <span className="fit-row-name">{nameWheel(job, wheel.id)}</span>
                <span>{best ? best.name : wheel.need ? 'nothing fits' : 'not known well enough'}</span>
                <span>{best ? tellRuns(best) : ''}</span>
              </button>
            </li>
          );
        })}
      </ul>
    </section>
  );
}

/** Which gears another train may change; a choice begins the search anew. */
export function MayChange(props: {
  readonly job: Job;
  readonly changing: readonly string[];
  readonly onChange: (ids: readonly string[]) => void;
}): ReactNode {
  const { job, changing, onChange } = props;
  const wheels = orderWheels(job).filter((wheel) =>
    (job.meshes ?? []).some((mesh) => mesh.driver === wheel.id || mesh.driven === wheel.id),
  );
  return (
    <fieldset className="may-change">
      <legend className="why-title">These may change</legend>
      {wheels.map((wheel) => (
        <label key={wheel.id}>
          <input
            type="checkbox"
            checked={changing.includes(wheel.id)}
            onChange={(event) =>
              onChange(
                event.currentTarget.checked
                  ? [...changing, wheel.id]
                  : changing.filter((id) => id !== wheel.id),
              )
            }
          />
          {wheel.name ?? wheel.id}
        </label>
      ))}
    </fieldset>
  );
}
