import { Fail } from '../fail.ts';
import type { GearSpec } from './gear-spec.ts';
import { findGeneratingRack } from './generating-rack.ts';
import type { ToothOutline } from './tooth-outline.ts';

/** How far the bar reaches below the root line, modules. */
export const rackBackDepth = 1.5;

/**
 * A rack of z whole teeth in the transverse section: straight flanks, tips at h_a m above the datum line y = 0, root
 * corners of the root radius (clipped to what the space holds), closed by a bar 1.5 m below the root line. Tooth 0
 * stands over x = 0, the others to its right; the ends lie in the middle of a space.
 *
 * Throws Fail `pointed-tooth` where the teeth come to a point before h_a m, and as the generating rack does.
 */
export function traceRackOutline(spec: GearSpec, chordError: number): ToothOutline {
  const { module: m, pressureAngle: a, teeth: z } = spec;
  // A rack's space is its generating rack's tooth turned over: same corner, same clip.
  const space = findGeneratingRack(spec);
  checkPointed(spec, (Math.PI * m) / 2 - space.halfWidth);
  const stretch = 1 / Math.cos(spec.helixAngle);
  const pitch = Math.PI * m * stretch;
  const half: number[] = [-pitch / 2, space.tip];
  const push = (fromSpaceAxis: number, y: number): void => {
    half.push(-pitch / 2 + fromSpaceAxis * stretch, y);
  };
  if (space.cornerU > 1e-12) push(space.cornerU, space.tip);
  const radius = space.cornerRadius;
  if (radius > 0) {
    const full = Math.PI / 2 - a;
    const step = 2 * Math.acos(Math.max(0, 1 - chordError / (radius * stretch)));
    const count = Math.max(1, Math.ceil(full / step));
    for (let k = 1; k <= count; k++) {
      const theta = (full * k) / count;
      push(space.cornerU + radius * Math.sin(theta), space.cornerV - radius * Math.cos(theta));
    }
  }
  push(space.halfWidth + spec.addendum * m * Math.tan(a), spec.addendum * m);
  const n = half.length / 2;
  const perTooth = 2 * n - 1;
  const bottom = space.tip - rackBackDepth * m;
  const points: number[] = [];
  for (let tooth = 0; tooth < z; tooth++) {
    for (let k = 0; k < n; k++) points.push(half[2 * k] + tooth * pitch, half[2 * k + 1]);
    for (let k = n - 1; k > 0; k--) points.push(-half[2 * k] + tooth * pitch, half[2 * k + 1]);
  }
  points.push((z - 0.5) * pitch, space.tip, (z - 0.5) * pitch, bottom, -pitch / 2, bottom);
  // Traced left to right over the teeth, that is clockwise.
  const closed = new Float64Array(points.length);
  const total = points.length / 2;
  for (let k = 0; k < total; k++) {
    closed[2 * k] = points[2 * (total - 1 - k)];
    closed[2 * k + 1] = points[2 * (total - 1 - k) + 1];
  }
  return { points: closed, perTooth };
}

/** A tooth of that half width at the datum line loses tan α of it a unit of height. */
function checkPointed(spec: GearSpec, halfTooth: number): void {
  const highest = halfTooth / (spec.module * Math.tan(spec.pressureAngle));
  if (spec.addendum <= highest) return;
  const greatest = Math.floor(highest * 1000) / 1000;
  throw new Fail(
    'pointed-tooth',
    'addendum',
    `the rack's teeth come to a point before an addendum of ${spec.addendum}`,
    `Use an addendum of at most ${greatest}, or a smaller pressure angle.`,
    { addendum: spec.addendum, greatest },
  );
}
