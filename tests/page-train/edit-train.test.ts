import fc from 'fast-check';
import { expect, test } from 'vitest';
import { formatJob, type Job, parseJob } from '../../src/index.ts';
import { readAddress, turnTo, writeAddress } from '../../src/page/address.ts';
import { acceptRow } from '../../src/page/fits/accept-row.ts';
import { addWheel, removeWheel, startJob } from '../../src/page/state/edit-job.ts';
import {
  addWheelOfKind,
  dropCenter,
  findSeat,
  joinWheels,
  partWheels,
  type Seat,
  seatWheel,
  setMotor,
  setWanted,
  shaftOf,
} from '../../src/page/state/edit-train.ts';
import { orderWheels } from '../../src/page/state/order-wheels.ts';

const three = addWheel(addWheel(startJob('Machine')));
const ids = ['gear-1', 'gear-2', 'gear-3'] as const;

const seat = fc.oneof(
  fc.constant<Seat>({ how: 'alone' }),
  fc.record({
    how: fc.constantFrom('one-piece' as const, 'same-shaft' as const, 'same-post' as const),
    wheelId: fc.constantFrom(...ids),
  }),
);
const edit = fc.oneof(
  fc.record({ do: fc.constant('join' as const), a: fc.constantFrom(...ids), b: fc.constantFrom(...ids) }),
  fc.record({ do: fc.constant('part' as const), a: fc.constantFrom(...ids), b: fc.constantFrom(...ids) }),
  fc.record({ do: fc.constant('seat' as const), a: fc.constantFrom(...ids), seat }),
  fc.record({ do: fc.constant('remove' as const), a: fc.constantFrom(...ids) }),
  fc.record({ do: fc.constant('motor' as const), a: fc.constantFrom(...ids) }),
);

test('whatever is said about how gears sit and mesh, the job can be saved and opened again as it was', () => {
  fc.assert(
    fc.property(fc.array(edit, { maxLength: 12 }), (edits) => {
      let job: Job = three;
      for (const one of edits) {
        if (one.do === 'join') {
          const isThere = [one.a, one.b].every((id) => job.wheels?.some((wheel) => wheel.id === id));
          if (isThere && one.a !== one.b) job = joinWheels(job, one.a, one.b, 'teeth');
        } else if (one.do === 'part') job = partWheels(job, one.a, one.b);
        else if (one.do === 'seat') {
          if (!('wheelId' in one.seat) || one.seat.wheelId !== one.a) job = seatWheel(job, one.a, one.seat);
        } else if (one.do === 'remove') job = removeWheel(job, one.a);
        else job = setMotor(job, one.a, 1000);
        // A mesh of a wheel that is gone would be refused when the file is opened.
        expect(parseJob(formatJob(job)).job).toEqual(job);
      }
    }),
  );
});

test('two wheels are one piece, on one shaft, or loose on one post, as they were said to be', () => {
  for (const how of ['one-piece', 'same-shaft', 'same-post'] as const) {
    const job = seatWheel(three, 'gear-2', { how, wheelId: 'gear-1' });
    const [one, two] = job.wheels ?? [];
    expect(findSeat(job, two)).toEqual({ how, wheelId: 'gear-1' });
    // Loose gears turn apart; the others together.
    expect(shaftOf(one) === shaftOf(two)).toBe(how !== 'same-post');
    const back = seatWheel(job, 'gear-2', { how: 'alone' });
    expect(findSeat(back, (back.wheels ?? [])[1])).toEqual({ how: 'alone' });
  }
});

test('a mesh turned round keeps what was measured of it; a new distance takes the old one’s place', () => {
  const job: Job = {
    ...three,
    meshes: [{ kind: 'teeth', driver: 'gear-1', driven: 'gear-2', centerMm: 14, uMm: 0.05 }],
  };
  const turned = joinWheels(job, 'gear-2', 'gear-1', 'teeth');
  expect(turned.meshes).toEqual([
    { kind: 'teeth', driver: 'gear-2', driven: 'gear-1', centerMm: 14, uMm: 0.05 },
  ]);
  expect(dropCenter(turned, 'gear-1', 'gear-2').meshes).toEqual([
    { kind: 'teeth', driver: 'gear-2', driven: 'gear-1' },
  ]);
  expect(joinWheels(job, 'gear-1', 'gear-2', 'teeth')).toBe(job);
});

