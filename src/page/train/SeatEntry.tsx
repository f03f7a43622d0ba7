import { type ReactNode, useState } from 'react';
import type { Job, Wheel } from '../../index.ts';
import { Choice } from '../entries/Choice.tsx';
import { findSeat, type Seat, seatWheel } from '../state/edit-train.ts';

type How = Seat['how'];

/** What turns together with a wheel: nothing, another row of the same piece, or what is fixed on the same shaft. */
export function SeatEntry(props: {
  readonly job: Job;
  readonly wheel: Wheel;
  readonly onTake: (what: string, edit: (job: Job) => Job) => void;
}): ReactNode {
  const { job, wheel, onTake } = props;
  const now = findSeat(job, wheel);
  const others = (job.wheels ?? []).filter((one) => one.id !== wheel.id);
  const [how, setHow] = useState<How>(now.how);
  const [mate, setMate] = useState<string>(now.how === 'alone' ? (others[0]?.id ?? '') : now.wheelId);
  const own = wheel.name ?? wheel.id;
  return (
    <div className="entry">
      <Choice
        legend={`How does ${own} sit?`}
        options={[
          { value: 'alone', words: 'alone on its own post' },
          { value: 'one-piece', words: 'one piece with another gear' },
          { value: 'same-shaft', words: 'fixed on the same shaft as another' },
          { value: 'same-post', words: 'loose on the same post as another' },
        ]}
        chosen={how}
        onChoose={setHow}
      />
      {how !== 'alone' && (
        <Choice
          legend="With which?"
          options={others.map((one) => ({ value: one.id, words: one.name ?? one.id }))}
          chosen={mate}
          onChoose={setMate}
        />
      )}
      <div className="entry-row">
        <button
          type="button"
          className="next"
          disabled={how !== 'alone' && mate === ''}
          onClick={() => {
            const seat: Seat = how === 'alone' ? { how } : { how, wheelId: mate };
            onTake(`how ${own} sits`, (one) => seatWheel(one, wheel.id, seat));
          }}
        >
          Take it
        </button>
      </div>
    </div>
  );
}
