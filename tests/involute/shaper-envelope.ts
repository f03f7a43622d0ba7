import type { GearSpec } from '../../src/involute/gear-spec.ts';

/**
 * What a stepped shaper leaves of an internal wheel's blank, worked out without the product's roots: a point is cut
 * away when at some roll position it lies inside the cutter's tooth, whose half angle at a radius is that of an
 * involute tooth with a sharp tip. The distance comes from laying the cutter's tooth into the wheel's space, both
 * from their thickness at the reference circle. For wheels without helix.
 */
export function stepShaper(spec: GearSpec, cutterTeeth: number): (x: number, y: number) => boolean {
  const { module: m, pressureAngle: alpha, teeth: z } = spec;
  const inv = (angle: number): number => Math.tan(angle) - angle;
  const wheelBase = (z * m * Math.cos(alpha)) / 2;
  const cutterBase = (cutterTeeth * m * Math.cos(alpha)) / 2;
  const spaceAt = (radius: number): number =>
    2 *
    radius *
    ((Math.PI / 2 + 2 * spec.profileShift * Math.tan(alpha) + spec.thinning / m) / z +
      inv(alpha) -
      inv(Math.acos(wheelBase / radius)));
  const halfToothAt = (radius: number): number =>
    (Math.PI / 2 + spec.thinning / m) / cutterTeeth +
    inv(alpha) -
    inv(Math.acos(Math.min(1, cutterBase / radius)));
  // The distance at which the cutter's tooth fills the space where both roll on each other.
  let near = wheelBase - cutterBase + 1e-9;
  let far = near * 3;
  for (let round = 0; round < 80; round++) {
    const distance = (near + far) / 2;
    const rolling = (distance * z) / (z - cutterTeeth);
    const excess = spaceAt(rolling) - 2 * (rolling - distance) * halfToothAt(rolling - distance);
    // z (ψ_2 − inv α_w) − z_c (ψ_c − inv α_w) falls as the distance grows.
    if (excess > 0) near = distance;
    else far = distance;
  }
  const distance = (near + far) / 2;
  const tip = z * m * 0.5 + m * (spec.dedendum + spec.profileShift) - distance;
  const pitch = (2 * Math.PI) / cutterTeeth;

  /** How deep, mm, a wheel point lies inside the cutter when the wheel has turned by `turn`; below 0 outside. */
  const depth = (x: number, y: number, turn: number): number => {
    const c = Math.cos(turn);
    const s = Math.sin(turn);
    const px = x * c - y * s;
    const py = x * s + y * c - distance;
    const r = Math.hypot(px, py);
    // Space axis and cutter tooth 0 both on +y at turn 0.
    const angle = Math.atan2(-px, py) - (turn * z) / cutterTeeth;
    const within = angle - pitch * Math.round(angle / pitch);
    return Math.min(tip - r, r * (halfToothAt(Math.max(r, cutterBase)) - Math.abs(within)));
  };
  return (x, y) => {
    // Roll positions at which the point comes near the cutter; the depth has one peak a cutter tooth.
    const here = Math.atan2(-x, y);
    const span = (9 * m) / (z * m);
    const steps = 120;
    let best = Number.NEGATIVE_INFINITY;
    let at = 0;
    for (let k = 0; k <= steps; k++) {
      const turn = -here + span * ((2 * k) / steps - 1);
      const value = depth(x, y, turn);
      if (value > best) {
        best = value;
        at = turn;
      }
      if (best > 1e-7) return false;
    }
    const ratio = (Math.sqrt(5) - 1) / 2;
    let low = at - (2 * span) / steps;
    let high = at + (2 * span) / steps;
    let p = high - ratio * (high - low);
    let q = low + ratio * (high - low);
    let dp = depth(x, y, p);
    let dq = depth(x, y, q);
    for (let round = 0; round < 26; round++) {
      if (dp > dq) {
        high = q;
        q = p;
        dq = dp;
        p = high - ratio * (high - low);
        dp = depth(x, y, p);
      } else {
        low = p;
        p = q;
        dp = dq;
        q = low + ratio * (high - low);
        dq = depth(x, y, q);
      }
    }
    best = Math.max(best, dp, dq);
    return best <= 0;
  };
}
