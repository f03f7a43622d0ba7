import { type ReactNode, useId } from 'react';
import type { Job, Wheel } from '../../index.ts';
import { removeWheel } from '../state/edit-job.ts';
import { useStoreOfPage } from '../state/use-page.ts';

/** What the job and this gear are called, what it is made of, and notes. */
export function Names({ job, wheel }: { readonly job: Job; readonly wheel: Wheel | undefined }): ReactNode {
  const store = useStoreOfPage();
  return (
    <div className="entry">
      <Line
        label="The machine or job"
        text={job.title ?? ''}
        onKeep={(title) => store.change('name of the job', (one) => ({ ...one, title }))}
      />
      {wheel && <NamesOfGear job={job} wheel={wheel} />}
    </div>
  );
}

function NamesOfGear({ job, wheel }: { readonly job: Job; readonly wheel: Wheel }): ReactNode {
  const store = useStoreOfPage();
  const wheels = job.wheels ?? [];
  return (
    <>
      <Line
        label="This gear"
        text={wheel.name ?? ''}
        onKeep={(name) => store.changeWheel(wheel.id, 'name of the gear', (one) => ({ ...one, name }))}
      />
      <Line
        label="Material, as far as you can tell (pom, pa66, brass …)"
        text={wheel.material ?? ''}
        onKeep={(material) => store.changeWheel(wheel.id, 'material', (one) => ({ ...one, material }))}
      />
      <Line
        label="Notes"
        text={wheel.notes ?? ''}
        onKeep={(notes) => store.changeWheel(wheel.id, 'notes', (one) => ({ ...one, notes }))}
      />
      {wheels.length > 1 && (
        <div className="entry-row">
          <button
            type="button"
            onClick={() => {
              store.change(`${wheel.name ?? wheel.id} removed`, (one) => removeWheel(one, wheel.id));
              store.show(undefined);
              store.say('The gear was removed from the job. Undo brings it back.');
            }}
          >
            Remove this gear
          </button>
        </div>
      )}
    </>
  );
}

/** One line of text, kept when the field is left. */
function Line(props: {
  readonly label: string;
  readonly text: string;
  readonly onKeep: (text: string) => void;
}): ReactNode {
  const id = useId();
  const { label, text, onKeep } = props;
  const keep = (typed: string): void => {
    if (typed !== text) onKeep(typed);
  };
  return (
    <div className="names-line">
      <label htmlFor={id} className="entry-label">
        {label}
      </label>
      <input
        id={id}
        type="text"
        defaultValue={text}
        maxLength={200}
        style={{ width: '100%' }}
        onBlur={(event) => keep(event.currentTarget.value)}
        onKeyDown={(event) => event.key === 'Enter' && keep(event.currentTarget.value)}
      />
    </div>
  );
}
