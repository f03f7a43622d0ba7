import { Fail } from '../fail.ts';
import { bisect } from '../numeric/bisect.ts';
import { findBaseSpaceAngle } from './base-space-angle.ts';
import { findDiameters } from './gear-diameters.ts';
import type { GearSpec } from './gear-spec.ts';
import { findInternalInterference } from './internal-interference.ts';
import { inverseInvolute, involute } from './involute-function.ts';

/** The root of an internal wheel's space, transverse section, mm and rad, the space's axis on +y. */
export type InternalRoot = InternalFillet | ShaperRoot;

/** A circle tangent to root circle and flank; its center stands `centerAngle` off the space's axis. */
export interface InternalFillet {
  readonly cut: 'fillet';
  readonly radius: number;
  readonly centerRadius: number;
  readonly centerAngle: number;
  /** Whether the spec asked for a larger circle than the space or the flank holds */
  readonly isClipped: boolean;
  /** Radius about the wheel's axis at which the involute begins */
  readonly flankStart: number;
}

/** What the sharp tip corner of an unshifted shaper cuts. */
export interface ShaperRoot {
  readonly cut: 'shaper';
  /** Writes x, y of the curve for the corner's angle past the line of centers: 0 at the root circle, `end` at the flank. */
  readonly pointAt: (corner: number, out: [number, number]) => void;
  readonly end: number;
  readonly flankStart: number;
}

/**
 * The root of an internal wheel: a circular fillet of `rootRadius` times the module, or as large as fits, since no
 * rack cuts an internal wheel; with `cutterTeeth`, the true trochoid of that shaper.
 *
 * Throws Fail `bad-geometry` where the space comes to a point before the root circle, where root and tip leave no
 * tooth, or where no shaper of that size cuts this wheel.
 */
export function findInternalRoot(spec: GearSpec): InternalRoot {
  const { base, tip, root, reference } = findDiameters(spec);
  if (!(root > Math.max(tip, base))) {
    throw new Fail(
      'bad-geometry',
      'tipDiameter',
      `the tips, at ${tip.toFixed(3)} mm, do not stand inside the root circle of ${root.toFixed(3)} mm`,
      'Give a smaller tip diameter, or a larger dedendum or profile shift.',
      { tip, root },
    );
  }
  if (!(findInternalSpaceHalfAngle(spec, root / 2) > 0)) {
    const deepest = base / Math.cos(inverseInvolute(findBaseSpaceAngle(spec)));
    const greatest =
      Math.floor(((deepest - reference) / (2 * spec.module) - spec.profileShift) * 1000) / 1000;
    throw new Fail(
      'bad-geometry',
      'dedendum',
      `the space comes to a point before a dedendum of ${spec.dedendum}`,
      `Use a dedendum of at most ${greatest}, or a smaller profile shift or pressure angle.`,
      { dedendum: spec.dedendum, greatest },
    );
  }
  return spec.cutterTeeth === undefined ? findFillet(spec) : findShaperRoot(spec, spec.cutterTeeth);
}

/** Half the angle of an internal wheel's space at a radius: the half tooth of the external wheel that fills it. */
export function findInternalSpaceHalfAngle(spec: GearSpec, radius: number): number {
  const { base } = findDiameters(spec);
  return findBaseSpaceAngle(spec) - involute(Math.acos(Math.min(1, base / (2 * radius))));
}

/**
 * The fillet circle's center lies on the flank's inner parallel, an involute of the same base circle turned by ρ/r_b,
 * at radius r_f − ρ; it touches the flank where the generating line is longer by ρ. It fits while its center stays on
 * its side of the space's axis and the touching point within the flank; both fail as ρ grows.
 */
