import type { ReactNode } from 'react';
import type { Job, SubstitutesReport, TrainRow, WheelPick } from '../../index.ts';
import { useStoreOfPage } from '../state/use-page.ts';
import { nameWheel } from '../words/name-wheel.ts';
import { acceptRow } from './accept-row.ts';
import { SearchWords } from './SearchWords.tsx';
import { asSentence } from './tell-fits.ts';
import { nameTrain } from './tell-trains.ts';

/** What to get, make and alter for the chosen train, and taking it into the job as one change. */
export function TrainFitNext(props: {
  readonly job: Job;
  readonly report: SubstitutesReport | undefined;
  readonly row: TrainRow | undefined;
}): ReactNode {
  const { job, report, row } = props;
  const store = useStoreOfPage();
  if (!report) return <p>One moment …</p>;
  if (!row) {
    const [first] = report.wheels.filter((wheel) => wheel.rows.some((one) => one.fits)).concat(report.wheels);
    if (!first) return <p>Add the gears of the machine first.</p>;
    return (
      <div className="entry-row">
        <button
          type="button"
          className="next"
          onClick={() => store.turnTo({ wheelId: first.id }, 'what-fits')}
        >
          {`What fits in place of ${nameWheel(job, first.id)}?`}
        </button>
      </div>
    );
  }
  const picks = row.meshes.flatMap((mesh) => [mesh.driver, mesh.driven]);
  const fresh = picks.filter((pick) => pick.from !== 'present');
  return (
    <div className="fit-do">
      <h3 className="next-act-title">{nameTrain(row)}</h3>
      {fresh.map((pick) => (
        <Pick key={pick.wheelId} job={job} pick={pick} />
      ))}
      {row.verdict !== 'turns' && (
        <p>Rolled, one of these pairs does not run smoothly: look for another train.</p>
      )}
      {row.accept.length > 0 && (
        <div className="entry-row">
          <button
            type="button"
            className={row.fits ? 'next' : undefined}
            onClick={() => {
              store.change(`another train, ${nameTrain(row)}`, (one) => acceptRow(one, row.accept));
              store.say(`${nameTrain(row)} now stands in this job. Undo brings the old gears back.`);
              store.turnTo('train', 'what-is-it');
            }}
          >
            Put these in the train
          </button>
        </div>
      )}
    </div>
  );
}

function Pick({ job, pick }: { readonly job: Job; readonly pick: WheelPick }): ReactNode {
  return (
    <section>
      <h4 className="why-title">{`${nameWheel(job, pick.wheelId)}: ${pick.teeth} teeth, metric size ${Number(pick.moduleMm.toFixed(4))}`}</h4>
      <p>{asSentence(pick.name)}</p>
      {pick.reworks.length > 0 && (
        <ul>
          {pick.reworks.map((one) => (
            <li key={one}>{asSentence(one)}</li>
          ))}
        </ul>
      )}
      {pick.search !== '' && <SearchWords words={pick.search} count={null} isOwn={pick.from === 'own'} />}
    </section>
  );
}