test('wheels stand from the input to the output', () => {
  let job = addWheelOfKind(three, 'pulley');
  job = joinWheels(job, 'gear-3', 'gear-1', 'teeth');
  job = seatWheel(job, 'gear-2', { how: 'one-piece', wheelId: 'gear-1' });
  job = joinWheels(job, 'gear-2', 'gear-4', 'belt');
  expect(orderWheels(job).map((wheel) => wheel.id)).toEqual(['gear-3', 'gear-1', 'gear-2', 'gear-4']);
  const ring = joinWheels(joinWheels(three, 'gear-1', 'gear-2', 'teeth'), 'gear-2', 'gear-1', 'teeth');
  expect(orderWheels(ring)).toHaveLength(3);
});

test('an accepted substitute is whole; what was read of the old piece is kept aside, what of the place stays', () => {
  const job: Job = {
    ...three,
    wheels: [
      {
        id: 'gear-1',
        state: 'damaged',
        damage: [{ kind: 'split', gapMm: 0.4 }],
        missing: [3],
        readings: [
          { of: 'teeth', count: 23 },
          { of: 'outside', mm: 12.4 },
          { of: 'shaft', mm: 2 },
          { of: 'center-distance', mate: 'gear-2', mm: 14 },
        ],
      },
      ...(three.wheels ?? []).slice(1),
    ],
  };
  const accepted = acceptRow(job, [{ wheelId: 'gear-1', spec: { teeth: 24, moduleMm: 0.5 } }]);
  const [wheel] = accepted.wheels ?? [];
  expect(wheel).toMatchObject({ state: 'sound', spec: { teeth: 24, moduleMm: 0.5 } });
  expect(wheel.damage).toBeUndefined();
  expect(wheel.missing).toBeUndefined();
  expect(wheel.readings).toEqual([
    { of: 'shaft', mm: 2 },
    { of: 'center-distance', mate: 'gear-2', mm: 14 },
  ]);
  const { replaced } = wheel as { replaced?: { readings?: unknown[]; damage?: unknown } };
  expect(replaced?.readings).toHaveLength(2);
  expect(replaced?.damage).toEqual([{ kind: 'split', gapMm: 0.4 }]);
  // Accepted twice, nothing of the first is forgotten, and the file holds it.
  const twice = acceptRow(accepted, [{ wheelId: 'gear-1', spec: { teeth: 25, moduleMm: 0.5 } }]);
  expect(JSON.stringify(twice)).toContain('12.4');
  expect(parseJob(formatJob(twice)).job).toEqual(twice);
});

test('an address is read as it was written, also for a gear that is called train', () => {
  const places = [
    { jobId: 'j', subject: 'train' as const, wheelId: undefined, question: 'what-fits' as const },
    { jobId: 'j', subject: 'gear' as const, wheelId: 'train', question: 'what-is-it' as const },
    { jobId: 'j', subject: 'gear' as const, wheelId: '~train', question: 'how-to-make-it' as const },
    { jobId: 'j', subject: 'gear' as const, wheelId: 'a/b ä', question: 'what-fits' as const },
  ];
  for (const place of places) expect(readAddress(writeAddress(place))).toEqual(place);
  expect(readAddress('#/j/train/how-to-make-it').question).toBe('what-is-it');
  expect(turnTo(places[2], 'train')).toMatchObject({ subject: 'train', question: 'what-is-it' });
});

test('what is wanted can be said and taken back', () => {
  const job = setWanted(three, { to: 'gear-2', ratio: 12.5 });
  expect(job.wanted?.ratio).toBe(12.5);
  expect('wanted' in setWanted(job, undefined)).toBe(false);
});
