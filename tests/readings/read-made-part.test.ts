import { describe, expect, test } from 'vitest';
import { type Process, processes } from '../../gear-library/processes.ts';
import { findDiameters } from '../../src/involute/gear-diameters.ts';
import { findSpan } from '../../src/involute/span.ts';
import { referenceToothThickness, toothThicknessAt } from '../../src/involute/tooth-thickness.ts';
import { startRandom } from '../../src/numeric/random.ts';
import { findErrorPrior } from '../../src/readings/error-prior.ts';
import { findOutOfRound } from '../../src/readings/find-out-of-round.ts';
import { type MadeDimension, readMadePart } from '../../src/readings/read-made-part.ts';
import type { Reading, WheelEvidence } from '../../src/readings/wheel-evidence.ts';
import { makeSpec } from '../involute/make-spec.ts';
import { drawMadePart, readDrawnPart } from './draw-made-part.ts';

const evidence = (readings: readonly Reading[], kind: WheelEvidence['kind'] = 'external'): WheelEvidence => ({
  id: 'w',
  kind,
  damage: [],
  readings,
  kit: {},
  machine: {},
  mates: [],
});
const filament = processes.find(({ key }) => key === 'filament-0.4') as Process;
const prior = findErrorPrior(filament);
const find = (dimensions: readonly MadeDimension[], of: string): MadeDimension => {
  const found = dimensions.find((one) => one.of === of);
  if (!found) throw new Error(of);
  return found;
};

describe('a made part, read with a caliper', () => {
  test.each([
    ['even', makeSpec({ teeth: 24, module: 0.8 }), [3, 4]],
    ['odd, shifted', makeSpec({ teeth: 17, module: 1, profileShift: 0.3, thinning: 0.05 }), [2, 3]],
  ] as const)('%s: is found again, and its give or take is meant', (_, meant, spans) => {
    const random = startRandom(21);
    const draws = 120;
    const inside: Record<string, number> = {};
    const squares: Record<string, number> = {};
    const errors: Record<string, number> = {};
    for (let draw = 0; draw < draws; draw++) {
      const part = drawMadePart(meant, 3, filament, random);
      const found = readMadePart(
        evidence(readDrawnPart(part, spans, random)),
        { spec: meant, bore: 3, hub: undefined },
        prior,
      );
      const truth: Record<string, number> = {
        'tip-diameter': findDiameters(part.spec).tip,
        'tooth-thickness': toothThicknessAt(part.spec, findDiameters(meant).reference),
        bore: part.bore,
      };
      for (const [of, value] of Object.entries(truth)) {
        const one = find(found.dimensions, of);
        const apart = one.made - value;
        inside[of] = (inside[of] ?? 0) + (Math.abs(apart) < 1.96 * one.u ? 1 / draws : 0);
        squares[of] = (squares[of] ?? 0) + (apart / one.u) ** 2 / draws;
        errors[of] = (errors[of] ?? 0) + apart ** 2 / draws;
      }
    }
    for (const of of Object.keys(inside)) {
      // Of 120 draws 0.95 has a standard error of 0.02, a mean square of 1 one of 0.13.
      expect(inside[of], of).toBeGreaterThan(0.88);
      expect(squares[of], of).toBeGreaterThan(0.6);
      expect(squares[of], of).toBeLessThan(1.45);
    }
    // One reading across the tips is off by 0.032 with its zero; two spans and what the process does gain on that.
    expect(Math.sqrt(errors['tooth-thickness'])).toBeLessThan(0.03);
    expect(Math.sqrt(errors['tip-diameter'])).toBeLessThan(0.036);
  });

  test('a part as drawn, by a machine known to be exact, has no error', () => {
    const meant = makeSpec({ teeth: 20 });
    const exact = { mean: [0, 0, 0, 0, 0], deviation: [1e-3, 0.03, 0.03, 0.03, 0], betweenPrints: 0.01 };
    const found = readMadePart(
      evidence([
        { of: 'outside', mm: 22 },
        { of: 'span', teeth: 3, mm: findSpan(meant, 3) },
      ]),
      { spec: meant, bore: undefined, hub: undefined },
      exact,
    );
    for (const { error } of found.dimensions) expect(error).toBeCloseTo(0, 9);
    expect(find(found.dimensions, 'tooth-thickness').meant).toBeCloseTo(referenceToothThickness(meant), 12);
  });

  test('a span that reads large is a thick tooth, an outside that reads large is not', () => {
    const meant = makeSpec({ teeth: 20 });
    const take = (readings: Reading[]) =>
      readMadePart(
        evidence(readings),
        { spec: meant, bore: undefined, hub: undefined },
        {
          mean: [0, 0, 0, 0, 0],
          deviation: [1e-4, 0.1, 0.1, 0.1, 0],
          betweenPrints: 0.01,
        },
      ).dimensions;
    const spans = [2, 3].map((teeth): Reading => ({ of: 'span', teeth, mm: findSpan(meant, teeth) + 0.15 }));
    const thick = take([{ of: 'outside', mm: 22 }, ...spans]);
    expect(find(thick, 'tooth-thickness').error).toBeGreaterThan(0.11);
    expect(Math.abs(find(thick, 'tip-diameter').error)).toBeLessThan(0.03);
    const tall = take([
      { of: 'outside', mm: 22.2 },
      { of: 'span', teeth: 3, mm: findSpan(meant, 3) },
    ]);
    expect(find(tall, 'tip-diameter').error).toBeGreaterThan(0.15);
    expect(Math.abs(find(tall, 'tooth-thickness').error)).toBeLessThan(0.05);
  });

  test('a ring and a rack are read too', () => {
    const flat = { mean: [0, 0, 0, 0, 0], deviation: [1e-4, 0.1, 0.1, 0.1, 0], betweenPrints: 0.01 };
    const ring = readMadePart(
      evidence([{ of: 'outside', mm: 37.8 }], 'internal'),
      { spec: makeSpec({ kind: 'internal', teeth: 40 }), bore: undefined, hub: undefined },
      flat,
    );
    // Tips at 38 mm reach in: less across them is more metal.
    expect(find(ring.dimensions, 'tip-diameter').error).toBeLessThan(-0.15);
    const rack = readMadePart(
      evidence([{ of: 'tooth-depth', mm: 2.4 }], 'rack'),
      { spec: makeSpec({ kind: 'rack', teeth: 9 }), bore: undefined, hub: undefined },
      flat,
    );
    expect(rack.dimensions.map(({ of }) => of)).toEqual(['tooth-thickness']);
  });

  test('one part moves what is thought of the machine less than what is thought of the part', () => {
    const meant = makeSpec({ teeth: 20 });
    const found = readMadePart(
      evidence([
        { of: 'outside', mm: 22.3 },
        { of: 'bore', mm: 2.7 },
      ]),
      { spec: meant, bore: 3, hub: undefined },
      prior,
    );
    for (const k of [1, 3]) {
      const part = found.errors[k] - prior.mean[k];
      const machine = found.machine.mean[k] - prior.mean[k];
      expect(machine).toBeGreaterThan(0);
      expect(machine).toBeLessThan(part);
      expect(found.machine.deviation[k]).toBeLessThan(prior.deviation[k]);
    }
  });
});

