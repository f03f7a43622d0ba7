import type { GearSpec } from '../../src/involute/gear-spec.ts';
import { stepRackCutter } from '../involute/cutter-envelope.ts';

/**
 * Rolling without the product: external wheels as polygons that a stepped cutter leaves, and the free angles of the
 * driven one by bisection on whether the two polygons overlap. Nothing here knows an involute, a stop or a line of
 * action.
 */
export interface CutWheel {
  readonly teeth: number;
  readonly tip: number;
  /** One tooth from the middle of a space to the next, tooth on +x, counter-clockwise: x, y pairs */
  readonly tooth: Float64Array;
  /** Whether it is a ring, its metal outside of the contour */
  readonly isInternal?: boolean;
  /** The middle's offset from the shaft toward tooth 0, mm; 0 where left out */
  readonly offset?: number;
  /** Teeth that are gone, numbered counter-clockwise; none where left out */
  readonly missing?: readonly number[];
}

/** Points along a flank; at module 0.5 chords stray 0.1 µm. */
const flankPoints = 90;

export function cutWheel(spec: GearSpec): CutWheel {
  const { isLeft } = stepRackCutter(spec);
  const { teeth: z, module: m } = spec;
  const tip = (spec.tipDiameter ?? z * m + 2 * m * (spec.addendum + spec.profileShift)) / 2;
  const root = (z * m) / 2 - m * (spec.dedendum - spec.profileShift);
  const half: [number, number][] = [];
  for (let k = 0; k <= flankPoints; k++) {
    // Closer together toward the root, where the fillet turns.
    const radius = root + (tip - root) * (k === 0 ? 1e-7 : (k / flankPoints) ** 1.6);
    let inSpace = 0;
    let inTooth = Math.PI / z;
    for (let round = 0; round < 26; round++) {
      const middle = (inSpace + inTooth) / 2;
      if (isLeft(radius * Math.sin(middle), radius * Math.cos(middle))) inTooth = middle;
      else inSpace = middle;
    }
    half.push([radius, Math.PI / z - inTooth]);
  }
  const points: number[] = [];
  const arc = 12;
  const push = (radius: number, angle: number): void => {
    points.push(radius * Math.cos(angle), radius * Math.sin(angle));
  };
  const land = half[flankPoints][1];
  const foot = half[0][1];
  for (let k = 0; k < arc; k++) push(root, -Math.PI / z + ((Math.PI / z - foot) * k) / arc);
  for (const [radius, angle] of half) push(radius, -angle);
  for (let k = 1; k < arc; k++) push(tip, -land + (2 * land * k) / arc);
  for (const [radius, angle] of half.toReversed()) push(radius, angle);
  for (let k = arc - 1; k > 0; k--) push(root, Math.PI / z - ((Math.PI / z - foot) * k) / arc);
  push(root, Math.PI / z);
  return { teeth: z, tip, tooth: Float64Array.from(points) };
}

/** Segments x0, y0, x1, y1 of some teeth of a wheel at a place, only those within a disc about the mate's axis. */
function placeTeeth(
  wheel: CutWheel,
  teeth: readonly number[],
  turn: number,
  at: number,
  mate: CutWheel & { readonly at: number },
): number[] {
  const segments: number[] = [];
  const { tooth } = wheel;
  const reach = (mate.tip + (mate.isInternal ? -0.2 : 0.2)) ** 2;
  const isNear = (x: number, y: number): boolean => {
    const square = (x - mate.at) ** 2 + y ** 2;
    return mate.isInternal ? square > reach : square < reach;
  };
  const middleX = at + (wheel.offset ?? 0) * Math.cos(turn);
  const middleY = (wheel.offset ?? 0) * Math.sin(turn);
  for (const number of teeth) {
    if (wheel.missing?.includes(((number % wheel.teeth) + wheel.teeth) % wheel.teeth)) continue;
    const angle = turn + (2 * Math.PI * number) / wheel.teeth;
    const c = Math.cos(angle);
    const s = Math.sin(angle);
    let x0 = tooth[0] * c - tooth[1] * s + middleX;
    let y0 = tooth[0] * s + tooth[1] * c + middleY;
    for (let k = 2; k < tooth.length; k += 2) {
      const x1 = tooth[k] * c - tooth[k + 1] * s + middleX;
      const y1 = tooth[k] * s + tooth[k + 1] * c + middleY;
      if (isNear(x1, y1) || isNear(x0, y0)) segments.push(x0, y0, x1, y1);
      x0 = x1;
      y0 = y1;
    }
  }
  return segments;
}

