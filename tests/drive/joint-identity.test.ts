import { describe, expect, test } from 'vitest';
import { openJoint } from '../../src/drive/joint-identity.ts';
import { createLabels } from '../../src/drive/pitch-labels.ts';
import { identify, type Job, parseJob } from '../../src/index.ts';
import { startRandom } from '../../src/numeric/random.ts';
import { identifyWheel } from '../../src/readings/identify-wheel.ts';
import { listPitches } from '../../src/readings/pitch-prior.ts';
import { chainDrive, drawDistance, drawMate, readDistance } from '../bench/draw-pairs.ts';
import { drawFrom, measureWheel } from '../bench/draw-wheels.ts';
import { nameSize } from '../bench/weigh-by-brute-force.ts';
import { openWorld } from '../bench/wheel-worlds.ts';

const jobOf = (wheels: readonly object[], given: object = {}): Job =>
  parseJob(
    JSON.stringify({ format: 'sparetooth-job', version: 1, invented: true, kit: {}, wheels, ...given }),
  ).job;
const reportOf = (job: Job, wheelId: string) => identify(job, { wheelId }).wheels[0];
const teeth = (count: number) => ({ of: 'teeth', count });
const mm = (of: string, value: number, more: object = {}) => ({ of, mm: value, ...more });
const chanceOf = (report: ReturnType<typeof reportOf>, system: string, size: number): number =>
  report.pitch.find((one) => one.system === system && Math.abs(one.size - size) < 1e-9)?.probability ?? 0;
const chanceOfCount = (report: ReturnType<typeof reportOf>, count: number): number =>
  report.candidates.reduce((sum, one) => sum + (one.teeth === count ? one.probability : 0), 0);

// Module 0.5, 20°, no shift, from d = m z, d_a = m (z + 2), d_f = m (z − 2.5) and the span formula (ISO 21771).
const certainMate = {
  id: 'mate',
  readings: [
    teeth(40),
    mm('outside', 21),
    mm('root', 18.77),
    // W5 = m cos 20° (4.5 π + 40 inv 20°) and W6, thinned by 0.015.
    mm('span', 6.908, { teeth: 5 }),
    mm('span', 8.384, { teeth: 6 }),
  ],
};

