import type { Material } from '../../gear-library/materials.ts';
import type { Process } from '../../gear-library/processes.ts';
import { ductileStrain, reversedBending, wantedMargin } from '../../gear-library/strength-limits.ts';
import { Fail } from '../fail.ts';
import { findDiameters } from '../involute/gear-diameters.ts';
import type { GearSpec } from '../involute/gear-spec.ts';
import { findWorkingPair } from '../involute/working-pair.ts';
import { type Duty, findAllowable } from './find-allowable.ts';
import { findFlankPressure } from './find-flank-pressure.ts';
import { type FormFactor, findFormFactor } from './find-form-factor.ts';
import { findRootStress } from './find-root-stress.ts';
import { findSingleContact } from './find-single-contact.ts';
import { divide, exactly, multiply, type Range } from './range.ts';
import { traceToothHalf } from './trace-tooth-half.ts';

/** A load on a wheel's teeth: a torque on its shaft, N mm, or on a rack the force along it, N. */
export type Load = { readonly torque: number } | { readonly force: number };

/** Everything a tooth's strength hangs on. Lengths mm. */
export interface ToothDuty extends Duty {
  readonly spec: GearSpec;
  readonly faceWidth: number;
  readonly material: Material;
  readonly process: Process;
  readonly running?: Load | undefined;
  readonly stall?: Load | undefined;
  readonly mate?:
    | { readonly spec: GearSpec; readonly material: Material; readonly centerDistance?: number | undefined }
    | undefined;
  /** Solid under the tooth, down to the bore or out to the rim; left out: enough */
  readonly rim?: number | undefined;
  /** Whether the tooth is bent both ways, as an idler's */
  readonly isReversed?: boolean;
}

/** One way to fail: what acts, what is borne, and how far they are apart. Stresses MPa. */
export interface Criterion {
  readonly kind: 'root-running' | 'root-stall' | 'flank-running';
  readonly stress: Range;
  readonly allowable: Range;
  /** Allowable over stress */
  readonly margin: Range;
  /** The margin that is asked for */
  readonly wanted: number;
  /** `holds` and `fails` as wanted or not even 1; `doubtful` between */
  readonly verdict: 'holds' | 'doubtful' | 'fails';
}

export interface ToothStrength {
  readonly criteria: readonly Criterion[];
  /** The criterion with the least margin for what is wanted; undefined without a load */
  readonly governs: Criterion | undefined;
  /** Tangential force, N, that just meets the wanted margins at the root */
  readonly carries: { readonly running: Range; readonly stall: Range };
  /** With the load at the tip, and at the highest point of single contact where the mate is known */
  readonly factors: { readonly tip: FormFactor; readonly single: FormFactor | undefined };
  /** ε_α with the mate; undefined without one that runs with it */
  readonly contactRatio: number | undefined;
  readonly allowableBasis: 'formula' | 'share-of-strength';
}

/**
 * Whether a tooth lasts: its root stress under the running load and under a stall, and the pressure on its flanks,
 * against what its material bears at that temperature and number of cycles.
 *
 * The whole load stands on one tooth. Cut wheels share it as their geometry says, so their usual stress is that at
 * the highest point of single contact; printed teeth may miss their turn by more than they bend, so theirs is that at
 * the tip. Both ends of that range are kept, and so is the spread of the material: a margin's low end is the worst of
 * all at once. Under a stall a material that flows evens out the fillet's peak: its usual stress leaves Y_S out.
 *
 * Not in it: speed, shock beyond the stall torque given, teeth out of line across the face, wear.
 *
 * Throws Fail as `traceOutline` does; a mate that can't run with the wheel is left out.
 */
