import { seekGreatest } from '../numeric/seek-greatest.ts';
import { findStop, type Touch } from './find-stop.ts';
import { findFlankContact } from './flank-contact.ts';
import { findFreeInterval, findTouch, type Mesh, type Stop } from './free-interval.ts';
import type { Interference, RolledAt } from './rolling-proof.ts';
import { tabulateStop } from './stop-table.ts';
import type { ToothShape } from './tooth-shape.ts';

/** How finely and how far a pair is rolled. */
export interface Cycle {
  readonly meetings: number;
  /** Driver positions looked at in one pitch */
  readonly stepsPerPitch: number;
  /** By how much outlines may overlap and still count as free, mm: what they were drawn to */
  readonly tolerance: number;
}

/**
 * The pair at one distance: the free interval at every step of the cycle, then its extremes closed in on between the
 * steps with the outlines themselves.
 */
export function rollAt(mesh: Mesh, cycle: Cycle): RolledAt {
  const { facing, distance } = mesh;
  const { driver } = facing;
  const radius = findWorkingRadius(mesh);
  const step = driver.pitch / cycle.stepsPerPitch;
  const exact: Stop = (at, turn, above) => findStop(facing, at, turn, above);
  const swing = Math.abs(mesh.driverOffset) + Math.abs(mesh.drivenOffset);
  const table = tabulateStop(facing, distance - swing, distance + swing, step);

  // 1. The whole cycle, step by step.
  const total = cycle.meetings * cycle.stepsPerPitch;
  const lows = new Float64Array(total + 1);
  const highs = new Float64Array(total + 1);
  for (let k = 0; k <= total; k++) {
    const { low, high } = findFreeInterval(mesh, k * step, table);
    lows[k] = low;
    highs[k] = high;
  }

  // 2. Its extremes, between the steps.
  const at = (angle: number): { low: number; high: number } => findFreeInterval(mesh, angle, exact);
  const seek = (figure: (low: number, high: number) => number): { at: number; value: number } => {
    let most = 0;
    for (let k = 1; k <= total; k++)
      if (figure(lows[k], highs[k]) > figure(lows[most], highs[most])) most = k;
    const value = figure(lows[most], highs[most]);
    if (!Number.isFinite(value)) return { at: most * step, value };
    const near = seekGreatest(
      (angle) => {
        const { low, high } = at(angle);
        return figure(low, high);
      },
      (most - 1) * step,
      (most + 1) * step,
    );
    const there = at(most * step);
    const exactly = figure(there.low, there.high);
    return near.value > exactly ? near : { at: most * step, value: exactly };
  };
  const tightest = seek((low, high) => low - high);
  const loosest = seek((low, high) => high - low);
  const isHeld = lows.every(Number.isFinite) && highs.every(Number.isFinite);
  const ripple = (figure: (low: number, high: number) => number): number =>
    isHeld ? seek(figure).value + seek((low, high) => -figure(low, high)).value : Number.POSITIVE_INFINITY;
  const lowRipple = ripple((low) => low);
  // In one pitch of like teeth the other flanks are the mirror image.
  const highRipple = cycle.meetings === 1 ? lowRipple : ripple((_, high) => high);
  const backlashLeast = -tightest.value * radius;
  const isFree = backlashLeast >= -cycle.tolerance;

  return {
    centerDistance: distance,
    isFree,
    workingPressureAngle: findWorkingAngle(mesh),
    contactRatio: shareOfTeeth(mesh, cycle) * findFlankContact(facing, distance, exact, 4 * cycle.tolerance),
    backlashLeast,
    backlashGreatest: loosest.value * radius,
    tightestAt: tightest.at,
    transmissionError: Math.max(lowRipple, highRipple) * radius,
    interference: isFree ? [] : findInterference(mesh, lows, highs, step, radius),
    curve: thinCurve(lows, highs, step),
  };
}

/** Radius of the driven wheel's working circle, a z2/(z1 + z2), internal a z2/|z2 − z1|; of a rack 1: it measures mm. */
function findWorkingRadius({ facing: { driver, driven }, distance }: Mesh): number {
  if (driven.kind === 'rack') return 1;
  // A rack's pitch rolls off as so many of the wheel's teeth.
  if (driver.kind === 'rack') return (driver.pitch * driven.teeth) / (2 * Math.PI);
  const isInternal = driver.kind === 'internal' || driven.kind === 'internal';
  return (
    (distance * driven.teeth) /
    (isInternal ? Math.abs(driven.teeth - driver.teeth) : driven.teeth + driver.teeth)
  );
}

