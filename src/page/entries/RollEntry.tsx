import { type ReactNode, useState } from 'react';
import { namePitch, type WheelReport } from '../../index.ts';
import { editWheel, putReading } from '../state/edit-job.ts';
import { Choice } from './Choice.tsx';
import type { EntryProps } from './entry-props.ts';

const feelings = [
  { felt: 'smooth', words: 'Smooth' },
  { felt: 'bumps', words: 'Bumps' },
  { felt: 'jams', words: 'Jams' },
] as const;

/** What a trial gear felt like, rolled by hand against the mate: a reading for each gear of the plate. */
export function RollEntry(props: EntryProps & { readonly report: WheelReport }): ReactNode {
  const { wheel, report, onTake } = props;
  const rivals = report.candidates.filter((one) => one.probability >= 0.025).slice(0, 4);
  const [chosen, setChosen] = useState('0');
  const rival = rivals[Number(chosen)] ?? rivals[0];
  if (!rival) return null;
  return (
    <div className="entry">
      <Choice
        legend="Which gear of the plate?"
        options={rivals.map((one, i) => ({
          value: String(i),
          words: `${i + 1} ${i === 0 ? 'hole' : 'holes'}: ${namePitch(one)}, ${one.pressureAngleDeg}°`,
        }))}
        chosen={chosen}
        onChoose={setChosen}
      />
      <div className="entry-row">
        {feelings.map(({ felt, words }) => (
          <button
            key={felt}
            type="button"
            onClick={() =>
              onTake(`rolled by hand: ${felt}`, (job) =>
                editWheel(job, wheel.id, (one) =>
                  putReading(one, {
                    of: 'hand-roll',
                    spec: { moduleMm: rival.moduleMm, pressureAngleDeg: rival.pressureAngleDeg },
                    felt,
                  }),
                ),
              )
            }
          >
            {words}
          </button>
        ))}
      </div>
    </div>
  );
}
