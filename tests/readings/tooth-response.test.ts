import { describe, expect, test } from 'vitest';
import { findDiameters } from '../../src/involute/gear-diameters.ts';
import type { GearSpec } from '../../src/involute/gear-spec.ts';
import { measureOverPins } from '../../src/involute/pins.ts';
import { findSpan } from '../../src/involute/span.ts';
import { traceOutline } from '../../src/involute/trace-outline.ts';
import { findWorkingPair } from '../../src/involute/working-pair.ts';
import type { MeasuredLength } from '../../src/readings/measured-length.ts';
import { respond, type UnitTooth } from '../../src/readings/tooth-response.ts';
import { makeSpec, rad } from '../involute/make-spec.ts';

const length = (given: Partial<MeasuredLength>): MeasuredLength => ({
  index: 0,
  of: 'outside',
  value: 0,
  noise: 1e-4,
  zeroDeviation: 0,
  offset: 0,
  jaws: undefined,
  teeth: 0,
  pin: 0,
  pitches: 1,
  mate: undefined,
  farOff: undefined,
  ...given,
});

const unit = (spec: GearSpec): UnitTooth => ({ ...spec, extraDedendum: 0 });

const specs = [
  makeSpec({ teeth: 12, profileShift: 0.3 }),
  makeSpec({ teeth: 25, pressureAngle: rad(14.5) }),
  makeSpec({ teeth: 40, helixAngle: rad(18), profileShift: -0.1 }),
  makeSpec({ kind: 'internal', teeth: 60, profileShift: 0.1 }),
];

describe('what a reading should show is what the exact geometry gives', () => {
  test('root, span and pins on every kind of wheel', () => {
    for (const spec of specs) {
      const { root } = findDiameters(spec);
      const [atRoot] = respond(length({ of: 'root' }), unit(spec), 1);
      expect(atRoot.value).toBeCloseTo(
        root * (spec.teeth % 2 ? Math.cos(Math.PI / (2 * spec.teeth)) : 1),
        10,
      );
      const [span] = respond(length({ of: 'span', teeth: 3 }), unit(spec), 1);
      expect(span.value).toBeCloseTo(findSpan(spec, 3), 10);
      const [pins] = respond(length({ of: 'over-pins', pin: 1.7 }), unit(spec), 1);
      expect(pins.value).toBeCloseTo(measureOverPins(spec, 1.7) ?? Number.NaN, 9);
    }
  });

  test('shaft distance of external and internal pairs', () => {
    const wheel = makeSpec({ teeth: 20, profileShift: 0.2 });
    for (const kind of ['external', 'internal'] as const) {
      const mate = makeSpec({ kind, teeth: 60 });
      const modes = respond(
        length({ of: 'center-distance', mate: { id: 'm', kind, teeth: 60 } }),
        unit(wheel),
        1,
      );
      expect(modes[0].value).toBeCloseTo(findWorkingPair(wheel, mate).centerDistance, 9);
    }
  });

  test('jaws on odd counts read the least and greatest width of the outline itself', () => {
    for (const teeth of [9, 15, 25]) {
      const spec = makeSpec({ teeth, profileShift: teeth < 17 ? 0.3 : 0 });
      const { points } = traceOutline(spec, 1e-5);
      let least = Number.POSITIVE_INFINITY;
      let greatest = 0;
      for (let k = 0; k < 720; k++) {
        const angle = (k * Math.PI) / 720 / teeth;
        let low = 0;
        let high = 0;
        for (let i = 0; i < points.length; i += 2) {
          const along = points[i] * Math.cos(angle) + points[i + 1] * Math.sin(angle);
          low = Math.min(low, along);
          high = Math.max(high, along);
        }
        least = Math.min(least, high - low);
        greatest = Math.max(greatest, high - low);
      }
      // Sharp corners of the lands: all of the land is met.
      const full = (jaws: 'rocked' | 'settled'): number => {
        const [mode] = respond(length({ jaws }), unit(spec), 1);
        return mode.value + 0.25 * mode.byTipLand;
      };
      expect(full('settled')).toBeCloseTo(least, 2);
      expect(full('rocked')).toBeCloseTo(greatest, 2);
    }
  });

  test('slopes are the differences they stand for', () => {
    const h = 1e-5;
    for (const spec of specs) {
      const rows: Partial<MeasuredLength>[] = [
        { of: 'outside', jaws: 'rocked' },
        { of: 'outside', jaws: 'settled' },
        { of: 'root' },
        { of: 'span', teeth: 4 },
        { of: 'over-pins', pin: 1.7 },
      ];
      for (const row of rows) {
        const at = (x: number): number =>
          respond(length(row), { ...unit(spec), profileShift: spec.profileShift + x }, 1)[0].value;
        const [mode] = respond(length(row), unit(spec), 1);
        expect(mode.byShift).toBeCloseTo((at(h) - at(-h)) / (2 * h), 4);
      }
    }
  });
});
