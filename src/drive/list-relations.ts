import { add, divide, multiply, negate, type Rational, rationalOf, unity } from '../numeric/rational.ts';
import type { DriveMesh, DriveModel, DriveWheel } from './drive-model.ts';
import { findRackPitch } from './rack-travel.ts';

/**
 * What one mesh (or one piece of two wheels) says of speeds: the terms' coefficients times their speeds sum to 0.
 * Speeds are turns of shafts, or, where a wheel's own count isn't known or it is a rack, teeth that pass (of a belt
 * without teeth: mm of diameter), so that an idler's count is never needed.
 */
export interface Relation {
  /** Index of the mesh; undefined where wheels are one piece */
  readonly mesh: number | undefined;
  readonly wheels: readonly [string, string];
  /** Node → coefficient, none of them 0 */
  readonly terms: ReadonlyMap<string, Rational>;
  /** False for a belt that slips or whose diameters are measured */
  readonly isExact: boolean;
  /** False where axes cross: which way it turns depends on hands and places that aren't known */
  readonly isSignKnown: boolean;
}

export interface ImpossibleMesh {
  readonly mesh: number;
  readonly message: string;
  readonly remedy: string;
}

/**
 * Every relation of a drive, and the meshes that can't be one.
 *
 * External: z1 (ω1 − ω_c) + z2 (ω2 − ω_c) = 0; internal: minus; ω_c the carrier's, 0 without one (Willis). Worm:
 * starts for z1. Belt: diameters or counts for z, driven side slower by the slip, crossed reversed.
 */
export function listRelations(model: DriveModel): {
  readonly relations: readonly Relation[];
  readonly impossible: readonly ImpossibleMesh[];
} {
  const wheels = new Map(model.wheels.map((wheel) => [wheel.id, wheel]));
  const relations: Relation[] = [];
  const impossible: ImpossibleMesh[] = [];
  model.meshes.forEach((mesh, index) => {
    const driver = wheels.get(mesh.driver);
    const driven = wheels.get(mesh.driven);
    if (!driver || !driven) throw new Error(`mesh ${index} names a wheel that the model lacks`);
    const refused = refuseMesh(mesh, driver, driven);
    if (refused) impossible.push({ mesh: index, ...refused });
    else relations.push(relate(mesh, index, driver, driven));
  });
  return { relations: [...relations, ...relateParts(model.wheels)], impossible };
}

/** The node of a shaft's turns. */
export function shaftNode(shaft: string): string {
  return `shaft ${shaft}`;
}

/** The node of a rack's teeth that pass. */
export function rackNode(wheel: string): string {
  return passingNode(wheel, 'teeth', undefined);
}

/** The node of what passes at a wheel's rim, counted in `unit`, seen from the carrier. */
function passingNode(wheel: string, unit: Unit, carrier: string | undefined): string {
  return `rim ${JSON.stringify([wheel, unit, carrier ?? null])}`;
}

type Unit = 'teeth' | 'mm';

function refuseMesh(
  mesh: DriveMesh,
  driver: DriveWheel,
  driven: DriveWheel,
): { readonly message: string; readonly remedy: string } | undefined {
  if (driver.id === driven.id) {
    return {
      message: `"${driver.id}" is said to mesh with itself`,
      remedy: 'Name the other wheel of the mesh.',
    };
  }
  if (mesh.kind === 'belt') {
    if (mesh.slipPercent >= 100) {
      return {
        message: `the belt from "${driver.id}" to "${driven.id}" slips by ${mesh.slipPercent} %: it drives nothing`,
        remedy: 'Give the slip as a part of the speed; belts that pull slip by a percent or two.',
      };
    }
    const [one, other] = [driver, driven].map((wheel) => wheel.pitchMm);
    if (one === undefined || other === undefined || one === other) return undefined;
    return {
      message: `a belt can't fit teeth of ${one} mm on "${driver.id}" and of ${other} mm on "${driven.id}"`,
      remedy: 'Measure the tooth to tooth distance along the belt, and correct the pulley that differs.',
    };
  }
  const kinds = [driver.kind, driven.kind];
  const inward = kinds.filter((kind) => kind === 'internal').length;
  const flat = kinds.filter((kind) => kind === 'rack').length;
  if (inward + flat < 2) return undefined;
  return {
    message: `"${driver.id}" and "${driven.id}" can't mesh: ${tellFacing(inward, flat)}`,
    remedy: 'Correct the kind of one of them, or the mesh.',
  };
}

function tellFacing(inward: number, flat: number): string {
  if (inward === 2) return 'the teeth of both point inward';
  return flat === 2 ? 'both are bars' : "a ring's teeth can't reach a bar's";
}

