import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { checkDrive, identify, type Job, parseJob, type WheelReport } from '../../src/index.ts';
import { startJob } from '../../src/page/state/edit-job.ts';
import { addWheelOfKind, joinWheels, setMotor, setWanted } from '../../src/page/state/edit-train.ts';
import { listTrainActs, type TrainNext } from '../../src/page/train/choose-train-next.ts';
import { placeLabels } from '../../src/page/train/place-labels.ts';
import { tellTrain } from '../../src/page/train/tell-train.ts';
import { termOf, wishOf } from '../../src/page/train/wish-of.ts';

const demo = (name: string): Job => parseJob(readFileSync(`demo-data/${name}.json`)).job;

function ask(job: Job): TrainNext[] {
  const answers: Record<string, WheelReport> = {};
  for (const wheel of identify(job).wheels) answers[wheel.id] = wheel;
  return listTrainActs(job, checkDrive(job), answers);
}

test('from an empty job on, one thing at a time is asked, and what is known is not asked again', () => {
  const alone = startJob('Machine');
  expect(ask(alone)[0].act).toEqual({ of: 'add' });
  const two = addWheelOfKind(alone, 'external');
  expect(ask(two)[0].act.of).toBe('against');
  const meshed = joinWheels(two, 'gear-1', 'gear-2', 'teeth');
  expect(ask(meshed).map(({ act }) => act.of)).toContain('distance');
  expect(ask(meshed).map(({ act }) => act.of)).not.toContain('against');
  expect(ask(meshed).map(({ act }) => act.of)).toContain('motor');
  const driven = setWanted(setMotor(meshed, 'gear-1', 3000), { unknown: true });
  const last = ask(driven).map(({ act }) => act.of);
  expect(last).not.toContain('motor');
  expect(last).not.toContain('wanted');
});

test('what contradicts itself comes before all else', () => {
  const spec = (teeth: number) => ({ spec: { teeth, moduleMm: 0.5 } });
  const job: Job = {
    format: 'sparetooth-job',
    version: 1,
    // Three gears in a ring: each turns its neighbor the other way, so none can turn.
    wheels: [
      { id: 'a', ...spec(20) },
      { id: 'b', ...spec(20) },
      { id: 'c', ...spec(20) },
    ],
    meshes: [
      { driver: 'a', driven: 'b', centerMm: 10 },
      { driver: 'b', driven: 'c', centerMm: 10 },
      { driver: 'c', driven: 'a', centerMm: 10 },
    ],
    motor: { shaft: 'a', rpm: 10 },
  };
  expect(ask(job)[0].act.of).toBe('against');
  expect(tellTrain(checkDrive(job), job)).toMatchObject({ certainty: 'nothing-fits' });
});

test('a pair that jams is said first, and leads to what fits', () => {
  const job: Job = {
    format: 'sparetooth-job',
    version: 1,
    wheels: [
      { id: 'a', spec: { teeth: 14, moduleMm: 0.5 } },
      { id: 'b', spec: { teeth: 30, moduleMm: 25.4 / 48 }, state: 'damaged' },
    ],
    // The mean of both nominal distances: 0.5 against 48 DP jams there (the issue's own case).
    meshes: [{ kind: 'teeth', driver: 'a', driven: 'b', centerMm: 11.4375, uMm: 0.01 }],
    motor: { shaft: 'a', rpm: 10 },
  };
  expect(tellTrain(checkDrive(job), job).sentence).toBe("It jams: a and b can't turn together.");
  expect(ask(job)[0].act).toEqual({ of: 'fits', wheelId: 'b' });
});

test('the demo drives are told as they run', () => {
  const tell = (name: string) => tellTrain(checkDrive(demo(name)), demo(name));
  expect(tell('paper-recorder').sentence).toMatch(/^48 turns of motor give one turn of roller/);
  expect(tell('slide-changer').sentence).toMatch(/^One turn of motor moves toothed bar/);
  expect(tell('coin-counter').sentence).toMatch(/One gear alone/);
});

test('what is wanted is kept in the terms in which it was said', () => {
  for (const term of ['ratio', 'rpm', 'seconds', 'speed', 'travel'] as const)
    expect(termOf(wishOf(term, 12, 18))).toBe(term);
  expect(wishOf('speed', 95.3, undefined)).toBeUndefined();
  expect(termOf(undefined)).toBeUndefined();
  expect(termOf({ unknown: true })).toBeUndefined();
});

test('labels stand apart at the edges of the sheet, and none is outside it', () => {
  const points = Array.from({ length: 9 }, (_, k) => ({ id: `p${k}`, x: 200 + 60 * k, y: 300 + (k % 3) }));
  for (const inRows of [false, true]) {
    const sheet = { width: 900, height: 600 };
    const labels = placeLabels(points, sheet, inRows);
    expect(labels.length).toBeGreaterThanOrEqual(inRows ? 6 : 9);
    labels.forEach(({ box }, i) => {
      expect(box.x).toBeGreaterThanOrEqual(0);
      expect(box.y).toBeGreaterThanOrEqual(0);
      expect(box.x + box.width).toBeLessThanOrEqual(sheet.width);
      expect(box.y + box.height).toBeLessThanOrEqual(sheet.height);
      for (const other of labels.slice(i + 1)) {
        const apart =
          box.x + box.width <= other.box.x ||
          other.box.x + other.box.width <= box.x ||
          box.y + box.height <= other.box.y ||
          other.box.y + other.box.height <= box.y;
        expect(apart).toBe(true);
      }
    });
  }
});