describe('a mate speaks for a wheel', () => {
  // 24 teeth, 13.35 across: 24 + 2 + 2 · 0.35 times 0.5, fat teeth; or 48 DP with worn tips, 26 · 0.529 less 0.4.
  const unsure = { id: 'w', readings: [teeth(24), mm('outside', 13.35)] };

  test('what is likely alone is certain with an intact mate', () => {
    const alone = reportOf(jobOf([unsure]), 'w');
    const joined = reportOf(jobOf([unsure, certainMate], { meshes: [{ driver: 'w', driven: 'mate' }] }), 'w');
    expect(chanceOf(alone, 'module', 0.5)).toBeLessThan(0.9);
    expect(chanceOf(joined, 'module', 0.5)).toBeGreaterThan(0.95);
    expect(joined.jointWith).toEqual(['mate']);
  });

  test('a wheel that only was counted takes its size from its mate, with one chance in a hundred of mixed pitches', () => {
    const joined = reportOf(
      jobOf([{ id: 'w', readings: [teeth(24)] }, certainMate], { meshes: [{ driver: 'w', driven: 'mate' }] }),
      'w',
    );
    const mate = reportOf(jobOf([certainMate]), 'mate');
    // 0.99 same + 0.01 of the prior of that size, times what the mate is sure of.
    expect(chanceOf(joined, 'module', 0.5)).toBeGreaterThan(0.97 * chanceOf(mate, 'module', 0.5));
    expect(chanceOf(joined, 'module', 0.5)).toBeLessThan(0.995);
    expect(joined.restProbability).toBeGreaterThan(0.004);
  });

  test('mixed pitches are not forced into one: strong readings of 48 DP against a mate of module 0.5', () => {
    // 48 DP, 20°, 24 teeth: d_a = 26 · 25.4/48, spans by ISO 21771, thinned by 0.015.
    const inch = {
      id: 'w',
      readings: [
        teeth(24),
        mm('outside', 13.758),
        mm('span', 4.075, { teeth: 3 }),
        mm('span', 5.637, { teeth: 4 }),
      ],
    };
    const job = jobOf([inch, certainMate], { meshes: [{ driver: 'w', driven: 'mate' }] });
    expect(chanceOf(reportOf(job, 'w'), 'diametral-pitch', 48)).toBeGreaterThan(0.9);
    expect(chanceOf(reportOf(job, 'mate'), 'module', 0.5)).toBeGreaterThan(0.9);
  });

  test('sizes are weighed as 0.99 of the same and 0.01 of any: what either wheel says, over the prior', () => {
    const mate = { id: 'mate', readings: [teeth(30), mm('outside', 16.4)] };
    const sums = (report: ReturnType<typeof reportOf>): Map<string, number> => {
      const found = new Map<string, number>();
      for (const one of report.candidates) {
        if (one.system === 'free') continue;
        const key = `${one.system} ${one.size} ${one.pressureAngleDeg}`;
        found.set(key, (found.get(key) ?? 0) + one.probability);
      }
      return found;
    };
    const a = sums(reportOf(jobOf([unsure]), 'w'));
    const b = sums(reportOf(jobOf([mate]), 'mate'));
    const joined = sums(reportOf(jobOf([unsure, mate], { meshes: [{ driver: 'w', driven: 'mate' }] }), 'w'));
    const labels = createLabels({});
    const expected = new Map<string, number>();
    for (const [key, own] of a) {
      const pitch = listPitches({}).find((one) => key.startsWith(`${one.system} ${one.size} `));
      const angle = Number(key.split(' ')[2]);
      if (!pitch || own < 0.002) continue;
      const { prior } = labels.describe(labels.find(pitch, angle, pitch.module));
      expected.set(key, own * (0.99 * ((b.get(key) ?? 0) / prior) + 0.01));
    }
    expect(expected.size).toBeGreaterThan(3);
    const total = [...expected.values()].reduce((sum, one) => sum + one, 0);
    const reached = [...expected.keys()].reduce((sum, key) => sum + (joined.get(key) ?? 0), 0);
    for (const [key, chance] of expected) {
      expect(Math.abs((joined.get(key) ?? 0) / reached - chance / total), key).toBeLessThan(0.01);
    }
  });

  test('a mate of which nothing is known changes nothing', () => {
    const alone = reportOf(jobOf([unsure]), 'w');
    const joined = reportOf(jobOf([unsure, { id: 'x' }], { meshes: [{ driver: 'w', driven: 'x' }] }), 'w');
    for (const { system, size, probability } of alone.pitch.filter((one) => one.system !== 'free')) {
      expect(chanceOf(joined, system, size)).toBeCloseTo(probability, 3);
    }
  });

  test('a wheel without mesh or mate has the very answer that it has alone', () => {
    const job = jobOf([unsure, certainMate, { id: 'third', readings: [teeth(9)] }], {
      meshes: [{ driver: 'mate', driven: 'third' }],
    });
    expect(reportOf(job, 'w')).toEqual(reportOf(jobOf([unsure]), 'w'));
    expect(reportOf(job, 'w')).not.toHaveProperty('jointWith');
  });

  test('drawn pairs: the truth gains on average, with the mate and again with the distance', () => {
    const random = startRandom(11);
    const world = openWorld();
    let [alone, withMate, withBoth] = [0, 0, 0];
    const draws = 24;
    for (let i = 0; i < draws; i++) {
      const wheel = drawFrom(world, random);
      const mate = drawMate(world, wheel, random);
      const a = { ...measureWheel(wheel, 'outside', random, false), id: 'a' };
      const b = { ...measureWheel(mate, 'all four', random, false), id: 'b' };
      const distance = readDistance(drawDistance(wheel, mate, random), random, false);
      const truth = nameSize(wheel.system, wheel.size);
      const bits = (answer: ReturnType<typeof identifyWheel>): number =>
        Math.log2(
          Math.max(
            0.001,
            answer.pitch.find((one) => nameSize(one.system, one.size) === truth)?.probability ?? 0,
          ),
        ) / draws;
      alone += bits(identifyWheel(a));
      withMate += bits(openJoint(chainDrive([a, b], [undefined]))('a'));
      withBoth += bits(openJoint(chainDrive([a, b], [distance]))('a'));
    }
    expect(withMate).toBeGreaterThan(alone + 0.1);
    expect(withBoth).toBeGreaterThan(withMate - 0.03);
    expect(withBoth).toBeGreaterThan(alone + 0.2);
  });
});

