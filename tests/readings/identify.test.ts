import { describe, expect, test } from 'vitest';
import { startRandom } from '../../src/numeric/random.ts';
import { combineTakings } from '../../src/readings/combine-takings.ts';
import { identifyWheel } from '../../src/readings/identify-wheel.ts';
import { weighCounts } from '../../src/readings/weigh-counts.ts';
import type { Reading, WheelEvidence } from '../../src/readings/wheel-evidence.ts';
import { drawWheel, measureWheel } from '../bench/draw-wheels.ts';

const wheel = (readings: readonly Reading[], given: Partial<WheelEvidence> = {}): WheelEvidence => ({
  id: 'w',
  kind: 'external',
  damage: [],
  readings,
  kit: {},
  machine: {},
  mates: [],
  ...given,
});
const count = (teeth: number): Reading => ({ of: 'teeth', count: teeth });
const chanceOf = (evidence: WheelEvidence, system: string, size: number): number =>
  identifyWheel(evidence).pitch.find((one) => one.system === system && Math.abs(one.size - size) < 1e-9)
    ?.probability ?? 0;

// 23 teeth, module 0.5: d 11.5, d_a 12.5, W3 = 3.839 (value by the span formula, ISO 21771).
const sound: readonly Reading[] = [
  count(24),
  { of: 'outside', mm: 13.0 },
  { of: 'root', mm: 10.77 },
  { of: 'span', teeth: 3, mm: 3.85 },
];

describe('a wheel is known by its readings', () => {
  test('three good readings of a standard wheel are certain, at 20°', () => {
    const identity = identifyWheel(wheel(sound));
    expect(identity.verdict).toBe('certain');
    expect(identity.pitch[0]).toMatchObject({ system: 'module', size: 0.5 });
    expect(identity.candidates[0]).toMatchObject({ pressureAngleDeg: 20, teeth: 24 });
    expect(identity.candidates[0].derived.referenceDiameterMm).toBeCloseTo(12, 9);
    const total =
      identity.candidates.reduce((sum, one) => sum + one.probability, 0) + identity.restProbability;
    expect(total).toBeCloseTo(1, 6);
  });

  test('without a count nothing is claimed and the count is asked for', () => {
    const identity = identifyWheel(wheel([{ of: 'outside', mm: 13 }]));
    expect(identity).toMatchObject({ verdict: 'undecided', candidates: [], restProbability: 1 });
    expect(identity.next[0].of).toBe('teeth');
  });

  test('a fat-toothed pinion that m = OD/(z + 2) gets wrong is known by its span', () => {
    const readings: Reading[] = [
      count(10),
      { of: 'outside', mm: 6.48 },
      { of: 'span', teeth: 2, mm: 2.44 },
      { of: 'root', mm: 4.28 },
    ];
    expect(6.48 / 12).toBeCloseTo(0.54, 6);
    expect(chanceOf(wheel(readings), 'module', 0.5)).toBeGreaterThan(0.8);
  });

  test('machines of inch land lean to inch sizes, and readings outweigh that', () => {
    const one: Reading[] = [count(40), { of: 'outside', mm: 16.73 }];
    const metric = chanceOf(wheel(one, { machine: { made: 'metric-land' } }), 'module', 0.4);
    const inch = chanceOf(wheel(one, { machine: { made: 'inch-land' } }), 'module', 0.4);
    expect(metric).toBeGreaterThan(inch + 0.2);
    expect(chanceOf(wheel(sound, { machine: { made: 'inch-land' } }), 'module', 0.5)).toBeGreaterThan(0.9);
  });

  test('a module that no series lists is not forced into one', () => {
    const m = 0.563;
    const readings: Reading[] = [
      count(40),
      { of: 'outside', mm: 42 * m, uMm: 0.01 },
      { of: 'root', mm: 37.5 * m, uMm: 0.03 },
      // cos 20° (π (k − ½) + 40 inv 20°) m, thinned a little (ISO 21771).
      { of: 'span', teeth: 3, mm: 7.9405 * m - 0.015, uMm: 0.01 },
      { of: 'span', teeth: 6, mm: 16.7969 * m - 0.015, uMm: 0.01 },
    ];
    const identity = identifyWheel(wheel(readings));
    expect(identity.pitch[0].system).toBe('free');
    expect(identity.verdict).toBe('nothing-fits');
    expect(identity.pitch[0].moduleMm).toBeCloseTo(m, 2);
  });

  test('a rack is known by its pitch', () => {
    const readings: Reading[] = [count(20), { of: 'rack-pitch', pitches: 10, mm: 15.7 }];
    expect(chanceOf(wheel(readings, { kind: 'rack' }), 'module', 0.5)).toBeGreaterThan(0.9);
  });

  test('a helical wheel is not taken for a coarser spur wheel', () => {
    // m_n 1, z 30, β 20°: d = 31.925, d_a = 33.925.
    const readings: Reading[] = [
      count(30),
      { of: 'outside', mm: 33.92 },
      { of: 'helix-angle', deg: 21.1, uDeg: 1 },
      { of: 'span', teeth: 5, mm: 14.33 },
    ];
    expect(chanceOf(wheel(readings), 'module', 1)).toBeGreaterThan(0.7);
  });
});

