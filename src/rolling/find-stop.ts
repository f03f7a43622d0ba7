import type { ToothShape } from './tooth-shape.ts';

/**
 * Two wheels' teeth as they face each other. The driver's axis is the origin, its tooth that meets the driven wheel
 * points along +x and moves along +y; a rack as driver has its datum line on the y axis.
 */
export interface Facing {
  readonly driver: ToothShape;
  readonly driven: ToothShape;
  /** Where the driven wheel's axis lies on the x axis, in center distances: 1, or −1 for an internal driven wheel */
  readonly side: 1 | -1;
  /** Which way from the driven wheel's axis the contact lies: −1 toward −x, 1 toward +x (where one wheel is internal) */
  readonly toward: 1 | -1;
}

/** Where a stop touches, for naming it. */
export interface Touch {
  x: number;
  y: number;
  /** Radius (of a rack: height) on each wheel */
  driverRadius: number;
  drivenRadius: number;
}

export function faceWheels(driver: ToothShape, driven: ToothShape): Facing {
  return {
    driver,
    driven,
    side: driven.kind === 'internal' ? -1 : 1,
    toward: driven.kind === 'internal' || driver.kind === 'internal' ? 1 : -1,
  };
}

/**
 * How near the driven wheel's next tooth may come to one tooth of the driver: the least angle (rad; mm along a rack)
 * of that next tooth's axis from the line of centers, in the way it is driven, at which the two outlines do not
 * overlap. −Infinity where the driver's tooth does not reach the driven wheel's tips.
 *
 * At a radius r about the driven wheel's axis its tooth is h(r) to either side of its axis, so a driver's point at
 * angle ψ and radius r keeps that axis at ψ + h(r) or beyond. Both outlines are polygons; the greatest is found at a
 * vertex of one of them, so both wheels' vertices are tried: the driver's against h, and where the driver's edges
 * cross the radius of a vertex of the driven flank. (Straight edges in polar coordinates bow by their length squared
 * over eight radii, no more than the chord error.) At the root circle h is half a pitch: no tooth fits below it.
 *
 * @param turn angle of the driver's tooth from the line of centers, rad; of a rack mm
 * @param above an answer not above this is not wanted: −Infinity then, and sooner
 */
