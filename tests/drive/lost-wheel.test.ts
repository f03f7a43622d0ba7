import { describe, expect, test } from 'vitest';
import { lostCount } from '../../gear-library/mesh-priors.ts';
import { distancePlay, mateShift } from '../../gear-library/tooth-variation.ts';
import { identify, type Job, parseJob } from '../../src/index.ts';
import { inverseInvolute, involute } from '../../src/involute/involute-function.ts';
import { listShifts } from '../../src/readings/tooth-prior.ts';

const jobOf = (wheels: readonly object[], given: object = {}): Job =>
  parseJob(
    JSON.stringify({ format: 'sparetooth-job', version: 1, invented: true, kit: {}, wheels, ...given }),
  ).job;
const reportOf = (job: Job, wheelId: string) => identify(job, { wheelId }).wheels[0];
type Report = ReturnType<typeof reportOf>;
const teeth = (count: number) => ({ of: 'teeth', count });
const mm = (of: string, value: number, more: object = {}) => ({ of, mm: value, ...more });
const chanceOfCount = (report: Report, count: number): number =>
  report.candidates.reduce((sum, one) => sum + (one.teeth === count ? one.probability : 0), 0);
const asked = (report: Report): string[] => report.next.map((one) => one.of);

// Known by its spec alone: module 0.5, 20 teeth, 20°, no shift.
const known = (id: string, count: number) => ({ id, spec: { teeth: count, moduleMm: 0.5, profileShift: 0 } });
const lost = (readings: readonly object[] = [], more: object = {}) => ({
  id: 'lost',
  state: 'lost',
  readings,
  ...more,
});
const post = (mate: string, distance: number) => mm('center-distance', distance, { mate, uMm: 0.04 });

describe('the count of a lost wheel', () => {
  test('from one distance is what quadrature over shifts and play gives', () => {
    const distance = 15.02;
    const report = reportOf(jobOf([known('a', 20), lost([post('a', distance)])]), 'lost');
    const found = new Map<number, number>();
    for (const one of report.candidates) {
      if (one.system !== 'module' || one.size !== 0.5 || one.pressureAngleDeg !== 20) continue;
      found.set(one.teeth, (found.get(one.teeth) ?? 0) + one.probability);
    }
    const total = [...found.values()].reduce((sum, one) => sum + one, 0);
    const expected = weighByQuadrature(distance, 0.04);
    for (const count of [38, 39, 40, 41]) {
      expect((found.get(count) ?? 0) / total).toBeCloseTo(expected(count), 2);
    }
    expect(chanceOfCount(report, 40)).toBeGreaterThan(0.5);
  });

  test('is surer between two neighbors than beside one', () => {
    // 40 teeth: a = 0.25 (20 + 40) and 0.25 (31 + 40), opened by 0.01.
    const one = reportOf(jobOf([known('a', 20), known('b', 31), lost([post('a', 15.01)])]), 'lost');
    const two = reportOf(
      jobOf([known('a', 20), known('b', 31), lost([post('a', 15.01), post('b', 17.76)])]),
      'lost',
    );
    expect(chanceOfCount(two, 40)).toBeGreaterThan(chanceOfCount(one, 40));
    expect(chanceOfCount(two, 40)).toBeGreaterThan(0.85);
    expect(two.candidates[0]).toMatchObject({ system: 'module', size: 0.5, teeth: 40 });
  });

  test('is found inside a ring and along a rack too', () => {
    // A pinion in a ring of 60: a = 0.25 (60 - 20), tight by 0.01; a gear of 20 along a rack: a = 0.25 · 20 + 0.01.
    const ring = { ...known('ring', 60), kind: 'internal' };
    const inRing = reportOf(jobOf([ring, lost([post('ring', 9.99)])]), 'lost');
    expect(inRing.candidates[0]).toMatchObject({ size: 0.5, teeth: 20 });
    const rack = {
      id: 'rack',
      kind: 'rack',
      readings: [teeth(30), { of: 'rack-pitch', pitches: 20, mm: 31.42 }],
    };
    const onRack = reportOf(jobOf([rack, lost([post('rack', 5.01)])]), 'lost');
    expect(onRack.candidates[0]).toMatchObject({ size: 0.5, teeth: 20 });
  });

  test('stays open without a distance, but its size is told', () => {
    const report = reportOf(
      jobOf([known('a', 20), lost()], { meshes: [{ driver: 'a', driven: 'lost' }] }),
      'lost',
    );
    expect(report).toMatchObject({ verdict: 'undecided', candidates: [], restProbability: 1 });
    expect(report.pitch[0]).toMatchObject({ system: 'module', size: 0.5 });
    expect(report.pitch[0].probability).toBeGreaterThan(0.95);
    expect(report.pitch[0].probability).toBeLessThanOrEqual(0.9951);
  });

  test('is judged with the size: a certain size with an open count is not certain', () => {
    const report = reportOf(jobOf([known('a', 20), lost([post('a', 15.02)])]), 'lost');
    expect(report.pitch[0].probability).toBeGreaterThan(0.95);
    expect(report.verdict).not.toBe('certain');
  });

  test('a crumb of another depth turns the size', () => {
    // The neighbor could be module 0.5 or 48 DP; a depth of 1.12 is 2.25 · 0.5, one of 1.21 is 2.2/48 in + 0.002 in.
    const unsure = { id: 'a', readings: [teeth(20), mm('outside', 11.3, { uMm: 0.15 })] };
    const chance = (depth: number): number => {
      const crumb = mm('tooth-depth', depth, { uMm: 0.02 });
      const report = reportOf(jobOf([unsure, lost([crumb, post('a', 15.3)])]), 'lost');
      return report.pitch.find((one) => one.size === 0.5)?.probability ?? 0;
    };
    expect(chance(1.12)).toBeGreaterThan(0.5);
    expect(chance(1.21)).toBeLessThan(0.2);
  });
});