describe('damage is part of the model', () => {
  const spans: Reading[] = [{ of: 'span', teeth: 6, mm: 6.69 }];
  test('a split adds g/π to a diameter taken open and nothing to one taken closed', () => {
    const read = (taken: 'open' | 'closed', mm: number): WheelEvidence =>
      wheel([count(40), { of: 'outside', mm, taken }, ...spans], {
        damage: [{ kind: 'split', gapMm: 0.42 }],
      });
    // 64 DP, 40 teeth: 16.67 closed, 16.80 open.
    expect(chanceOf(read('open', 16.8), 'diametral-pitch', 64)).toBeGreaterThan(0.7);
    expect(chanceOf(read('closed', 16.8), 'module', 0.4)).toBeGreaterThan(0.7);
  });

  test('wear only takes tip away: a small outside is likelier worn than a large one', () => {
    const at = (mm: number): number =>
      chanceOf(wheel([count(24), { of: 'outside', mm }, { of: 'span', teeth: 3, mm: 3.85 }]), 'module', 0.5);
    expect(at(12.85)).toBeGreaterThan(at(13.15));
  });

  test('a swollen wheel may be a per cent larger', () => {
    const grown: Reading[] = [count(40), { of: 'outside', mm: 21.25 }, { of: 'span', teeth: 5, mm: 7.0 }];
    const plain = chanceOf(wheel(grown), 'module', 0.5);
    expect(chanceOf(wheel(grown, { damage: [{ kind: 'swollen' }] }), 'module', 0.5)).toBeGreaterThan(plain);
  });
});

describe('slips are hypotheses', () => {
  const slipped = (at: number, mm: number): WheelEvidence =>
    wheel(
      [...sound, { of: 'span' as const, teeth: 4, mm: 5.33 }].map((reading, k) =>
        k === at ? { ...reading, mm } : reading,
      ) as Reading[],
    );

  test.each([
    ['inch-for-mm', 1, 0.512, 13.0],
    ['radius-for-diameter', 1, 6.5, 13.0],
    ['lost-decimal', 1, 130, 13.0],
    ['swapped-digits', 3, 3.58, 3.85],
  ] as const)('%s is named with its repair', (kind, at, typed, meant) => {
    const identity = identifyWheel(slipped(at, typed));
    expect(identity.pitch[0]).toMatchObject({ system: 'module', size: 0.5 });
    expect(identity.suspect[0]).toMatchObject({ reading: at, repair: { kind } });
    expect(identity.suspect[0].repair?.value).toBeCloseTo(meant, 1);
    expect(identity.verdict).not.toBe('certain');
  });

  test('a count one off is seen', () => {
    const readings = sound.map((reading, k) => (k === 0 ? count(25) : reading));
    const identity = identifyWheel(wheel([...readings, { of: 'span', teeth: 4, mm: 5.33 }]));
    expect(identity.suspect[0]).toMatchObject({
      of: 'teeth',
      repair: { kind: 'count-off-by-one', value: 24 },
    });
  });

  test('a zero that was not set is one cause for readings that are all off alike', () => {
    const off = [...sound, { of: 'span' as const, teeth: 4, mm: 5.33 }].map((reading) =>
      'mm' in reading ? { ...reading, mm: Number(reading.mm) + 0.3 } : reading,
    ) as Reading[];
    const identity = identifyWheel(wheel(off));
    expect(identity.suspect[0]).toMatchObject({ of: 'zero' });
  });

  test('one slip of 6 deviations among four readings leaves the size and is found (60 draws)', () => {
    const random = startRandom(17);
    let right = 0;
    let first = 0;
    for (let i = 0; i < 60; i++) {
      const drawn = drawWheel(random);
      const evidence = measureWheel(drawn, 'all four', random, false);
      const at = 1 + random.index([1, 1, 1, 1]);
      const size =
        (6 + 10 * random.uniform()) * (at === 2 ? 0.055 : 0.03) * (random.uniform() < 0.5 ? -1 : 1);
      const readings = evidence.readings.map((reading, k) =>
        k === at && 'mm' in reading ? { ...reading, mm: Number(reading.mm) + size } : reading,
      ) as Reading[];
      const identity = identifyWheel({ ...evidence, readings });
      const top = identity.pitch[0];
      if (top.system === drawn.system && (top.system === 'free' || top.size === drawn.size)) right++;
      if (identity.suspect[0]?.reading === at) first++;
    }
    expect(right).toBeGreaterThanOrEqual(45);
    expect(first).toBeGreaterThanOrEqual(40);
  });
});