function relate(mesh: DriveMesh, index: number, driver: DriveWheel, driven: DriveWheel): Relation {
  const wheels = [driver.id, driven.id] as const;
  const unit = mesh.kind === 'belt' ? unitOfBelt(driver, driven) : 'teeth';
  const carrier = isFlat(driver) || isFlat(driven) ? undefined : mesh.carrier;
  const [first, second] = [driver, driven].map((wheel) => rimOf(wheel, unit, carrier));
  // The driven side as it would be without slip turns 1/(1 − s) as fast.
  const kept = divide(rationalOf(100 - mesh.slipPercent), rationalOf(100));
  const left = mesh.kind === 'belt' ? multiply(first.size, kept) : first.size;
  const turnsAlike =
    mesh.kind === 'belt'
      ? !mesh.isCrossed
      : isInward(driver) || isInward(driven) || isFlat(driver) || isFlat(driven);
  const right = turnsAlike ? negate(second.size) : second.size;
  const terms = new Map<string, Rational>();
  const put = (node: string, by: Rational): void => {
    const sum = terms.get(node);
    const total = sum ? add(sum, by) : by;
    if (total.num === 0n) terms.delete(node);
    else terms.set(node, total);
  };
  put(first.node, left);
  put(second.node, right);
  if (carrier !== undefined) {
    // A rim that passes is reckoned as the carrier sees it already.
    if (first.isTurning) put(shaftNode(carrier), negate(left));
    if (second.isTurning) put(shaftNode(carrier), negate(right));
  }
  return {
    mesh: index,
    wheels,
    terms,
    isExact: mesh.kind !== 'belt' || (unit === 'teeth' && mesh.slipPercent === 0),
    isSignKnown: mesh.kind === 'belt' || (mesh.kind !== 'worm' && !isAcross(driver) && !isAcross(driven)),
  };
}

/** A wheel's size in a mesh and what turns with it; where the size isn't known, its rim's own speed at size 1. */
function rimOf(
  wheel: DriveWheel,
  unit: Unit,
  carrier: string | undefined,
): { readonly node: string; readonly size: Rational; readonly isTurning: boolean } {
  const size = isFlat(wheel) ? undefined : unit === 'teeth' ? wheel.teeth : findBeltDiameter(wheel);
  return size === undefined
    ? { node: passingNode(wheel.id, unit, carrier), size: unity, isTurning: false }
    : { node: shaftNode(wheel.shaft), size: rationalOf(size), isTurning: true };
}

/** Counts where both pulleys have them, or where nothing else is known; else diameters. */
function unitOfBelt(driver: DriveWheel, driven: DriveWheel): Unit {
  if (driver.teeth !== undefined && driven.teeth !== undefined) return 'teeth';
  const hasDiameter = [driver, driven].some((wheel) => wheel.diameterMm !== undefined);
  return hasDiameter ? 'mm' : 'teeth';
}

/** The diameter a belt runs on, mm: as measured, or teeth times pitch over π. */
export function findBeltDiameter(wheel: DriveWheel): number | undefined {
  if (wheel.diameterMm !== undefined) return wheel.diameterMm;
  if (wheel.teeth === undefined || wheel.pitchMm === undefined) return undefined;
  return (wheel.teeth * wheel.pitchMm) / Math.PI;
}

function isFlat(wheel: DriveWheel): boolean {
  return wheel.kind === 'rack';
}

function isInward(wheel: DriveWheel): boolean {
  return wheel.kind === 'internal';
}

function isAcross({ kind }: DriveWheel): boolean {
  return kind === 'bevel' || kind === 'crown' || kind === 'worm' || kind === 'worm-wheel';
}

/** Wheels of one part turn together, whatever shafts they are said to be on; racks of one slide move together. */
function relateParts(wheels: readonly DriveWheel[]): Relation[] {
  const relations: Relation[] = [];
  const firstOfPart = new Map<string, DriveWheel>();
  const firstOfSlide = new Map<string, DriveWheel>();
  for (const wheel of wheels) {
    if (isFlat(wheel)) {
      const first = firstOfSlide.get(wheel.shaft);
      const slide = first && relateSlides(first, wheel);
      if (slide) relations.push(slide);
      if (!first) firstOfSlide.set(wheel.shaft, wheel);
    } else if (wheel.part !== undefined) {
      const first = firstOfPart.get(wheel.part);
      if (!first) firstOfPart.set(wheel.part, wheel);
      else if (first.shaft !== wheel.shaft) relations.push(relateTurns(first, wheel));
    }
  }
  return relations;
}

function relateTurns(first: DriveWheel, wheel: DriveWheel): Relation {
  return {
    mesh: undefined,
    wheels: [first.id, wheel.id],
    terms: new Map([
      [shaftNode(first.shaft), unity],
      [shaftNode(wheel.shaft), negate(unity)],
    ]),
    isExact: true,
    isSignKnown: true,
  };
}

function relateSlides(first: DriveWheel, rack: DriveWheel): Relation | undefined {
  const one = findRackPitch(first);
  const other = findRackPitch(rack);
  if (one === undefined || other === undefined) return undefined;
  return {
    mesh: undefined,
    wheels: [first.id, rack.id],
    terms: new Map([
      [rackNode(first.id), rationalOf(one)],
      [rackNode(rack.id), negate(rationalOf(other))],
    ]),
    isExact: one === other,
    isSignKnown: true,
  };
}
