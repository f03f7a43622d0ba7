import type { SketchGear } from './sketch-gear.ts';

/**
 * How far from the axis, mm, a pin's center lies when it rests on both flanks of a space (from the axis outward on an
 * external gear, inward on an internal one). Found by halving on the drawn outline, as exact as a sketch needs.
 */
export function findPinRadius(gear: SketchGear, pin: number): number {
  const isInside = gear.tip < gear.root;
  const toward = Math.PI / gear.teeth;
  // The space after tooth 0 lies at half a pitch; its two flanks belong to teeth 0 and 1.
  const near = gear.points.slice(0, 2 * gear.perTooth + 1);
  const isClear = (radius: number): boolean => {
    const x = radius * Math.cos(toward);
    const y = radius * Math.sin(toward);
    return near.every(([px, py], i) => {
      const [qx, qy] = near[Math.max(0, i - 1)];
      const length = (px - qx) ** 2 + (py - qy) ** 2;
      const t =
        length === 0 ? 0 : Math.min(1, Math.max(0, ((x - qx) * (px - qx) + (y - qy) * (py - qy)) / length));
      return Math.hypot(x - qx - t * (px - qx), y - qy - t * (py - qy)) >= pin;
    });
  };
  // From where it surely touches to where it surely is clear.
  let touching = gear.root;
  let clear = isInside ? Math.max(0, gear.tip - 2 * pin) : gear.tip + 2 * pin;
  for (let i = 0; i < 30; i++) {
    const half = (touching + clear) / 2;
    if (isClear(half)) clear = half;
    else touching = half;
  }
  return clear;
}