describe('takings at several places', () => {
  test('of a round part are called round, of an oval one so much out of it', () => {
    const random = startRandom(3);
    const take = (oval: number): number => {
      let sum = 0;
      for (let k = 0; k < 200; k++) {
        const mm = [0, 1, 2, 3].map(
          (place) => 20 + (oval / 2) * Math.cos((place * Math.PI) / 2) + 0.025 * random.normal(),
        );
        sum += (findOutOfRound(evidence([{ of: 'outside', mm }]))?.mm ?? 0) / 200;
      }
      return sum;
    };
    expect(take(0)).toBeLessThan(0.03);
    expect(take(0.3)).toBeGreaterThan(0.26);
    expect(take(0.3)).toBeLessThan(0.34);
    expect(findOutOfRound(evidence([{ of: 'outside', mm: 20 }]))).toBeUndefined();
  });

  test('of a round part differ by what the factors say', () => {
    const random = startRandom(8);
    for (const n of [2, 4, 8]) {
      const ranges = Array.from({ length: 4000 }, () => {
        const all = Array.from({ length: n }, () => random.normal());
        return Math.max(...all) - Math.min(...all);
      });
      const mean = ranges.reduce((a, b) => a + b, 0) / ranges.length;
      const spread = Math.sqrt(ranges.reduce((a, b) => a + (b - mean) ** 2, 0) / ranges.length);
      // With a stated give or take of 1, u is d3 and the mean range d2: then nothing of it is the part's.
      const { u } = findOutOfRound(
        evidence([{ of: 'outside', uMm: 1, mm: Array.from({ length: n }, (_, k) => k) }]),
      ) as { u: number };
      expect(u).toBeCloseTo(spread, 1);
      const just = findOutOfRound(
        evidence([{ of: 'outside', uMm: 1, mm: [mean, ...new Array(n - 1).fill(0)] }]),
      );
      expect(just?.mm ?? 0).toBeLessThan(0.5);
    }
  });
});
