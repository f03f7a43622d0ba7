import { pairLimits } from '../../gear-library/rework-limits.ts';
import type { GearSpec } from '../involute/gear-spec.ts';
import { involute } from '../involute/involute-function.ts';
import {
  type ChosenWheel,
  listWheelGroups,
  type PairQuestion,
  type PairSide,
  type WheelGroup,
  type WheelPool,
} from './list-wheel-groups.ts';
import { findShiftRange } from './shift-range.ts';

/** Two wheels that run between two posts, by their numbers. */
export interface PairChoice {
  readonly driver: ChosenWheel;
  readonly driven: ChosenWheel;
  readonly shiftSum: number;
  /** At the mean distance, circumferential, mm */
  readonly backlash: number;
  readonly contactRatio: number;
  readonly newParts: number;
  /** 0 for wheels that exist; for made ones how many times too fine the module is for the process, at least 0 */
  readonly fineness: number;
}

/**
 * Every pair of wheels that meets the distance between two posts: tooth counts, module, angle and the sum of profile
 * shifts that gives backlash within the limits there. Of pairs with the same two counts only those stay that are not
 * beaten by another in new parts, fineness and backlash at once, which loses nothing for the search behind it.
 *
 * The sum that fills the spaces is x1 + x2 = (z1 + z2)(inv α_w − inv α)/(2 tan α) with cos α_w = a_0 cos α/a, and less
 * shift leaves 2 m tan α of backlash for each at the reference circles, cos α/cos α_w of that at the working circles
 * (ISO 21771; an internal mate with its signs). Made wheels aim at the library's backlash at the near end of the
 * distance. Limits of a made wheel: undercut as practice has it, tip land, tips shortened for clearance; of a pair:
 * contact ratio between tips. New wheels are spur and external; a present internal wheel may stay, a rack is no pair
 * here.
 */
export function listPairChoices(question: PairQuestion, pool: WheelPool): PairChoice[] {
  const best = new Map<number, PairChoice[]>();
  const lookUp = shiftRanges();
  for (const group of listWheelGroups(question, pool)) {
    pairGroup(question, group, lookUp, (choice) => keep(best, choice));
  }
  return [...best.values()].flat();
}

type ShiftRange = { readonly least: number; readonly greatest: number } | undefined;

function shiftRanges(): (teeth: number, pressureAngle: number) => ShiftRange {
  const known = new Map<string, ShiftRange>();
  return (teeth, pressureAngle) => {
    const key = `${teeth} ${pressureAngle}`;
    if (!known.has(key)) known.set(key, findShiftRange(madeSpec(teeth, 1, pressureAngle, 0)));
    return known.get(key);
  };
}

function pairGroup(
  question: PairQuestion,
  group: WheelGroup,
  lookUp: (teeth: number, pressureAngle: number) => ShiftRange,
  found: (choice: PairChoice) => void,
): void {
  const { driver, driven } = question;
  const { module, made } = group;
  const madeCounts = (side: PairSide): number[] => {
    const isListed = made?.modules.some((one) => Math.abs(one - module) < 1e-6);
    if (!side.mayChange || !made || !isListed) return [];
    return Array.from({ length: made.teeth[1] - made.teeth[0] + 1 }, (_, i) => made.teeth[0] + i);
  };
  const driverCounts = madeCounts(driver);
  const drivenCounts = madeCounts(driven);
  const take = (one: ChosenWheel | number, other: ChosenWheel | number): void => {
    const choice = joinPair(question, group, one, other, lookUp);
    if (choice) found(choice);
  };
  // Sums of counts that the distance allows: outside, no shifts within reach fill the gap.
  const sum = (2 * question.centerDistance) / module;
  const isNear = (one: number, other: number, isInternal: boolean): boolean => {
    const off = sum - (isInternal ? Math.abs(other - one) : one + other);
    return off >= -reach && off <= reach;
  };
  const drivenByTeeth = new Map<number, ChosenWheel[]>();
  for (const wheel of group.driven) {
    const wheels = drivenByTeeth.get(wheel.spec.teeth);
    if (wheels) wheels.push(wheel);
    else drivenByTeeth.set(wheel.spec.teeth, [wheel]);
  }
  for (const one of [...group.drivers, ...driverCounts]) {
    const teeth = typeof one === 'number' ? one : one.spec.teeth;
    const isInternal = typeof one !== 'number' && one.spec.kind === 'internal';
    for (const [count, wheels] of drivenByTeeth) {
      for (const other of wheels) {
        if (isNear(teeth, count, isInternal || other.spec.kind === 'internal')) take(one, other);
      }
    }
    for (const count of drivenCounts) if (isNear(teeth, count, isInternal)) take(one, count);
  }
}

