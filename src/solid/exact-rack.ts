import type { GearSpec } from '../involute/gear-spec.ts';
import { findGeneratingRack } from '../involute/generating-rack.ts';
import { rackBackDepth } from '../involute/rack-outline.ts';
import { traceOutline } from '../involute/trace-outline.ts';
import { fitSpline } from '../numeric/fit-spline.ts';
import { type ExactLoop, fitTolerance, type LoopPiece } from './exact-loop.ts';

/**
 * A rack's outline as exact pieces, laid out as `traceRackOutline` does, and how far a helix shears it along x for
 * each millimeter of height. The root corners of a slanted rack are stretched circles, and splines here.
 */
export function findExactRack(spec: GearSpec): { readonly loop: ExactLoop; readonly shear: number } {
  // Refuses what has no outline.
  traceOutline(spec, 0.05 * spec.module);
  const { module: m, pressureAngle: a, teeth: z } = spec;
  const { cornerU, cornerV, cornerRadius: radius, tip: floor, halfWidth } = findGeneratingRack(spec);
  const stretch = 1 / Math.cos(spec.helixAngle);
  const pitch = Math.PI * m * stretch;
  const top = spec.addendum * m;
  const bottom = floor - rackBackDepth * m;
  const left = -pitch / 2;
  const right = (z - 0.5) * pitch;
  const line: LoopPiece = { kind: 'line' };
  // From the space's axis to its side: along the corner from the floor to the flank, then along the flank.
  const cornerAt = (angle: number): [number, number] => [
    (cornerU + radius * Math.sin(angle)) * stretch,
    cornerV - radius * Math.cos(angle),
  ];
  const flank = Math.PI / 2 - a;
  const low = cornerAt(0);
  const foot = cornerAt(flank);
  const head = [(halfWidth + top * Math.tan(a)) * stretch, top];
  const corner = (axis: number, side: 1 | -1): LoopPiece => {
    if (radius < 1e-9) return line;
    if (stretch === 1)
      return { kind: 'arc', x: axis + side * cornerU, y: cornerV, radius, isClockwise: true };
    return fitCorner((t) => {
      const [u, v] = cornerAt(side < 0 ? flank * t : flank * (1 - t));
      return [axis + side * u, v];
    });
  };
  const steps: [number, number, LoopPiece][] = [
    [left, bottom, line],
    [right, bottom, line],
    [right, floor, line],
  ];
  // Counter-clockwise: over the teeth from right to left.
  for (let tooth = z - 1; tooth >= 0; tooth--) {
    const before = (tooth + 0.5) * pitch;
    const after = (tooth - 0.5) * pitch;
    steps.push(
      [before - low[0], low[1], corner(before, -1)],
      [before - foot[0], foot[1], line],
      [before - head[0], head[1], line],
      [after + head[0], head[1], line],
      [after + foot[0], foot[1], corner(after, 1)],
      [after + low[0], low[1], line],
    );
  }
  steps.push([left, floor, line]);
  // A sharp corner and a space without a floor leave lines that lead nowhere.
  const kept = steps.filter(([x, y, piece], k) => {
    const [nextX, nextY] = steps[(k + 1) % steps.length];
    return piece.kind !== 'line' || Math.hypot(nextX - x, nextY - y) > 1e-9;
  });
  return {
    loop: { points: kept.map(([x, y]) => [x, y]), pieces: kept.map(([, , piece]) => piece) },
    shear: Math.tan(spec.helixAngle),
  };
}

function fitCorner(at: (parameter: number) => readonly [number, number]): LoopPiece {
  const { spline } = fitSpline((parameter, out) => out.set(at(parameter)), 2, fitTolerance);
  const points = Array.from({ length: spline.points.length / 2 }, (_, k): [number, number] => [
    spline.points[2 * k],
    spline.points[2 * k + 1],
  ]);
  return { kind: 'spline', points, knots: spline.knots };
}
