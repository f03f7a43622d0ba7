import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { checkDrive, drawTrain, type Job, parseJob, type TrainDrawing } from '../src/index.ts';

const draw = (job: Job): TrainDrawing => drawTrain(job, checkDrive(job), 0.002);
const demo = (name: string): Job => parseJob(readFileSync(`demo-data/${name}.json`)).job;

type Drawn = TrainDrawing['wheels'][number];

/** Where a wheel's outline lies; a bar's tooth 0 stands at its phase along its direction. */
function placed(wheel: Drawn): [number, number][] {
  const { outline = new Float64Array(), phase, along, x, y } = wheel;
  const isBar = wheel.form === 'rack';
  const angle = isBar ? along : phase;
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const pitch = Math.PI * (wheel.moduleMm ?? 1);
  // Drawn about the tooth that is nearest to the middle.
  const pushed = isBar ? phase - Math.round(phase / pitch) * pitch - 6 * pitch : 0;
  return Array.from({ length: outline.length / 2 }, (_, k) => {
    const [u, v] = [outline[2 * k] + pushed, outline[2 * k + 1]];
    return [u * c - v * s + x, u * s + v * c + y];
  });
}

function isInside(
  [x, y]: readonly [number, number],
  outline: readonly (readonly [number, number])[],
): boolean {
  let inside = false;
  for (let i = 0, j = outline.length - 1; i < outline.length; j = i++) {
    const [[xi, yi], [xj, yj]] = [outline[i], outline[j]];
    if (yi > y !== yj > y && x < ((xj - xi) * (y - yi)) / (yj - yi) + xi) inside = !inside;
  }
  return inside;
}

/** How deep any point of one lies in the other, mm at most: the distance to the nearest point of its outline. */
function findOverlap(one: Drawn, two: Drawn): number {
  let deepest = 0;
  for (const [a, b] of [
    [one, two],
    [two, one],
  ]) {
    const outline = placed(b);
    const isRing = b.form === 'internal';
    for (const point of placed(a)) {
      if (isInside(point, outline) === isRing) continue;
      const depth = Math.min(...outline.map(([x, y]) => Math.hypot(x - point[0], y - point[1])));
      deepest = Math.max(deepest, depth);
    }
  }
  return deepest;
}

const wheel = (id: string, teeth: number, more: object = {}) => ({
  id,
  spec: { teeth, moduleMm: 0.5, thinningMm: 0.06 },
  ...more,
});
const job = (wheels: readonly object[], meshes: readonly object[]): Job =>
  ({ format: 'sparetooth-job', version: 1, wheels, meshes }) as Job;

test.each([
  ['two gears', [wheel('a', 14), wheel('b', 31)], [{ driver: 'a', driven: 'b', centerMm: 11.27 }]],
  [
    'three in a row',
    [wheel('a', 17), wheel('b', 20), wheel('c', 23)],
    [
      { driver: 'a', driven: 'b', centerMm: 9.27 },
      { driver: 'b', driven: 'c', centerMm: 10.77 },
    ],
  ],
  [
    'a gear in a ring',
    [wheel('a', 15), wheel('b', 45, { kind: 'internal' })],
    [{ driver: 'a', driven: 'b', centerMm: 7.48 }],
  ],
  [
    'a bar',
    [wheel('a', 17), wheel('b', 30, { kind: 'rack' })],
    [{ driver: 'a', driven: 'b', centerMm: 4.27 }],
  ],
] as const)('%s stand with their teeth in each other’s gaps', (_, wheels, meshes) => {
  const drawing = draw(job(wheels, meshes));
  for (const mesh of meshes) {
    const pair = [mesh.driver, mesh.driven].map((id) => drawing.wheels.find((one) => one.id === id));
    const [one, two] = pair;
    if (!one || !two) throw new Error('not drawn');
    // Turned by half a pitch they would stand some 0.5 mm deep in each other.
    expect(findOverlap(one, two)).toBeLessThan(0.02);
    expect(
      findOverlap(
        { ...one, phase: one.phase + (one.form === 'rack' ? 0.78 : Math.PI / (one.teeth ?? 1)) },
        two,
      ),
    ).toBeGreaterThan(0.2);
  }
});

test('posts stand at their measured distances, and turning is at true speeds', () => {
  const drawing = draw(demo('slide-changer'));
  const at = new Map(drawing.wheels.map((one) => [one.id, one]));
  for (const { driver, driven, centerMm } of demo('slide-changer').meshes ?? []) {
    const [a, b] = [at.get(driver ?? ''), at.get(driven ?? '')];
    if (!a || !b || centerMm === undefined) continue;
    expect(Math.hypot(a.x - b.x, a.y - b.y)).toBeCloseTo(centerMm, 2);
  }
  const bar = drawing.wheels.find((one) => one.form === 'rack');
  const pinion = drawing.wheels.find((one) =>
    drawing.meshes.some((mesh) => mesh.driver === one.id && mesh.driven === bar?.id),
  );
  expect(Math.abs(bar?.travel ?? 0)).toBeCloseTo(
    Math.abs((pinion?.turns ?? 0) * (pinion?.teeth ?? 0) * Math.PI * (bar?.moduleMm ?? 0)),
    6,
  );
});

test('what is lost is drawn as a circle of what the distance leaves, and said to be a guess', () => {
  const drawing = draw(demo('paper-recorder'));
  const lost = drawing.wheels.find((one) => one.id === 'lost-pinion');
  if (lost?.isKnown === false) expect(drawing.guesses.join(' ')).toMatch(/pinion on the middle wheel/);
  expect(lost?.reach).toBeGreaterThan(1);
});

test.each(readdirSync('demo-data').filter((name) => name.endsWith('.json')))('%s can be drawn', (name) => {
  const drawing = draw(demo(name.replace('.json', '')));
  const { left, right, bottom, top } = drawing.box;
  for (const one of drawing.wheels) {
    expect(Number.isFinite(one.x) && Number.isFinite(one.y) && one.reach > 0).toBe(true);
    expect(one.x).toBeGreaterThanOrEqual(left);
    expect(one.x).toBeLessThanOrEqual(right);
    expect(one.y).toBeGreaterThanOrEqual(bottom);
    expect(one.y).toBeLessThanOrEqual(top);
  }
});

test('a job without gears, and gears without meshes, are no crash', () => {
  expect(draw(job([], [])).wheels).toEqual([]);
  expect(
    draw(
      job(
        [{ id: 'a' }, { id: 'b', kind: 'worm' }, { id: 'c', kind: 'pulley' }, { id: 'd', kind: 'crown' }],
        [],
      ),
    ).wheels,
  ).toHaveLength(4);
  expect(
    draw(job([{ id: 'a' }, { id: 'b', kind: 'rack' }], [{ driver: 'a', driven: 'b' }])).meshes,
  ).toHaveLength(1);
});