describe('probabilities are meant', () => {
  test('stated and true agree on 150 wheels drawn from the prior', () => {
    const random = startRandom(23);
    let stated = 0;
    let right = 0;
    for (let i = 0; i < 150; i++) {
      const drawn = drawWheel(random);
      const [top] = identifyWheel(measureWheel(drawn, 'outside+span', random, true)).pitch;
      stated += top.probability / 150;
      if (top.system === drawn.system && (top.system === 'free' || top.size === drawn.size)) right += 1 / 150;
    }
    // Three standard errors of 150 draws at nine in ten.
    expect(Math.abs(stated - right)).toBeLessThan(0.075);
    expect(right).toBeGreaterThan(0.75);
  });
});

describe('counts', () => {
  test('teeth left and teeth gone make candidates, and an angle over a row settles them', () => {
    const broken = weighCounts([{ of: 'teeth', left: 19, missing: [4, 5, 6] }]);
    expect(
      broken
        .filter((one) => !one.slip)
        .map((one) => one.teeth)
        .sort(),
    ).toEqual([23, 24, 25]);
    const settled = weighCounts([
      { of: 'teeth', left: 19, missing: [4, 5, 6] },
      { of: 'teeth', pitches: 14, overDeg: 219.1, uDeg: 2 },
    ]);
    expect(settled[0].teeth).toBe(23);
    expect(settled[0].weight).toBeGreaterThan(0.9);
  });
});

describe('takings', () => {
  test('their spread counts, and one far off is pointed out', () => {
    const close = combineTakings([12.44, 12.46, 12.43], 0.015);
    const wide = combineTakings([12.34, 12.56, 12.43], 0.015);
    expect(close.mean).toBeCloseTo(12.4433, 4);
    expect(wide.deviation).toBeGreaterThan(3 * close.deviation);
    expect(combineTakings([12.44, 12.46, 12.83], 0.015).farOff).toBe(2);
  });
  test('the shared zero does not average out over takings', () => {
    const once = identifyWheel(wheel([count(24), { of: 'outside', mm: 13.0 }]));
    const often = identifyWheel(
      wheel([count(24), { of: 'outside', mm: new Array(40).fill(13.0) as number[] }]),
    );
    const u = (identity: typeof once): number => identity.candidates[0].uncertainty.profileShift;
    expect(u(often)).toBeGreaterThan(0.4 * u(once));
  });
});

describe('what to measure next', () => {
  const vague = wheel([count(25), { of: 'outside', mm: 13.0 }]);
  test('gains are sorted and a span is among them when the jaw enters', () => {
    const { next } = identifyWheel(vague);
    const gains = next.map((one) => one.gainBits);
    expect(gains).toEqual([...gains].sort((a, b) => b - a));
    expect(next.some((one) => one.of === 'span')).toBe(true);
  });
  test('no span for a jaw that is too thick, no pins that nobody owns', () => {
    const thick = identifyWheel({ ...vague, kit: { jawTipMm: 2 } });
    expect(thick.next.some((one) => one.of === 'span' || one.of === 'over-pins')).toBe(false);
    const owned = identifyWheel({ ...vague, kit: { pinsMm: [0.85, 3] } });
    expect(owned.next.filter((one) => one.of === 'over-pins').map((one) => one.pinMm)).toEqual([0.85]);
  });
  test('a mate whose teeth are counted makes the distance of the posts a reading, and it settles', () => {
    const mates = [{ id: 'm', kind: 'external' as const, teeth: 60 }];
    const before = identifyWheel({ ...vague, mates });
    expect(before.next.some((one) => one.of === 'center-distance')).toBe(true);
    const distance: Reading = { of: 'center-distance', mate: 'm', mm: 21.26 };
    const after = chanceOf({ ...vague, mates, readings: [...vague.readings, distance] }, 'module', 0.5);
    expect(after).toBeGreaterThan(chanceOf({ ...vague, mates }, 'module', 0.5));
  });
  test('a rolled trial gear moves the odds', () => {
    const two: Reading[] = [count(40), { of: 'outside', mm: 16.74 }];
    const rolled = (moduleMm: number, felt: 'smooth' | 'jams'): number =>
      chanceOf(
        wheel([...two, { of: 'hand-roll', spec: { moduleMm, pressureAngleDeg: 20 }, felt }]),
        'module',
        0.4,
      );
    expect(rolled(0.4, 'smooth')).toBeGreaterThan(rolled(0.396875, 'smooth'));
    expect(rolled(0.4, 'jams')).toBeLessThan(rolled(0.4, 'smooth'));
  });
});
