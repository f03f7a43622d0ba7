import { type ReactNode, useState } from 'react';
import type { Job, Wheel } from '../../index.ts';
import { Choice } from '../entries/Choice.tsx';
import { isBetween, joinWheels, meshKindOf, partWheels } from '../state/edit-train.ts';
import { nameWheel } from '../words/name-wheel.ts';

/** Which other wheel one runs against, and which of the two turns the other. */
export function AgainstEntry(props: {
  readonly job: Job;
  readonly wheel: Wheel;
  /** Wheels that the turning reaches already: they are the ones that drive */
  readonly reached: ReadonlySet<string>;
  readonly onTake: (what: string, edit: (job: Job) => Job) => void;
  readonly onSeat: () => void;
}): ReactNode {
  const { job, wheel, reached, onTake, onSeat } = props;
  const own = wheel.name ?? wheel.id;
  const others = (job.wheels ?? []).filter((one) => one.id !== wheel.id);
  const mates = (job.meshes ?? []).filter((mesh) => mesh.driver === wheel.id || mesh.driven === wheel.id);
  const [mate, setMate] = useState<string>(
    others.find((one) => !mates.some((mesh) => isBetween(mesh, one.id, wheel.id)))?.id ?? others[0]?.id ?? '',
  );
  const [way, setWay] = useState<'by' | 'drives'>();
  const usual = reached.has(wheel.id) && !reached.has(mate) ? 'drives' : 'by';
  const isCrossed = (job.meshes ?? []).some(
    (mesh) => isBetween(mesh, wheel.id, mate) && mesh.crossed === true,
  );
  const [belt, setBelt] = useState<'open' | 'crossed'>(isCrossed ? 'crossed' : 'open');
  const other = nameWheel(job, mate);
  const kind = meshKindOf(
    wheel,
    job.wheels?.find((one) => one.id === mate),
  );
  if (others.length === 0) return <p>There is no other gear in this job yet: add one first.</p>;
  return (
    <div className="entry">
      <Choice
        legend={`What does ${own} run against?`}
        options={others.map((one) => ({ value: one.id, words: one.name ?? one.id }))}
        chosen={mate}
        onChoose={setMate}
      />
      <Choice
        legend="Which of them turns the other?"
        options={[
          { value: 'by', words: `${other} turns it` },
          { value: 'drives', words: `it turns ${other}` },
        ]}
        chosen={way ?? usual}
        onChoose={setWay}
      />
      {kind === 'belt' && (
        <Choice
          legend="How does the belt run?"
          options={[
            { value: 'open', words: 'straight' },
            { value: 'crossed', words: 'crossed over' },
          ]}
          chosen={belt}
          onChoose={setBelt}
        />
      )}
      <div className="entry-row">
        <button
          type="button"
          className="next"
          onClick={() => {
            const [driver, driven] = (way ?? usual) === 'by' ? [mate, wheel.id] : [wheel.id, mate];
            onTake(`${nameWheel(job, driver)} turns ${nameWheel(job, driven)}`, (one) =>
              setCrossed(
                joinWheels(one, driver, driven, kind),
                driver,
                driven,
                kind === 'belt' && belt === 'crossed',
              ),
            );
          }}
        >
          Take it
        </button>
        <button type="button" onClick={onSeat}>
          Nothing: it sits with another gear
        </button>
      </div>
      {mates.map((mesh) => {
        const partner = mesh.driver === wheel.id ? mesh.driven : mesh.driver;
        if (partner === undefined) return null;
        return (
          <button
            key={partner}
            type="button"
            className="plain"
            onClick={() =>
              onTake(`${own} and ${nameWheel(job, partner)} parted`, (one) =>
                partWheels(one, wheel.id, partner),
              )
            }
          >
            {`It doesn’t run against ${nameWheel(job, partner)}`}
          </button>
        );
      })}
    </div>
  );
}

function setCrossed(job: Job, driver: string, driven: string, crossed: boolean): Job {
  const at = (job.meshes ?? []).findIndex((mesh) => isBetween(mesh, driver, driven));
  const mesh = job.meshes?.[at];
  if (!mesh || (mesh.crossed ?? false) === crossed) return job;
  return { ...job, meshes: (job.meshes ?? []).map((one, i) => (i === at ? { ...one, crossed } : one)) };
}
