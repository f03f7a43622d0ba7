/**
 * inv α = tan α − α, α in radians, |α| < π/2 (ISO 21771, involute function).
 *
 * @example involute(20°) = 0.014904
 */
export function involute(angle: number): number {
  // tan α − α loses digits below about 0.03 rad; its series does not.
  if (Math.abs(angle) < 0.03) {
    const square = angle * angle;
    return angle * square * (1 / 3 + square * (2 / 15 + square * (17 / 315 + (square * 62) / 2835)));
  }
  return Math.tan(angle) - angle;
}

/**
 * The angle α ≥ 0 (radians, below π/2) with inv α = value; value ≥ 0.
 *
 * Newton from a start that is right at both ends; the derivative is tan² α. Throws a plain Error on a negative
 * or non-finite value, since no caller may pass one.
 *
 * @example inverseInvolute(0.0149044) = 20°
 */
export function inverseInvolute(value: number): number {
  if (!(value >= 0) || value === Number.POSITIVE_INFINITY) throw new Error(`inverseInvolute of ${value}`);
  if (value === 0) return 0;
  const cubeRoot = Math.cbrt(3 * value);
  // Near 0, inv α = α³/3 + 2α⁵/15; far out, tan α = value + α with α near π/2.
  let angle =
    value < 1.8 ? cubeRoot / (1 + 0.4 * cubeRoot * cubeRoot) ** 0.34 : Math.atan(value + Math.PI / 2);
  for (let round = 0; round < 30; round++) {
    const tangent = Math.tan(angle);
    const step = (involute(angle) - value) / (tangent * tangent);
    angle -= step;
    if (angle >= Math.PI / 2) angle = (angle + step + Math.PI / 2) / 2;
    if (angle <= 0) angle = (angle + step) / 2;
    if (Math.abs(step) <= 4e-16 * angle) break;
  }
  return angle;
}