/** Twice the greatest sum of shifts, in counts: 2 × (1 + 1). */
const reach = 4.5;

function joinPair(
  { centerDistance: a, uncertainty, driver, driven }: PairQuestion,
  { module: m, pressureAngle, made }: WheelGroup,
  one: ChosenWheel | number,
  other: ChosenWheel | number,
  lookUp: (teeth: number, pressureAngle: number) => ShiftRange,
): PairChoice | undefined {
  const kindOf = (wheel: ChosenWheel | number): GearSpec['kind'] =>
    typeof wheel === 'number' ? 'external' : wheel.spec.kind;
  const teethOf = (wheel: ChosenWheel | number): number =>
    typeof wheel === 'number' ? wheel : wheel.spec.teeth;
  const isInternal = kindOf(one) === 'internal' || kindOf(other) === 'internal';
  if (kindOf(one) === 'internal' && kindOf(other) === 'internal') return undefined;
  const z1 = teethOf(one);
  const z2 = teethOf(other);
  // A pinion goes into a ring of more teeth than its own, and by a few, since their tips must pass.
  if (kindOf(one) === 'internal' && z1 - z2 < leastRingLead) return undefined;
  if (kindOf(other) === 'internal' && z2 - z1 < leastRingLead) return undefined;
  const count = isInternal ? Math.abs(z2 - z1) : z1 + z2;
  const cosine = (m * count * Math.cos(pressureAngle)) / (2 * a);
  if (!(cosine > 0 && cosine < 1)) return undefined;
  const working = Math.acos(cosine);
  const { backlash: limit, contactRatio: contact, tipClearance } = pairLimits;

  // 1. The sum of shifts that fills the spaces, and what a shift less leaves at the working circle.
  const full = (count * (involute(working) - involute(pressureAngle))) / (2 * Math.tan(pressureAngle));
  const scale = Math.cos(pressureAngle) / Math.cos(working);
  const perShift = 2 * m * Math.tan(pressureAngle) * scale;
  const nearEnd = 4 * uncertainty * Math.tan(working);
  const thinned =
    [one, other].reduce<number>(
      (all, wheel) => all + (typeof wheel === 'number' ? 0 : wheel.spec.thinning),
      0,
    ) * scale;
  const aimed = full - (limit.aimed * m + nearEnd - thinned) / perShift;

  // 2. The shifts: given, or chosen within what can be cut.
  const given = (wheel: ChosenWheel | number): number | undefined =>
    typeof wheel === 'number' ? undefined : wheel.spec.profileShift;
  // An internal wheel's shift widens its spaces: it counts against the pinion's.
  const sign1 = isInternal && kindOf(one) === 'internal' ? -1 : 1;
  const sign2 = isInternal && kindOf(other) === 'internal' ? -1 : 1;
  const target = isInternal ? -(full + (limit.aimed * m + nearEnd - thinned) / perShift) : aimed;
  const shifts = chooseShifts(
    given(one),
    given(other),
    [sign1, sign2],
    target,
    lookUp(z1, pressureAngle),
    lookUp(z2, pressureAngle),
    z1 <= z2,
  );
  if (!shifts) return undefined;
  const [x1, x2] = shifts;
  const sum = sign1 * x1 + sign2 * x2;
  const backlash = (isInternal ? -full - sum : full - sum) * perShift + thinned;
  if (backlash < limit.least * m - 1e-9 || backlash > limit.greatest * m + nearEnd) return undefined;

  // 3. The wheels, tips of made ones shortened where they would come too near the mate's root.
  const specOf = (
    wheel: ChosenWheel | number,
    teeth: number,
    shift: number,
    mateTeeth: number,
    mateShift: number,
  ): GearSpec => {
    if (typeof wheel !== 'number') return wheel.spec;
    const spec = madeSpec(teeth, m, pressureAngle, shift);
    if (isInternal) return spec;
    const usual = m * (teeth + 2 + 2 * shift);
    const greatest = 2 * (a - (m * (mateTeeth - 2.5 + 2 * mateShift)) / 2 - usualClearance * m);
    return usual > greatest ? { ...spec, tipDiameter: Math.round(greatest * 1000) / 1000 } : spec;
  };
  const spec1 = specOf(one, z1, x1, z2, x2);
  const spec2 = specOf(other, z2, x2, z1, x1);
  const path = findPath(spec1, spec2, a, working);
  if (path < contact.least) return undefined;
  if (
    !isInternal &&
    Math.min(clearance(spec1, spec2, a), clearance(spec2, spec1, a)) < tipClearance.least * m - 1e-9
  )
    return undefined;

  const wheelOf = (wheel: ChosenWheel | number, side: PairSide, spec: GearSpec): ChosenWheel =>
    typeof wheel === 'number' ? { wheelId: side.wheelId, from: 'made', spec } : wheel;
  const wheels = [wheelOf(one, driver, spec1), wheelOf(other, driven, spec2)] as const;
  return {
    driver: wheels[0],
    driven: wheels[1],
    shiftSum: sum,
    backlash,
    contactRatio: path,
    newParts: wheels.filter(({ from }) => from !== 'present').length,
    fineness: wheels.some(({ from }) => from === 'made') && made ? Math.max(0, made.leastModule / m - 1) : 0,
  };
}