/** Base pitches within this are one (a hundredth of a tooth's error over ten pitches). */
const samePitch = 1e-3;

function findWorkingAngle({ facing: { driver, driven }, distance }: Mesh): number | undefined {
  const basePitch = (one: ToothShape): number =>
    one.kind === 'rack' ? one.pitch * Math.cos(one.pressureAngle) : one.pitch * one.base;
  if (Math.abs(basePitch(driver) / basePitch(driven) - 1) > samePitch) return undefined;
  if (driver.kind === 'rack') return driver.pressureAngle;
  if (driven.kind === 'rack') return driven.pressureAngle;
  const isInternal = driver.kind === 'internal' || driven.kind === 'internal';
  const cosine = Math.abs(isInternal ? driven.base - driver.base : driven.base + driver.base) / distance;
  return cosine <= 1 ? Math.acos(cosine) : undefined;
}

/** The part of all meetings in which both teeth are there; a driver's tooth meets the gap that its number says. */
function shareOfTeeth({ driverTeeth, drivenTeeth, facing }: Mesh, cycle: Cycle): number {
  if (!driverTeeth && !drivenTeeth) return 1;
  let there = 0;
  for (let k = 0; k < cycle.meetings; k++) {
    const one = driverTeeth ? driverTeeth[k % facing.driver.teeth] : true;
    const two = drivenTeeth ? drivenTeeth[k % facing.driven.teeth] : true;
    if (one && two) there++;
  }
  return there / cycle.meetings;
}

/** The deepest spot of each kind. */
function findInterference(
  mesh: Mesh,
  lows: Float64Array,
  highs: Float64Array,
  step: number,
  radius: number,
): Interference[] {
  const spots: number[] = [];
  const depthAt = (k: number): number => lows[k] - highs[k];
  for (let k = 0; k < lows.length; k++) {
    const isPeak = !(depthAt(k - 1) > depthAt(k)) && !(depthAt(k + 1) > depthAt(k));
    // Between the peaks of overlap a few more, since what is in the way may change there.
    if (depthAt(k) > 0 && (isPeak || k % 8 === 0)) spots.push(k);
  }
  spots.sort((one, two) => depthAt(two) - depthAt(one) || one - two);
  const found: Interference[] = [];
  for (const k of spots.slice(0, mostSpots)) {
    const driverAngle = k * step;
    const ahead = findTouch(mesh, driverAngle, 1, lows[k]);
    const behind = findTouch(mesh, driverAngle, -1, highs[k]);
    if (!ahead || !behind) continue;
    const worse = rank(mesh, behind) > rank(mesh, ahead) ? behind : ahead;
    const where = kinds[rank(mesh, worse)];
    if (found.some((one) => one.where === where)) continue;
    // An internal driven wheel was laid on the other side.
    const side = mesh.facing.side;
    found.push({
      where,
      depth: depthAt(k) * radius,
      driverAngle,
      x: side * worse.x,
      y: side * worse.y,
    });
  }
  return found;
}

/** Enough for every peak of one pitch, and a bound on the work in a long cycle. */
const mostSpots = 40;
const kinds = ['both-flanks', 'tip-fillet', 'tip-root'] as const;

function rank({ facing: { driver, driven } }: Mesh, touch: Touch): 0 | 1 | 2 {
  const near = 0.002 * driver.module;
  const isBelow = (one: ToothShape, radius: number, limit: number, room: number): boolean =>
    (one.kind === 'internal' ? -1 : 1) * (radius - limit) <= room;
  if (
    isBelow(driver, touch.driverRadius, driver.root, near) ||
    isBelow(driven, touch.drivenRadius, driven.root, near)
  )
    return 2;
  if (
    isBelow(driver, touch.driverRadius, driver.form, -near) ||
    isBelow(driven, touch.drivenRadius, driven.form, -near)
  )
    return 1;
  return 0;
}

/** A long cycle's curve keeps every so many steps: enough to draw, little enough to hand on. */
function thinCurve(lows: Float64Array, highs: Float64Array, step: number): RolledAt['curve'] {
  const every = Math.max(1, Math.ceil((lows.length - 1) / mostPoints));
  const kept = Math.floor((lows.length - 1) / every) + 1;
  return {
    driverAngle: Float64Array.from({ length: kept }, (_, k) => k * every * step),
    low: Float64Array.from({ length: kept }, (_, k) => lows[k * every]),
    high: Float64Array.from({ length: kept }, (_, k) => highs[k * every]),
  };
}

const mostPoints = 8192;