describe('the speed wanted', () => {
  const train = (wanted: object | undefined, lostWheel: object): Job =>
    jobOf(
      [
        { ...known('a', 20), shaft: 'motor' },
        { ...lost([post('a', 15.08)]), ...lostWheel },
        { ...known('c', 15), shaft: 'mid' },
        { ...known('d', 45), shaft: 'out' },
      ],
      {
        motor: { shaft: 'motor', rpm: 3000 },
        wanted,
        meshes: [
          { driver: 'a', driven: 'lost' },
          { driver: 'c', driven: 'd' },
        ],
      },
    );

  test('tells the count of a wheel that changes it: 3000 to 500 turns a minute over 45/15 takes 40 teeth', () => {
    const without = reportOf(train(undefined, { shaft: 'mid' }), 'lost');
    const told = reportOf(
      train({ to: 'out', turnsPerMinute: 500, tolerancePercent: 1 }, { shaft: 'mid' }),
      'lost',
    );
    expect(chanceOfCount(told, 40)).toBeGreaterThan(chanceOfCount(without, 40) + 0.05);
    expect(chanceOfCount(told, 40)).toBeGreaterThan(0.9);
  });

  test('is asked for while rivals remain, and no more once it is known or known not to be', () => {
    const of = (wanted: object | undefined) => asked(reportOf(train(wanted, { shaft: 'mid' }), 'lost'));
    expect(of(undefined)).toContain('speed-wanted');
    expect(of({ to: 'out', turnsPerMinute: 500 })).not.toContain('speed-wanted');
    expect(of({ unknown: true })).not.toContain('speed-wanted');
  });

  test('says nothing of an idler, is not asked for, and that is said', () => {
    const idle = (wanted: object | undefined): Job =>
      jobOf(
        [
          { ...known('a', 20), shaft: 'motor' },
          lost([post('a', 15.08)]),
          { ...known('c', 31), shaft: 'out' },
        ],
        {
          motor: { shaft: 'motor', rpm: 3000 },
          wanted,
          meshes: [
            { driver: 'a', driven: 'lost' },
            { driver: 'lost', driven: 'c', centerMm: 17.8 },
          ],
        },
      );
    const without = reportOf(idle(undefined), 'lost');
    const told = reportOf(idle({ to: 'out', ratio: 1.55, tolerancePercent: 0.1 }), 'lost');
    expect(told.candidates).toEqual(without.candidates);
    expect(asked(without)).not.toContain('speed-wanted');
    expect(without.notes.join()).toContain("doesn't change the speed");
  });
});

