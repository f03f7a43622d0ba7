import type { DrawnGear } from '../../index.ts';

/**
 * How far from the gear's axis a pin of that radius rests in the first gap, mm; undefined where it drops in or can't
 * enter. Measured on the outline, so it holds for every kind of tooth that can be drawn.
 */
export function placePin(gear: DrawnGear, radius: number, isInternal: boolean): number | undefined {
  const axis = Math.PI / gear.teeth;
  const c = Math.cos(axis);
  const s = Math.sin(axis);
  const root = gear.rootDiameterMm / 2;
  const clearance = (center: number): number => touchGap(gear, center * c, center * s).distance - radius;
  // From touching the bottom of the gap outward (internal: inward) until the flanks let go.
  let near = isInternal ? root - radius : root + radius;
  let far = isInternal ? gear.tipDiameterMm / 2 - 3 * radius : gear.tipDiameterMm / 2 + 3 * radius;
  if (clearance(near) > 0 || clearance(far) < 0) return undefined;
  for (let step = 0; step < 40; step++) {
    const middle = (near + far) / 2;
    if (clearance(middle) < 0) near = middle;
    else far = middle;
  }
  const rests = (near + far) / 2;
  const onBottom = isInternal ? root - radius : root + radius;
  const little = 1e-4 * gear.moduleMm;
  const isOnTips =
    Math.abs(touchGap(gear, rests * c, rests * s).radius - gear.tipDiameterMm / 2) < 10 * little;
  return Math.abs(rests - onBottom) < little || isOnTips ? undefined : rests;
}

/** How far a point lies from the gap's outline, and how far from the gear's axis the nearest point of that is, mm. */
function touchGap(
  { outline, perTooth }: DrawnGear,
  x: number,
  y: number,
): { readonly distance: number; readonly radius: number } {
  let distance = Infinity;
  let radius = 0;
  // From the middle of tooth 0 to the middle of tooth 1: a tooth's points begin in the gap before it.
  const first = Math.floor(perTooth / 2);
  for (let k = first; k < first + perTooth; k++) {
    const ax = outline[(2 * k) % outline.length];
    const ay = outline[(2 * k + 1) % outline.length];
    const dx = outline[(2 * k + 2) % outline.length] - ax;
    const dy = outline[(2 * k + 3) % outline.length] - ay;
    const length = dx * dx + dy * dy;
    const t = length > 0 ? Math.max(0, Math.min(1, ((x - ax) * dx + (y - ay) * dy) / length)) : 0;
    const here = Math.hypot(x - ax - t * dx, y - ay - t * dy);
    if (here >= distance) continue;
    distance = here;
    radius = Math.hypot(ax + t * dx, ay + t * dy);
  }
  return { distance, radius };
}