export function findStop(
  facing: Facing,
  distance: number,
  turn: number,
  above: number = Number.NEGATIVE_INFINITY,
  touch?: Touch,
): number {
  const { driver, driven, side, toward } = facing;
  const { flankRadius, flankAngle } = driven;
  const last = flankRadius.length - 1;
  const low = flankRadius[0];
  const high = flankRadius[last];
  const isInternal = driven.kind === 'internal';
  const isRack = driven.kind === 'rack';
  const axis = side * distance;
  const shift = driver.kind === 'rack' ? turn : 0;
  const c = driver.kind === 'rack' ? 1 : Math.cos(turn);
  const s = driver.kind === 'rack' ? 0 : Math.sin(turn);
  const { x: xs, y: ys } = driver;
  const halfPitch = driven.pitch / 2;
  let best = above;
  let bestX = 0;
  let bestY = 0;
  let bestRadius = 0;
  let wasInside = false;
  let wasNear = false;
  let at = last;
  let beforeX = 0;
  let beforeY = 0;
  const edge = isInternal ? low * low : high * high;
  // From the space ahead to the tip and on: the greatest is most often on the flank that leads, so it is met early.
  for (let k = xs.length - 1; k >= 0; k--) {
    // From the driven wheel's axis, u toward the driver's tooth.
    const u = toward * (xs[k] * c - ys[k] * s - axis);
    const v = xs[k] * s + ys[k] * c + shift;
    const square = u * u + v * v;
    const isInside = isRack ? u < high : isInternal ? square > edge : square < edge;
    if (!isInside && !wasInside) {
      wasNear = false;
      beforeX = u;
      beforeY = v;
      continue;
    }
    // 1. Whether this point or the edge to it can be the stop at all: a half tooth is at most half a pitch.
    const isNear = isRack || u <= 0 || mayExceed(v / u, best - halfPitch);
    if (!isNear && !wasNear) {
      wasInside = isInside;
      beforeX = u;
      beforeY = v;
      continue;
    }
    const beforeRadius = isRack ? beforeX : Math.sqrt(beforeX * beforeX + beforeY * beforeY);
    const before = walkTo(flankRadius, beforeRadius, at);
    const radius = isRack ? u : Math.sqrt(square);
    // 2. Between which vertices of the driven flank it lies: −1 below the first, `last` beyond the last.
    at = walkTo(flankRadius, radius, before);
    if (isInside) {
      let half = halfPitch;
      if (at >= 0 && at < last) {
        const part = (radius - flankRadius[at]) / (flankRadius[at + 1] - flankRadius[at]);
        half = flankAngle[at] + part * (flankAngle[at + 1] - flankAngle[at]);
      }
      if (isRack || mayExceed(v / u, best - half) || u <= 0) {
        const stop = (isRack ? v : Math.atan2(v, u)) + half;
        if (stop > best) {
          best = stop;
          bestX = u;
          bestY = v;
          bestRadius = radius;
        }
      }
    }
    // 3. Vertices of the driven flank whose radius the edge from the point before crosses.
    if (k < xs.length - 1) {
      const from = Math.min(before, at) + 1;
      const to = Math.max(before, at);
      if (from <= to) {
        const du = u - beforeX;
        const dv = v - beforeY;
        const aa = du * du + dv * dv;
        const bb = beforeX * du + beforeY * dv;
        const cc = beforeX * beforeX + beforeY * beforeY;
        const sign = radius > beforeRadius ? 1 : -1;
        for (let m = from; m <= to; m++) {
          const wanted = flankRadius[m];
          let part: number;
          if (isRack) part = (wanted - beforeX) / du;
          else part = (-bb + sign * Math.sqrt(Math.max(0, bb * bb - aa * (cc - wanted * wanted)))) / aa;
          const cu = beforeX + part * du;
          const cv = beforeY + part * dv;
          if (!isRack && cu > 0 && !mayExceed(cv / cu, best - flankAngle[m])) continue;
          const stop = (isRack ? cv : Math.atan2(cv, cu)) + flankAngle[m];
          if (stop > best) {
            best = stop;
            bestX = cu;
            bestY = cv;
            bestRadius = wanted;
          }
        }
      }
    }
    wasInside = isInside;
    wasNear = isNear;
    beforeX = u;
    beforeY = v;
  }
  if (best === above) return Number.NEGATIVE_INFINITY;
  if (touch) {
    touch.x = axis + toward * bestX;
    touch.y = bestY;
    touch.driverRadius = driver.kind === 'rack' ? touch.x : Math.hypot(touch.x, touch.y);
    touch.drivenRadius = bestRadius;
  }
  return best;
}

/** Whether arctan `tangent` may be above an angle: by its bound t + |t|³/3, which costs less than the arctangent. */
function mayExceed(tangent: number, angle: number): boolean {
  return tangent + Math.abs(tangent * tangent * tangent) / 3 > angle;
}

/** Index of the last radius that is not above the given one, −1 where all are; sought from a place near it. */
function walkTo(radii: Float64Array, radius: number, from: number): number {
  let at = from;
  while (at < radii.length - 1 && radii[at + 1] <= radius) at++;
  while (at >= 0 && radii[at] > radius) at--;
  return at;
}

/**
 * How far to either side of the line of centers a tooth of the driver can reach the driven wheel's tips, rad (of a
 * rack mm), half its pitch included; 0 where the wheels do not reach each other at all.
 */
export function findReach(facing: Facing, distance: number): number {
  const { driver, driven, side } = facing;
  const half = driver.pitch / 2;
  if (driver.kind === 'rack') {
    const room = driven.tip ** 2 - (distance - driver.tip) ** 2;
    return room > 0 && distance - driver.tip < driven.tip ? Math.sqrt(room) + half : 0;
  }
  let cosine: number;
  if (driven.kind === 'rack') cosine = (distance - driven.tip) / driver.tip;
  else {
    // Within the driver's ring from root to tip, the radius that sees the widest part of the driven wheel.
    const tangent = Math.sqrt(Math.max(0, distance ** 2 - driven.tip ** 2));
    const least = Math.min(driver.root, driver.tip);
    const most = Math.max(driver.root, driver.tip);
    const radius =
      driven.kind === 'internal' || driver.kind === 'internal'
        ? driver.tip
        : Math.min(most, Math.max(least, tangent));
    cosine = (side * (radius ** 2 + distance ** 2 - driven.tip ** 2)) / (2 * distance * radius);
  }
  if (cosine >= 1) return 0;
  return Math.min(Math.PI, (cosine > -1 ? Math.acos(cosine) : Math.PI) + half);
}
