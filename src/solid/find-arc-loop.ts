import { findFlankArcs } from '../involute/find-flank-arcs.ts';
import type { ArcLoop } from '../plane/fit-arcs.ts';
import { type ExactLoop, findExactLoop } from './exact-loop.ts';
import type { StackWall } from './part-stack.ts';
import { findSectorAngles } from './sector-outline.ts';
import type { PlacedSection } from './wheel-form.ts';

/**
 * A wall's curve in lines and arcs alone: circles, tip and root arcs exactly, flanks as arcs within `error` (mm) of their
 * curves; both flanks of a tooth are mirror images and all teeth are alike. A helical toothing is shown as it stands
 * at its lower face.
 */
export function findArcLoop(wall: StackWall, error: number): ArcLoop {
  return wall.loop.kind === 'teeth' ? findTeeth(wall.loop.section, error) : bendPieces(findExactLoop(wall));
}

function bendPieces({ points, pieces }: ExactLoop): ArcLoop {
  const bulges = pieces.map((piece, k) => {
    if (piece.kind === 'line') return 0;
    if (piece.kind === 'spline') throw new Error('no spline but on teeth');
    const angle = ([x, y]: readonly [number, number]): number => Math.atan2(y - piece.y, x - piece.x);
    const sign = piece.isClockwise ? -1 : 1;
    const turn = sign * (angle(points[(k + 1) % points.length]) - angle(points[k]));
    return sign * Math.tan((turn > 0 ? turn : turn + 2 * Math.PI) / 4);
  });
  return { points: Float64Array.from(points.flat()), bulges: Float64Array.from(bulges) };
}

function findTeeth({ spec, sector, phase = 0, ...rest }: PlacedSection, error: number): ArcLoop {
  const { points: flank, bulges } = findFlankArcs(spec, error);
  const n = flank.length / 2;
  const pitch = (2 * Math.PI) / spec.teeth;
  const foot = -Math.atan2(flank[1], flank[0]);
  const head = -Math.atan2(flank[2 * n - 1], flank[2 * n - 2]);
  const root = Math.hypot(flank[0], flank[1]);
  const hasTip = head > nothing;
  const hasFloor = pitch / 2 - foot > nothing;
  const out: number[] = [];
  const turns: number[] = [];
  const add = (x: number, y: number, angle: number, bulge: number): void => {
    const c = Math.cos(angle);
    const s = Math.sin(angle);
    out.push(x * c - y * s, x * s + y * c);
    turns.push(bulge);
  };
  const addArc = (radius: number, from: number, to: number): void => {
    // In two pieces where it is long: more than half a turn is more than some readers expect of one.
    const pieces = to - from > Math.PI / 2 ? 2 : 1;
    const turn = (to - from) / pieces;
    for (let k = 0; k < pieces; k++) add(radius, 0, from + k * turn, Math.tan(turn / 4));
  };
  const teeth = sector?.teeth ?? spec.teeth;
  for (let tooth = 0; tooth < teeth; tooth++) {
    const angle = phase + tooth * pitch;
    for (let k = 0; k + 1 < n; k++) add(flank[2 * k], flank[2 * k + 1], angle, bulges[k]);
    const tip = 2 * n - 2;
    // Mirrored and run backwards, an arc keeps its bulge.
    add(flank[tip], flank[tip + 1], angle, hasTip ? Math.tan(head / 2) : bulges[n - 2]);
    for (let k = n - (hasTip ? 1 : 2); k > 0; k--) add(flank[2 * k], -flank[2 * k + 1], angle, bulges[k - 1]);
    const isLast = tooth + 1 === teeth && sector !== undefined;
    const end = angle + foot;
    if (!isLast) {
      if (hasFloor) addArc(root, end, angle + pitch - foot);
      continue;
    }
    const { rest: bare } = findSectorAngles({ spec, sector, ...rest });
    const start = phase + 2 * Math.PI - foot;
    if (!bare) {
      addArc(root, end, start);
      continue;
    }
    addArc(root, end, phase + bare.from);
    add(root, 0, phase + bare.from, 0);
    addArc(bare.radius, phase + bare.from, phase + bare.to);
    add(bare.radius, 0, phase + bare.to, 0);
    addArc(root, phase + bare.to, start);
  }
  return { points: Float64Array.from(out), bulges: Float64Array.from(turns) };
}

/** An arc of a smaller angle, rad, is none. */
const nothing = 1e-9;