function findFillet(spec: GearSpec): InternalFillet {
  const { base, tip, root } = findDiameters(spec);
  const baseRadius = base / 2;
  const rootRadius = root / 2;
  const centerAngleOf = (radius: number): number =>
    findInternalSpaceHalfAngle(spec, rootRadius - radius) - radius / baseRadius;
  const flankStartOf = (radius: number): number =>
    Math.hypot(baseRadius, Math.sqrt(Math.max(0, (rootRadius - radius) ** 2 - baseRadius ** 2)) + radius);
  const fits = (radius: number): boolean =>
    radius === 0 ||
    (rootRadius - radius >= baseRadius && centerAngleOf(radius) >= 0 && flankStartOf(radius) >= tip / 2);
  const asked = spec.rootRadius * spec.module;
  const radius = fits(asked) ? asked : bisect(fits, 0, asked).holding;
  return {
    cut: 'fillet',
    radius,
    centerRadius: rootRadius - radius,
    centerAngle: centerAngleOf(radius),
    isClipped: radius < asked,
    flankStart: flankStartOf(radius),
  };
}

/**
 * The shaper stands at the distance where it cuts without backlash, its tip on the root circle; a thinned wheel is
 * cut by a shaper that much thicker. Its corner turns by φ about the cutter's axis while the wheel turns by φ z_c/z,
 * and hands over to the involute where the corner crosses the line of action (Litvin & Fuentes, Gear Geometry and
 * Applied Theory, on shaping of internal gears).
 */
function findShaperRoot(spec: GearSpec, cutterTeeth: number): ShaperRoot {
  const { base, root, transverseModule, transversePressureAngle: a } = findDiameters(spec);
  const z = spec.teeth;
  const inv = involute(a) + (2 * spec.profileShift * Math.tan(spec.pressureAngle)) / (z - cutterTeeth);
  if (!(cutterTeeth < z) || !(inv > 0)) {
    throw refuseCutter(cutterTeeth, `a shaper of ${cutterTeeth} teeth does not mesh with this wheel`);
  }
  const working = inverseInvolute(inv);
  const distance = (((z - cutterTeeth) * transverseModule) / 2) * (Math.cos(a) / Math.cos(working));
  const cutterTip = root / 2 - distance;
  const cutterBase = ((cutterTeeth * transverseModule) / 2) * Math.cos(a);
  const halfTooth =
    (Math.PI / 2 + spec.thinning / spec.module) / cutterTeeth +
    involute(a) -
    involute(Math.acos(Math.min(1, cutterBase / cutterTip)));
  if (!(cutterTip > cutterBase) || !(halfTooth > 0)) {
    throw refuseCutter(cutterTeeth, 'the shaper that reaches this root has pointed teeth');
  }
  const { cutterTeeth: _, ...plain } = spec;
  const cutter: GearSpec = {
    ...plain,
    kind: 'external',
    teeth: cutterTeeth,
    profileShift: 0,
    tipDiameter: 2 * cutterTip,
  };
  const limits = findInternalInterference(cutter, spec);
  if (!limits.involute.isFree || !limits.trochoid.isFree || !limits.trimming.isFree) {
    throw refuseCutter(
      cutterTeeth,
      `a shaper of ${cutterTeeth} teeth trims this wheel's tips as it feeds in`,
    );
  }
  const pointAt = (corner: number, out: [number, number]): void => {
    const turn = ((corner - halfTooth) * cutterTeeth) / z;
    const x = cutterTip * Math.sin(corner);
    const y = distance + cutterTip * Math.cos(corner);
    out[0] = x * Math.cos(turn) - y * Math.sin(turn);
    out[1] = x * Math.sin(turn) + y * Math.cos(turn);
  };
  const reach = Math.sqrt(cutterTip ** 2 - cutterBase ** 2);
  return {
    cut: 'shaper',
    pointAt,
    // On the line of action the cutter's tip stands at its own pressure angle from the base tangent.
    end: Math.acos(cutterBase / cutterTip) - working,
    flankStart: Math.hypot(base / 2, reach + distance * Math.sin(working)),
  };
}

function refuseCutter(cutterTeeth: number, message: string): Fail {
  return new Fail(
    'bad-geometry',
    'cutterTeeth',
    message,
    'Give another number of cutter teeth (most often fewer), or leave cutterTeeth out.',
    { cutterTeeth },
  );
}
