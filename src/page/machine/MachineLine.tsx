import '../maker/maker.css';
import type { ReactNode } from 'react';
import type { Wheel } from '../../index.ts';
import { changeMaking, type MakingWish } from '../maker/making-wish.ts';
import { usePage, useStoreOfPage } from '../state/use-page.ts';

/** Whose errors the files take back: a machine that was measured, or none; and the way to measure one. */
export function MachineLine(props: {
  readonly wheel: Wheel;
  readonly wish: MakingWish;
  readonly onMeasure: () => void;
}): ReactNode {
  const { wheel, wish, onMeasure } = props;
  const store = useStoreOfPage();
  const machines = usePage((state) => state.machines);
  const { process, machine, isMachineMissing } = wish;
  // A shop gauges its own work.
  if (!process || process.key === 'machine-shop') return null;
  const own = machines.filter(({ file }) => file.process === process.key);
  const thing = process.key === 'laser-cut' ? 'cutter' : 'printer';
  return (
    <>
      {own.length > 0 && (
        <label>
          {`My ${thing}, as measured`}
          <select
            value={machine?.name ?? ''}
            onChange={(event) => {
              const name = event.currentTarget.value || undefined;
              store.changeWheel(wheel.id, name ? `drawn for ${name}` : 'nothing taken back', (one) =>
                changeMaking(one, { machine: name }),
              );
            }}
          >
            <option value="">nothing is taken back in the files</option>
            {own.map(({ name }) => (
              <option key={name} value={name}>
                {name}
              </option>
            ))}
          </select>
        </label>
      )}
      {isMachineMissing && (
        <p className="entry-wrong">
          {`This job was drawn for "${wheel.making?.machine}", which was not measured on this computer: open its file under Measure my ${thing}. Until then nothing is taken back in the files.`}
        </p>
      )}
      <div className="entry-row">
        <button type="button" onClick={onMeasure}>
          {machine ? `What my ${thing} adds` : `Measure my ${thing}`}
        </button>
      </div>
    </>
  );
}
