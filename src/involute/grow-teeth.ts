import { findDiameters } from './gear-diameters.ts';
import type { GearSpec } from './gear-spec.ts';
import { findGeneratingRack } from './generating-rack.ts';
import { findInternalRoot } from './internal-root.ts';

/** How metal reaches beyond a toothing, in its transverse section; negative: it falls short. */
export interface ToothGrowth {
  /** Flanks, fillets and root move out by this along their normal, mm a side */
  readonly flanks: number;
  /** The tip arc moves out by this, mm on the radius */
  readonly tips: number;
  /** Then every length is this much of itself; 1 for none */
  readonly scale: number;
}

/**
 * The toothing whose outline is the parallel curve of another's, so far outside of it.
 *
 * Exact, because the parallel of what a rack cuts is what the rack's own parallel cuts: with growth g the rack's tooth
 * loses g/cos α at its half width (thinning falls by 2 g cos β/cos α_t), its tip rises by g (h_f by g/m) and its
 * corner of radius ρ keeps its center (ρ by g); an involute's parallel is an involute of the same base circle. A
 * circular fillet of an internal wheel or a rack does the same. Not exact: corners (an outline that grows meets at a
 * corner where the parallel curve is an arc of radius g), fillets of a radius below g, which end as a corner, fillets
 * of slanted teeth and a shaper's trochoid. Growth of nothing returns the spec itself.
 *
 * Never throws by itself for a tooth that is gone: the outline of the result does, with its own Fail. Throws Fail as
 * `findGeneratingRack` and `findInternalRoot` where the given toothing has no outline.
 */
export function growTeeth(spec: GearSpec, { flanks, tips, scale }: ToothGrowth): GearSpec {
  if (flanks === 0 && tips === 0 && scale === 1) return spec;
  const m = spec.module;
  const isRack = spec.kind === 'rack';
  const outward = spec.kind === 'internal' ? -1 : 1;
  const transverse = Math.atan(Math.tan(spec.pressureAngle) / Math.cos(spec.helixAngle));
  const tip = isRack || tips === 0 ? spec.tipDiameter : findDiameters(spec).tip + 2 * outward * tips;
  const thinning = spec.thinning - (2 * flanks * Math.cos(spec.helixAngle)) / Math.cos(transverse);
  return {
    ...spec,
    module: m * scale,
    addendum: isRack ? spec.addendum + tips / m : spec.addendum,
    dedendum: spec.dedendum - flanks / m,
    rootRadius: flanks === 0 ? spec.rootRadius : Math.max(0, findCornerRadius(spec) - flanks) / m,
    thinning: thinning * scale,
    tipDiameter: tip === null ? null : tip * scale,
  };
}

/** The radius as cut, mm: one that asks for more than the space holds is clipped. */
function findCornerRadius(spec: GearSpec): number {
  if (spec.kind !== 'internal') return findGeneratingRack(spec).cornerRadius;
  const root = findInternalRoot(spec);
  return root.cut === 'fillet' ? root.radius : spec.rootRadius * spec.module;
}