describe('what is asked of a lost wheel', () => {
  test('comes in the order in which a bench gives it up', () => {
    expect(asked(reportOf(jobOf([lost()]), 'lost'))).toEqual(['crumbs', 'post', 'neighbors', 'rows']);
    const meshed = jobOf([known('a', 20), lost()], { meshes: [{ driver: 'a', driven: 'lost' }] });
    expect(asked(reportOf(meshed, 'lost'))).toEqual(['crumbs', 'post', 'center-distance', 'rows']);
    const touched = jobOf([known('a', 20), lost([], { touched: [{ wheel: 'a', heightMm: 3, widthMm: 4 }] })]);
    expect(asked(reportOf(touched, 'lost'))).toEqual(['crumbs', 'post', 'center-distance', 'rows']);
  });

  test('leaves out what was answered', () => {
    const answered = lost([], {
      leftOut: ['crumbs'],
      postSize: { diameterMm: 2, freeHeightMm: 6, clip: true },
      rows: 1,
    });
    expect(asked(reportOf(jobOf([answered]), 'lost'))).toEqual(['neighbors']);
  });

  test('the gain of the distance is the greatest, and a crumb of a settled size has next to none', () => {
    const meshed = jobOf([known('a', 20), lost()], { meshes: [{ driver: 'a', driven: 'lost' }] });
    const gains = new Map(reportOf(meshed, 'lost').next.map((one) => [one.of, one.gainBits]));
    expect(gains.get('center-distance')).toBeGreaterThan(2);
    expect(gains.get('crumbs')).toBeLessThan(0.3);
  });

  test("of a timed train the phase can't be known, and that is said", () => {
    const report = reportOf(jobOf([lost([], { timed: true })]), 'lost');
    expect(report.notes.join()).toContain("can't be known");
  });
});

/**
 * P(z | distance) of a lost wheel beside one of module 0.5, 20 teeth, 20°, by summing over a grid of its shift: no
 * solving for shifts, no Gaussian algebra. The mate's shift is known to 0.02; one pair in five has shifts that cancel.
 */
function weighByQuadrature(distance: number, deviation: number): (teeth: number) => number {
  const alpha = (20 * Math.PI) / 180;
  const m = 0.5;
  const z = 20;
  const cancels = mateShift.find((row) => row.relation === 'opposite') ?? { weight: 0, spread: 1 };
  const bell = (x: number, s: number): number => Math.exp(-0.5 * (x / s) ** 2) / (s * Math.sqrt(2 * Math.PI));
  // Noise, the zero of the caliper within it, and play together.
  const blur = Math.hypot(deviation, m * distancePlay.spread);
  const chance = (count: number, shifts: number): number => {
    const inv = involute(alpha) + (2 * shifts * Math.tan(alpha)) / (z + count);
    if (inv <= 1e-6) return 0;
    const a = (m * (z + count) * Math.cos(alpha)) / (2 * Math.cos(inverseInvolute(inv)));
    return bell(distance - a - m * distancePlay.mean, blur);
  };
  const weights = new Map<number, number>();
  for (let count = lostCount.least; count <= lostCount.greatest; count++) {
    let sum = 0;
    const step = 0.002;
    for (let x = -1.2; x <= 1.4; x += step) {
      let prior = 0;
      for (const { logWeight, mean, spread } of listShifts('external', count, alpha, 0, 1)) {
        prior += Math.exp(logWeight) * bell(x - mean, Math.hypot(spread, 0.02));
      }
      sum += step * (1 - cancels.weight) * prior * chance(count, x);
      if (Math.abs(x) < 0.2) sum += step * cancels.weight * bell(x, cancels.spread) * chance(count, x);
    }
    weights.set(count, sum / count);
  }
  const total = [...weights.values()].reduce((sum, one) => sum + one, 0);
  return (count) => (weights.get(count) ?? 0) / total;
}
