import { Fail } from '../fail.ts';
import type { GearSpec } from '../involute/gear-spec.ts';
import type { SpecFields } from './spec-schema.ts';

/** A spec as the job file writes it. */
export function fieldsOfSpec(spec: GearSpec) {
  const degrees = (radians: number): number => Math.round(((radians * 180) / Math.PI) * 1e9) / 1e9;
  return {
    teeth: spec.teeth,
    moduleMm: spec.module,
    pressureAngleDeg: degrees(spec.pressureAngle),
    helixAngleDeg: degrees(spec.helixAngle),
    profileShift: spec.profileShift,
    addendum: spec.addendum,
    dedendum: spec.dedendum,
    rootRadius: spec.rootRadius,
    thinningMm: spec.thinning,
    tipDiameterMm: spec.tipDiameter,
    ...(spec.cutterTeeth === undefined ? {} : { cutterTeeth: spec.cutterTeeth }),
  };
}

/**
 * The toothing that a job's spec describes. Teeth and module must be there; the rest defaults to a spur wheel of 20°
 * without shift or thinning on the basic rack ISO 53 A (1, 1.25, 0.38). Throws Fail `bad-value` for what is missing.
 */
export function specOfFields(fields: SpecFields, kind: GearSpec['kind'], field: string): GearSpec {
  const need = (key: 'teeth' | 'moduleMm'): number => {
    const value = fields[key];
    if (value !== undefined) return value;
    throw new Fail(
      'bad-value',
      `${field}.${key}`,
      `the spec says no ${key}`,
      `Add "${key}", or leave the spec out.`,
    );
  };
  const radians = (degrees: number): number => (degrees * Math.PI) / 180;
  return {
    kind,
    teeth: need('teeth'),
    module: need('moduleMm'),
    pressureAngle: radians(fields.pressureAngleDeg ?? 20),
    helixAngle: radians(fields.helixAngleDeg ?? 0),
    profileShift: fields.profileShift ?? 0,
    addendum: fields.addendum ?? 1,
    dedendum: fields.dedendum ?? 1.25,
    rootRadius: fields.rootRadius ?? 0.38,
    thinning: fields.thinningMm ?? 0,
    tipDiameter: fields.tipDiameterMm ?? null,
    ...(fields.cutterTeeth === undefined ? {} : { cutterTeeth: fields.cutterTeeth }),
  };
}