/** Full-depth teeth of 20° interfere below about eight; rolling tells where exactly. */
const leastRingLead = 6;
/** Tip clearance that made wheels keep, modules. */
const usualClearance = 0.2;

/** The shifts of both wheels with their signed sum at the target, where they are free; undefined where none will do. */
function chooseShifts(
  given1: number | undefined,
  given2: number | undefined,
  [sign1, sign2]: readonly [number, number],
  target: number,
  range1: ShiftRange,
  range2: ShiftRange,
  isFirstSmaller: boolean,
): readonly [number, number] | undefined {
  if (given1 !== undefined && given2 !== undefined) return [given1, given2];
  if (given1 !== undefined) {
    const x2 = (target - sign1 * given1) / sign2;
    return range2 && x2 >= range2.least && x2 <= range2.greatest ? [given1, round(x2)] : undefined;
  }
  if (given2 !== undefined) {
    const x1 = (target - sign2 * given2) / sign1;
    return range1 && x1 >= range1.least && x1 <= range1.greatest ? [round(x1), given2] : undefined;
  }
  if (!range1 || !range2) return undefined;
  if (target < range1.least + range2.least || target > range1.greatest + range2.greatest) return undefined;
  // Halves, the smaller wheel lifted out of undercut first.
  const [small, big] = isFirstSmaller ? [range1, range2] : [range2, range1];
  const least = Math.max(small.least, target - big.greatest);
  const greatest = Math.min(small.greatest, target - big.least);
  const x = round(Math.min(greatest, Math.max(least, target / 2)));
  const rest = round(target - x);
  return isFirstSmaller ? [x, rest] : [rest, x];
}

function madeSpec(teeth: number, module: number, pressureAngle: number, profileShift: number): GearSpec {
  return {
    kind: 'external',
    teeth,
    module,
    pressureAngle,
    helixAngle: 0,
    profileShift,
    addendum: 1,
    dedendum: 1.25,
    rootRadius: 0.38,
    thinning: 0,
    tipDiameter: null,
  };
}

/** Contact ratio from tip and base circles (ISO 21771); undercut is left to the rolling. */
function findPath(one: GearSpec, other: GearSpec, a: number, working: number): number {
  const [pinion, wheel] = one.kind === 'internal' ? [other, one] : [one, other];
  const cosine = Math.cos(pinion.pressureAngle);
  const lengthAt = (spec: GearSpec): number => {
    const tip = tipOf(spec);
    const base = spec.module * spec.teeth * cosine;
    return Math.sqrt(Math.max(0, tip * tip - base * base)) / 2;
  };
  const between = a * Math.sin(working);
  const length =
    wheel.kind === 'internal'
      ? lengthAt(pinion) - lengthAt(wheel) + between
      : lengthAt(pinion) + lengthAt(wheel) - between;
  return length / (Math.PI * pinion.module * cosine);
}

function tipOf({ kind, module, teeth, addendum, profileShift, tipDiameter }: GearSpec): number {
  return (
    tipDiameter ??
    module * (teeth + 2 * (kind === 'internal' ? profileShift - addendum : profileShift + addendum))
  );
}

/** Tip of the one to root of the other. */
function clearance(one: GearSpec, other: GearSpec, a: number): number {
  return (
    a - tipOf(one) / 2 - (other.module * (other.teeth - 2 * other.dedendum + 2 * other.profileShift)) / 2
  );
}

function round(shift: number): number {
  return Math.round(shift * 1000) / 1000;
}

/** Keeps a choice unless one with the same counts is as good in everything; drops those it beats. */
function keep(best: Map<number, PairChoice[]>, choice: PairChoice): void {
  const key = choice.driver.spec.teeth * 10_000 + choice.driven.spec.teeth;
  const kept = best.get(key);
  if (!kept) {
    best.set(key, [choice]);
    return;
  }
  if (kept.some((one) => isAsGood(one, choice))) return;
  best.set(key, [...kept.filter((one) => !isAsGood(choice, one)), choice]);
}

function isAsGood(one: PairChoice, other: PairChoice): boolean {
  return (
    one.newParts <= other.newParts && one.fineness <= other.fineness + 1e-9 && one.backlash <= other.backlash
  );
}
