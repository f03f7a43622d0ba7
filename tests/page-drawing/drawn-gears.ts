import type { DrawnGear } from '../../src/draw.ts';
import { findDiameters } from '../../src/involute/gear-diameters.ts';
import type { GearSpec } from '../../src/involute/gear-spec.ts';
import { traceOutline } from '../../src/involute/trace-outline.ts';

/** A spur gear of the basic rack ISO 53 A, 20°, with what differs. */
export function makeSpec(teeth: number, module: number, more: Partial<GearSpec> = {}): GearSpec {
  return {
    kind: 'external',
    teeth,
    module,
    pressureAngle: Math.PI / 9,
    helixAngle: 0,
    profileShift: 0,
    addendum: 1,
    dedendum: 1.25,
    rootRadius: 0.38,
    thinning: 0,
    tipDiameter: null,
    ...more,
  };
}

/** The spec as the page is given it. */
export function drawSpec(spec: GearSpec): DrawnGear {
  const { points, perTooth } = traceOutline(spec, 0.0005);
  const diameters = spec.kind === 'rack' ? undefined : findDiameters(spec);
  return {
    candidate: 0,
    share: 1,
    outline: points,
    perTooth,
    teeth: spec.teeth,
    moduleMm: spec.module,
    tipDiameterMm: diameters?.tip ?? 0,
    rootDiameterMm: diameters?.root ?? 0,
    referenceDiameterMm: diameters?.reference ?? 0,
    baseDiameterMm: diameters?.base ?? 0,
    pressureAngleDeg: 20,
  };
}
