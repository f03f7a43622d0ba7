import { findDiameters } from '../involute/gear-diameters.ts';
import type { GearSpec } from '../involute/gear-spec.ts';
import { measureOverPins } from '../involute/pins.ts';
import { findSpan } from '../involute/span.ts';
import { findTipLand } from '../involute/tooth-thickness.ts';

/** One reading of the teeth, as far as it decides what a caliper would show. */
export interface AskedReading {
  readonly of: string;
  readonly teeth?: number | undefined;
  readonly pinMm?: number | undefined;
  readonly pitches?: number | undefined;
  /** outside, odd counts: how the jaws lie; rocked to the largest where left out */
  readonly jaws?: 'settled' | 'rocked' | undefined;
}

/**
 * What a caliper shows on a whole, new wheel of that spec, mm: across the tips (odd counts: rocked to the largest, or
 * settled to the least),
 * in the bottom of the teeth (odd counts: the two most nearly opposite gaps), tooth depth, span, over pins, along a
 * rack. Undefined for readings that the teeth don't decide, and where the jaws or the pin can't rest.
 *
 * Source: widths of odd counts as design of the readings says: d_a cos(90°/z − τ) rocked and
 * d_a/2 (1 + cos(180°/z − τ)) settled, with τ half the tip land's angle,
 * d_f cos(90°/z); span and pins as involute/ has them.
 */
export function expectReading(spec: GearSpec, reading: AskedReading): number | undefined {
  if (spec.kind === 'rack') {
    if (reading.of === 'rack-pitch') return Math.PI * spec.module * (reading.pitches ?? 1);
    return reading.of === 'tooth-depth' ? (spec.addendum + spec.dedendum) * spec.module : undefined;
  }
  const { tip, root } = findDiameters(spec);
  const isOdd = spec.teeth % 2 === 1;
  const quarter = Math.PI / (2 * spec.teeth);
  switch (reading.of) {
    case 'outside': {
      if (!isOdd) return tip;
      const halfLand = Math.max(0, findTipLand(spec)) / tip;
      return reading.jaws === 'settled' && spec.kind === 'external'
        ? (tip / 2) * (1 + Math.cos(Math.max(0, 2 * quarter - halfLand)))
        : tip * Math.cos(Math.max(0, quarter - halfLand));
    }
    case 'root':
      return isOdd ? root * Math.cos(quarter) : root;
    case 'tooth-depth':
      return Math.abs(tip - root) / 2;
    case 'span':
      return spec.kind === 'external' && reading.teeth !== undefined
        ? findSpan(spec, reading.teeth)
        : undefined;
    case 'over-pins':
      return reading.pinMm === undefined ? undefined : measureOverPins(spec, reading.pinMm);
    default:
      return undefined;
  }
}