/** Where two outlines cross, or undefined: every segment against every one. */
function findCrossing(one: readonly number[], two: readonly number[]): [number, number] | undefined {
  for (let i = 0; i < one.length; i += 4) {
    const ax = one[i];
    const ay = one[i + 1];
    const bx = one[i + 2];
    const by = one[i + 3];
    const lowX = Math.min(ax, bx);
    const highX = Math.max(ax, bx);
    const lowY = Math.min(ay, by);
    const highY = Math.max(ay, by);
    for (let j = 0; j < two.length; j += 4) {
      const cx = two[j];
      const dx = two[j + 2];
      if ((cx < lowX && dx < lowX) || (cx > highX && dx > highX)) continue;
      const cy = two[j + 1];
      const dy = two[j + 3];
      if ((cy < lowY && dy < lowY) || (cy > highY && dy > highY)) continue;
      const sideC = (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);
      const sideD = (bx - ax) * (dy - ay) - (by - ay) * (dx - ax);
      if (sideC > 0 === sideD > 0) continue;
      const sideA = (dx - cx) * (ay - cy) - (dy - cy) * (ax - cx);
      const sideB = (dx - cx) * (by - cy) - (dy - cy) * (bx - cx);
      if (sideA > 0 === sideB > 0) continue;
      const part = sideC / (sideC - sideD);
      return [cx + part * (dx - cx), cy + part * (dy - cy)];
    }
  }
  return undefined;
}

/** Free angles of the driven wheel less the nominal one, rad, driver at `driverAngle`; undefined where none is found. */
export function findFreeAngles(
  driver: CutWheel,
  driven: CutWheel,
  distance: number,
  driverAngle: number,
): readonly [number, number] | undefined {
  // The teeth that face the mate now, whole turns and all.
  const near = listAround(-Math.round((driverAngle * driver.teeth) / (2 * Math.PI)), driver.teeth);
  const past = Math.round((driverAngle * driver.teeth) / (2 * Math.PI));
  const nearDriven = listAround(driven.isInternal ? -past : past, driven.teeth);
  // A ring is laid to the left of its pinion, so that both mesh to the right, and turns with it.
  const side = driven.isInternal ? -1 : 1;
  const axis = side * distance;
  const still = placeTeeth(driver, near, driverAngle, 0, { ...driven, at: axis });
  const pitch = (2 * Math.PI) / driven.teeth;
  const nominal = (driverAngle * driver.teeth) / driven.teeth;
  const overlaps = (lead: number): boolean => {
    // Turned clockwise from where a space faces the driver; tooth 0 stands half a pitch ahead of it.
    const ahead = nominal + lead + pitch / 2;
    const turn = driven.isInternal ? ahead : Math.PI - ahead;
    const moved = placeTeeth(driven, nearDriven, turn, axis, { ...driver, at: 0 });
    return findCrossing(still, moved) !== undefined;
  };
  let free: number | undefined;
  const tries = 240;
  for (let k = 0; k <= tries && free === undefined; k++) {
    // From the middle outward: 0, +1, −1, +2 …
    const lead = ((k % 2 === 1 ? 1 : -1) * Math.ceil(k / 2) * pitch) / tries;
    if (!overlaps(lead)) free = lead;
  }
  if (free === undefined) return undefined;
  const stop = (direction: 1 | -1): number => {
    let good = free as number;
    let bad = good;
    let step = 0.02 * pitch;
    do {
      bad += direction * step;
      step *= 1.5;
      if (Math.abs(bad) > 3.5 * pitch) return direction * Number.POSITIVE_INFINITY;
    } while (!overlaps(bad));
    for (let round = 0; round < 17; round++) {
      const middle = (good + bad) / 2;
      if (overlaps(middle)) bad = middle;
      else good = middle;
    }
    return good;
  };
  return [stop(-1), stop(1)];
}

function listAround(middle: number, teeth: number): number[] {
  return [-4, -3, -2, -1, 0, 1, 2, 3, 4].filter((k) => Math.abs(k) < teeth / 2).map((k) => middle + k);
}

/** For how many pitches one pair of teeth alone touches on the flanks of both, clear of the corners of their tips. */
export function findFlankPitches(
  driver: CutWheel,
  driven: CutWheel,
  distance: number,
  corner: number,
): number {
  const pitch = (2 * Math.PI) / driver.teeth;
  const drivenPitch = (2 * Math.PI) / driven.teeth;
  const perPitch = 40;
  let touching = 0;
  for (let k = -2 * perPitch; k <= 2 * perPitch; k++) {
    const driverAngle = (k * pitch) / perPitch;
    const still = placeTeeth(driver, [0], driverAngle, 0, { ...driven, at: distance });
    const crossAt = (lead: number): [number, number] | undefined => {
      const turn = Math.PI - (driverAngle * driver.teeth) / driven.teeth - lead - drivenPitch / 2;
      return findCrossing(still, placeTeeth(driven, [0], turn, distance, { ...driver, at: 0 }));
    };
    // From overlapping, or from where it stands before the driver's tooth, forward to where it is clear.
    let bad = Number.NEGATIVE_INFINITY;
    for (let lead = -0.5 * drivenPitch; lead < 0.5 * drivenPitch; lead += 0.02 * drivenPitch) {
      if (crossAt(lead)) bad = lead;
    }
    if (bad === Number.NEGATIVE_INFINITY) continue;
    let good = bad + 0.02 * drivenPitch;
    for (let round = 0; round < 18; round++) {
      const middle = (good + bad) / 2;
      if (crossAt(middle)) bad = middle;
      else good = middle;
    }
    const place = crossAt(bad);
    if (!place) continue;
    const onDriver = Math.hypot(place[0], place[1]);
    const onDriven = Math.hypot(place[0] - distance, place[1]);
    if (driver.tip - onDriver > corner && driven.tip - onDriven > corner) touching++;
  }
  return touching / perPitch;
}