describe('the distance of the posts', () => {
  const pinion = (more: readonly object[] = []) => ({
    id: 'p',
    readings: [teeth(16), mm('outside', 8.98), ...more],
  });
  const wheel = {
    id: 'w',
    readings: [{ of: 'teeth', left: 40, missing: [19, 20, 21] }, mm('outside', 30.99)],
  };
  const mesh = { driver: 'p', driven: 'w', centerMm: 19.04, uMm: 0.05 };
  const reading = mm('center-distance', 19.04, { mate: 'w', uMm: 0.05 });

  test('is one measurement, whether it stands with the mesh, with a reading, at both wheels or in all of them', () => {
    const ofMesh = reportOf(jobOf([pinion(), wheel], { meshes: [mesh] }), 'w');
    const ofReading = reportOf(jobOf([pinion([reading]), wheel]), 'w');
    const ofBoth = reportOf(jobOf([pinion([reading]), wheel], { meshes: [mesh] }), 'w');
    const twice = reportOf(
      jobOf([pinion([reading]), { ...wheel, readings: [...wheel.readings, { ...reading, mate: 'p' }] }], {
        meshes: [mesh],
      }),
      'w',
    );
    expect(ofBoth).toEqual(ofReading);
    expect(ofMesh.candidates).toEqual(ofReading.candidates);
    expect(twice.pitch).toEqual(ofReading.pitch);
  });

  test('settles a count that the readings leave open', () => {
    const open = reportOf(jobOf([pinion(), wheel], { meshes: [{ driver: 'p', driven: 'w' }] }), 'w');
    const settled = reportOf(jobOf([pinion(), wheel], { meshes: [mesh] }), 'w');
    expect(chanceOfCount(settled, 60)).toBeGreaterThan(chanceOfCount(open, 60));
    expect(chanceOfCount(settled, 60)).toBeGreaterThan(0.97);
  });

  test('with two counts alone says the size, as a = m (z1 + z2)/2 does', () => {
    const counted = [16, 60, 24].map((count, i) => ({ id: 'abc'[i], readings: [teeth(count)] }));
    // 0.25 (16 + 60) and 0.25 (60 + 24), each opened by 0.01.
    const one = jobOf(counted.slice(0, 2), { meshes: [{ driver: 'a', driven: 'b', centerMm: 19.01 }] });
    expect(reportOf(one, 'a').pitch[0]).toMatchObject({ system: 'module', size: 0.5 });
    const two = jobOf(counted, {
      meshes: [
        { driver: 'a', driven: 'b', centerMm: 19.01 },
        { driver: 'b', driven: 'c', centerMm: 21.01 },
      ],
    });
    expect(chanceOf(reportOf(two, 'a'), 'module', 0.5)).toBeGreaterThan(0.98);
  });

  test('typed in inches it is suspect, with its repair', () => {
    const inch = { ...reading, mm: 0.75 };
    const report = reportOf(
      jobOf([pinion([inch]), { ...wheel, readings: [teeth(60), mm('outside', 30.99)] }]),
      'p',
    );
    expect(report.suspect[0]).toMatchObject({
      reading: 2,
      of: 'center-distance',
      repair: { kind: 'inch-for-mm' },
    });
    expect(report.suspect[0].repair?.value).toBeCloseTo(19.05, 6);
    expect(report.verdict).not.toBe('certain');
  });

  test('not measured yet, it is among what to measure next, and so is the mate', () => {
    const unsure = { id: 'u', readings: [teeth(12), mm('outside', 7.42)] };
    const mate = { id: 'w', readings: [teeth(60)] };
    const report = reportOf(jobOf([unsure, mate], { meshes: [{ driver: 'u', driven: 'w' }] }), 'u');
    const distance = report.next.find((one) => one.of === 'center-distance');
    expect(distance).toMatchObject({ mate: 'w' });
    expect(distance?.gainBits).toBeGreaterThan(0.05);
    const there = report.next.filter((one) => one.wheel === 'w');
    expect(there.length).toBeGreaterThan(0);
    expect(there[0].why).toContain('measure w instead');
    expect(there[0].gainBits).toBeGreaterThan(0.02);
  });
});

describe('a train longer than can be weighed together', () => {
  test('is heard from the nearest gears, and that is said', () => {
    const count = 1200;
    const wheels = Array.from({ length: count }, (_, i) => ({
      id: `w${i}`,
      readings: i % 2 === 0 ? [teeth(24), mm('outside', 13)] : [teeth(30)],
    }));
    const meshes = wheels.slice(1).map(({ id }, i) => ({ driver: `w${i}`, driven: id }));
    const report = reportOf(jobOf(wheels, { meshes }), 'w601');
    expect(report.jointWith?.length).toBe(8);
    expect(report.jointWith).toContain('w600');
    expect(report.notes.join()).toContain('more than 24 gears run together');
    expect(chanceOf(report, 'module', 0.5)).toBeGreaterThan(0.9);
  });
});

describe('a loop of meshes', () => {
  test('is broken at the mesh without a distance, and that is said', () => {
    const wheels = ['a', 'b', 'c'].map((id) => ({ id, readings: [teeth(30), mm('outside', 16)] }));
    const report = reportOf(
      jobOf(wheels, {
        meshes: [
          { driver: 'a', driven: 'b', centerMm: 15.02 },
          { driver: 'b', driven: 'c' },
          { driver: 'c', driven: 'a', centerMm: 15.01 },
        ],
      }),
      'a',
    );
    expect(report.notes.join()).toMatch(/loop: that of b with c was left out/);
    expect(chanceOf(report, 'module', 0.5)).toBeGreaterThan(0.95);
  });
});
