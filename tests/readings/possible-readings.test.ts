import { describe, expect, test } from 'vitest';
import { findPinRange } from '../../src/involute/pin-range.ts';
import { listSpanTeeth } from '../../src/involute/span.ts';
import { startRandom } from '../../src/numeric/random.ts';
import { listPossibleReadings } from '../../src/readings/possible-readings.ts';
import type { WheelEvidence } from '../../src/readings/wheel-evidence.ts';
import { makeSpec, rad } from '../involute/make-spec.ts';

const wheel = (given: Partial<WheelEvidence> = {}): WheelEvidence => ({
  id: 'w',
  kind: 'external',
  damage: [],
  readings: [],
  kit: { jawTipMm: 0.3 },
  machine: {},
  mates: [],
  ...given,
});
const spansOf = (found: ReturnType<typeof listPossibleReadings>): number[] =>
  found.filter((one) => one.of === 'span').map((one) => one.length.teeth);

describe('what a jaw and a pin can reach', () => {
  test('200 wheels: spans lie on the flanks, pins between the least and the greatest that rest', () => {
    const random = startRandom(17);
    let pins = 0;
    let refused = 0;
    for (let draw = 0; draw < 200; draw++) {
      const spec = makeSpec({
        kind: random.uniform() < 0.3 ? 'internal' : 'external',
        teeth: 8 + Math.floor(90 * random.uniform()),
        module: 0.3 + 2 * random.uniform(),
        profileShift: random.uniform() - 0.3,
        helixAngle: random.uniform() < 0.3 ? rad(20) : 0,
      });
      const pin = spec.module * (0.8 + 2 * random.uniform());
      const found = listPossibleReadings(
        wheel({ kind: spec.kind, kit: { jawTipMm: 0.1, pinsMm: [pin] } }),
        spec,
      );
      const spans = spansOf(found);
      const label = JSON.stringify(spec);
      for (const k of spans) expect(listSpanTeeth(spec), label).toContain(k);
      if (!found.some((one) => one.of === 'over-pins')) {
        refused++;
        continue;
      }
      pins++;
      const range = findPinRange({ ...spec, tipDiameter: null });
      // Tips a little short let slightly smaller pins stand proud; larger ones are never let in.
      expect(pin, label).toBeLessThanOrEqual((range?.greatest ?? Number.POSITIVE_INFINITY) + 1e-9);
    }
    expect(Math.min(pins, refused)).toBeGreaterThan(40);
  });

  test('the root is proposed to a blade that reaches it, and not to one that its fillets hold up', () => {
    // A blade of 0.7 mm stands 0.1 mm over the root of module 1, and 0.04 mm over that of module 2.
    const asks = (module: number, jawTipMm: number): boolean =>
      listPossibleReadings(wheel({ kit: { jawTipMm } }), makeSpec({ teeth: 24, module })).some(
        (one) => one.of === 'root',
      );
    expect([asks(1, 0.7), asks(1, 0.4), asks(2, 0.7), asks(2, 1)]).toEqual([false, true, true, false]);
  });

  test('no span over more teeth than stand in a row', () => {
    const spec = makeSpec({ teeth: 60 });
    const whole = spansOf(listPossibleReadings(wheel(), spec));
    expect(Math.max(...whole)).toBeGreaterThan(6);
    const broken = wheel({ damage: [{ kind: 'teeth-missing', count: 54 }] });
    expect(spansOf(listPossibleReadings(broken, spec))).toEqual(whole.filter((k) => k <= 6));
  });

  test('an answer whose teeth can not be asks for no jaw and no pin, and nothing is thrown', () => {
    const pointed = makeSpec({ teeth: 20, dedendum: 2.5 });
    const found = listPossibleReadings(wheel({ kit: { jawTipMm: 0.1, pinsMm: [1.7] } }), pointed);
    expect(found.map((one) => one.of)).toEqual(['outside']);
  });
});

describe('along a rack', () => {
  const rack = makeSpec({ kind: 'rack', teeth: 21 });
  const pitchesOf = (readings: WheelEvidence['readings']): number[] =>
    listPossibleReadings(wheel({ kind: 'rack', readings }), rack)
      .filter((one) => one.of === 'rack-pitch')
      .map((one) => one.length.pitches);

  test('the whole row comes first, then others that were not taken', () => {
    expect(pitchesOf([])).toEqual([20, 10, 1]);
    expect(pitchesOf([{ of: 'rack-pitch', pitches: 20, mm: 62.8 }])).toEqual([10, 1]);
    expect(pitchesOf([{ of: 'rack-pitch', mm: 3.1 }])).toEqual([20, 10]);
  });

  test('teeth that are gone shorten the row, and the depth is asked for until it is there', () => {
    const broken = wheel({ kind: 'rack', damage: [{ kind: 'teeth-missing', count: 18 }] });
    const found = listPossibleReadings(broken, rack);
    expect(found.map((one) => [one.of, one.length.pitches])).toEqual([
      ['rack-pitch', 2],
      ['rack-pitch', 1],
      ['tooth-depth', 1],
    ]);
  });
});