export function checkTooth(duty: ToothDuty): ToothStrength {
  const { spec, faceWidth, material } = duty;
  const tooth = traceToothHalf(spec);
  const tip = findFormFactor(tooth);
  const contact = duty.mate && findContact(spec, duty.mate);
  const single = contact && findFormFactor(tooth, contact.loadRadius);
  const allowable = findAllowable(material, duty);
  const reversed = exactly(duty.isReversed ? reversedBending.part : 1);
  const perNewton = findStressPerNewton(duty, tip, single);
  const bears = { running: multiply(allowable.root, reversed), stall: allowable.once };

  const criteria: Criterion[] = [];
  if (duty.running) {
    const force = exactly(toForce(spec, duty.running));
    criteria.push(
      judge('root-running', multiply(perNewton.running, force), bears.running, wantedMargin.running.value),
    );
    if (contact && duty.mate) {
      const pressure = findPressure(spec, duty.mate, material, duty.running, faceWidth);
      criteria.push(judge('flank-running', pressure, allowable.flank, wantedMargin.flank.value));
    }
  }
  if (duty.stall) {
    const force = exactly(toForce(spec, duty.stall));
    criteria.push(
      judge('root-stall', multiply(perNewton.stall, force), bears.stall, wantedMargin.stall.value),
    );
  }
  const carry = (kind: 'running' | 'stall'): Range =>
    divide(divide(bears[kind], perNewton[kind]), exactly(wantedMargin[kind].value));
  return {
    criteria,
    governs: [...criteria].sort((a, b) => a.margin.value / a.wanted - b.margin.value / b.wanted)[0],
    carries: { running: carry('running'), stall: carry('stall') },
    factors: { tip, single },
    contactRatio: contact?.contactRatio,
    allowableBasis: allowable.basis,
  };
}

/** Where the load stands with this mate; undefined where the two do not run together. */
function findContact(
  spec: GearSpec,
  { spec: mate, centerDistance }: NonNullable<ToothDuty['mate']>,
): ReturnType<typeof findSingleContact> | undefined {
  if (spec.kind !== 'external' && mate.kind !== 'external') return undefined;
  try {
    const contact = findSingleContact(spec, mate, centerDistance);
    return contact.contactRatio > 0 ? contact : undefined;
  } catch (error) {
    // Two that can't mesh are the drive's trouble to tell; here the tip stands for the load.
    if (error instanceof Fail) return undefined;
    throw error;
  }
}

/** Root stress of one newton, running and in a stall. */
function findStressPerNewton(
  { spec, faceWidth, rim, process, material }: ToothDuty,
  tip: FormFactor,
  single: FormFactor | undefined,
): { readonly running: Range; readonly stall: Range } {
  const at = (factor: FormFactor): number => findRootStress(spec, factor, 1, faceWidth, rim).local;
  const high = at(tip);
  const low = single ? at(single) : high;
  const value = process.lineMm === 0 ? low : high;
  const blunt = 1 / (process.lineMm === 0 && single ? single : tip).tangent.concentration;
  const isDuctile = material.onceStrain.value >= ductileStrain.value;
  return {
    running: { value, low, high },
    stall: { value: isDuctile ? value * blunt : value, low: low * blunt, high },
  };
}

/** At the reference circle. */
function toForce(spec: GearSpec, load: Load): number {
  if ('force' in load) return Math.abs(load.force);
  if (spec.kind === 'rack') throw new Error('a rack is loaded by a force, not a torque');
  return (2 * Math.abs(load.torque)) / findDiameters(spec).reference;
}

function findPressure(
  spec: GearSpec,
  { spec: mateSpec, material: mateMaterial, centerDistance }: NonNullable<ToothDuty['mate']>,
  material: Material,
  load: Load,
  faceWidth: number,
): Range {
  const isFirst = spec.kind === 'external';
  const [first, second] = isFirst ? [spec, mateSpec] : [mateSpec, spec];
  const pair = findWorkingPair(first, second, centerDistance);
  const force =
    'force' in load
      ? Math.abs(load.force)
      : (2 * Math.abs(load.torque)) / pair.workingDiameters[isFirst ? 0 : 1];
  const pressureFor = (end: 'value' | 'low' | 'high'): number => {
    const own = { modulus: material.modulusMpa[end], poisson: material.poisson.value };
    const other = { modulus: mateMaterial.modulusMpa[end], poisson: mateMaterial.poisson.value };
    return findFlankPressure(
      first,
      second,
      isFirst ? [own, other] : [other, own],
      force,
      faceWidth,
      centerDistance,
    ).greatest;
  };
  return { value: pressureFor('value'), low: pressureFor('low'), high: pressureFor('high') };
}

function judge(kind: Criterion['kind'], stress: Range, allowable: Range, wanted: number): Criterion {
  const margin = divide(allowable, stress);
  const verdict =
    margin.value >= wanted && margin.low >= 1 ? 'holds' : margin.value < 1 ? 'fails' : 'doubtful';
  return { kind, stress, allowable, margin, wanted, verdict };
}
