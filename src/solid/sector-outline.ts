import { findDiameters } from '../involute/gear-diameters.ts';
import type { ToothOutline } from '../involute/tooth-outline.ts';
import { sampleArc } from './bore-outline.ts';
import type { ToothedSection } from './wheel-form.ts';

/**
 * Where a sector's teeth end, rad, tooth 0 on +x: from the middle of the space before tooth 0 to the middle of the
 * space after the last one. Beyond both the root circle goes on for half a pitch, to where the next tooth would stand:
 * the mate's tooth has a whole space there. Then comes the cylinder without teeth.
 */
export function findSectorAngles({ spec, sector }: ToothedSection): {
  readonly from: number;
  readonly to: number;
  /** The cylinder's ends; undefined where it is the root circle or no wider than a tooth */
  readonly rest?: { readonly from: number; readonly to: number; readonly radius: number };
} {
  const pitch = (2 * Math.PI) / spec.teeth;
  const teeth = sector?.teeth ?? spec.teeth;
  const from = -pitch / 2;
  const to = from + teeth * pitch;
  const root = findDiameters(spec).root / 2;
  const radius = (sector?.restDiameter ?? 2 * root) / 2;
  if (Math.abs(radius - root) < sameRadius || spec.teeth - teeth < 2) return { from, to };
  return { from, to, rest: { from: to + pitch / 2, to: from - pitch / 2 + 2 * Math.PI, radius } };
}

/** A step smaller than this is none, mm. */
const sameRadius = 1e-4;

/** The outline of a sector from the whole wheel's; without a sector the whole wheel's points. */
export function traceSector(
  section: ToothedSection,
  { points, perTooth }: ToothOutline,
  chordError: number,
): Float64Array {
  const { spec, sector } = section;
  if (!sector) return points;
  const { from, to, rest } = findSectorAngles(section);
  const root = findDiameters(spec).root / 2;
  const kept = Array.from(points.subarray(0, 2 * perTooth * sector.teeth));
  const round = from + 2 * Math.PI;
  if (!rest) {
    // The arc's last point is the first tooth's first.
    kept.push(...sampleArc(root, to, round, chordError).slice(0, -2));
    return Float64Array.from(kept);
  }
  kept.push(...sampleArc(root, to, rest.from, chordError));
  kept.push(...sampleArc(rest.radius, rest.from, rest.to, chordError));
  kept.push(...sampleArc(root, rest.to, round, chordError).slice(0, -2));
  return Float64Array.from(kept);
}
