import { Fail } from '../fail.ts';
import { findDiameters } from '../involute/gear-diameters.ts';
import type { Loop } from './lay-layers.ts';
import { type Bore, findBoreRadius, leastWall, type PlacedSection } from './wheel-form.ts';

/**
 * Where a section's phase mark goes: in line with tooth 0 as it stands at that face, in the middle of the free face
 * under the roots (on the rim, where there is a web). Nothing for a section without one.
 *
 * Throws Fail `bad-geometry` where the face is covered or too narrow, with the largest mark that fits.
 */
export function placePhaseMark(
  section: PlacedSection,
  bodies: readonly { readonly loop: Loop; readonly low: number; readonly high: number }[],
  bore: Bore,
): { loop: Loop; low: number; high: number }[] {
  const { phaseMark, spec, sector, web, offset, faceWidth, chamfer } = section;
  if (!phaseMark) return [];
  const { diameter, depth, side } = phaseMark;
  const field = section.place ? `${section.place}.phaseMark` : 'phaseMark';
  const face = side === 'top' ? offset + faceWidth : offset;
  const { root, reference } = findDiameters(spec);
  const outer = Math.min(root, sector?.restDiameter ?? root) / 2;
  const from = web ? (web.fromFace ?? (faceWidth - web.thickness) / 2) : 0;
  const hasPocket = web !== undefined && (side === 'bottom' ? from : faceWidth - from - web.thickness) > 1e-6;
  // What stands on the face, or reaches through its height.
  const others = bodies.filter(
    ({ loop, low, high }) =>
      !(loop.kind === 'teeth' && loop.section === section) && low <= face + 1e-6 && high >= face - 1e-6,
  );
  const inner = Math.max(
    findBoreRadius(bore),
    hasPocket ? web.rimDiameter / 2 : 0,
    ...others.map(({ loop }) => loop.most),
  );
  const room = Math.floor((outer - inner - 2 * leastWall) * 100) / 100;
  if (diameter > room) {
    throw new Fail(
      'bad-geometry',
      field,
      `a mark of ${diameter} mm on a face with ${Math.max(0, room).toFixed(2)} mm of room makes no solid`,
      room >= 0.1 ? `Give at most ${room.toFixed(2)} mm.` : 'Put it on the other side, or leave it out.',
    );
  }
  const deepest = Math.floor((faceWidth - leastWall) * 100) / 100;
  if (depth > deepest) {
    throw new Fail(
      'bad-geometry',
      field,
      `a mark ${depth} mm deep in a face ${faceWidth} mm wide makes no solid`,
      `Give at most ${deepest.toFixed(2)} mm.`,
    );
  }
  // Not at the height where a chamfer ends: two cuts at almost one height leave a sliver.
  const cut = Math.abs(depth - chamfer) < 1e-4 ? chamfer : depth;
  const turn =
    (section.phase ?? 0) + (side === 'top' ? (2 * faceWidth * Math.tan(spec.helixAngle)) / reference : 0);
  const radius = (outer + inner) / 2;
  const [x, y] = [radius * Math.cos(turn), radius * Math.sin(turn)];
  return [
    {
      loop: {
        kind: 'circle',
        radius: diameter / 2,
        x,
        y,
        key: `circle ${diameter / 2} ${x} ${y}`,
        least: radius - diameter / 2,
        most: radius + diameter / 2,
        name: `the mark of ${diameter} mm`,
        field,
      },
      low: side === 'top' ? face - cut : face,
      high: side === 'top' ? face : face + cut,
    },
  ];
}
