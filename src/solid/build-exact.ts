import { checkForm } from './check-form.ts';
import { type EdgeUse, type ExactBody, reverseLoop, startBody } from './exact-body.ts';
import { findExactLoop } from './exact-loop.ts';
import { findExactRack } from './exact-rack.ts';
import { addExactWall, type Carried, type ExactWallEnds } from './exact-wall.ts';
import { type StackWall, stackPart, type WallEnd } from './part-stack.ts';
import { pierceWalls } from './pierce-walls.ts';
import { findChamferRadius, findTwist } from './toothed-wall.ts';
import type { WheelForm } from './wheel-form.ts';

/**
 * The same part as `buildSolid` gives, by its exact boundary: circles and arcs as they are, flanks and roots as cubic
 * B-splines within 0.1 µm of their curves, helices within 0.0005 µm of theirs; a chamfer is a cone on the tips and a
 * ruled surface on the flanks. Throws the Fails of `buildSolid`.
 */
export function buildExact(form: WheelForm): ExactBody {
  checkForm(form);
  const body = startBody();
  if (form.spec.kind === 'rack') {
    const { loop, shear } = findExactRack(form.spec);
    const levels = [
      { z: 0, share: 0 },
      { z: form.faceWidth, share: 0 },
    ];
    const ends = addExactWall(body, loop, { ...upright, levels, shear });
    addLevelFace(body, 0, false, ends.low, []);
    addLevelFace(body, form.faceWidth, true, ends.high, []);
    return body.finish();
  }
  const stack = stackPart(form);
  const pierced = pierceWalls(body, stack.walls);
  const ends = stack.walls.map((wall, k) => addExactWall(body, findExactLoop(wall), carry(wall), pierced[k]));
  const edgesOf = ({ wall, end }: WallEnd): readonly EdgeUse[] => ends[wall][end as keyof ExactWallEnds];
  for (const { z, isUp, outer, holes } of stack.faces)
    addLevelFace(body, z, isUp, edgesOf(outer), holes.map(edgesOf));
  return body.finish();
}

const upright: Omit<Carried, 'levels'> = {
  turnAt: () => 0,
  twist: 0,
  shear: 0,
  limit: 0,
  isOutward: true,
  isHole: false,
};

function carry(wall: StackWall): Carried {
  const { loop, low, high, chamfer, isHole } = wall;
  const levels = [
    { z: low, share: chamfer.low > 0 ? 1 : 0 },
    ...(chamfer.low > 0 ? [{ z: low + chamfer.low, share: 0 }] : []),
    ...(chamfer.high > 0 ? [{ z: high - chamfer.high, share: 0 }] : []),
    { z: high, share: chamfer.high > 0 ? 1 : 0 },
  ];
  if (loop.kind !== 'teeth') return { ...upright, levels, isHole };
  const { section } = loop;
  const twist = findTwist(section);
  return {
    levels,
    isHole,
    twist,
    turnAt: (z) => (section.phase ?? 0) + twist * (z - section.offset),
    shear: 0,
    limit: findChamferRadius(section),
    isOutward: section.spec.kind !== 'internal',
  };
}

function addLevelFace(
  body: ReturnType<typeof startBody>,
  z: number,
  isUp: boolean,
  outer: readonly EdgeUse[],
  holes: readonly (readonly EdgeUse[])[],
): void {
  const [first] = outer;
  if (first === undefined) throw new Error('a face without edges');
  body.addFace({
    surface: { kind: 'plane', at: [0, 0, z], normal: [0, 0, isUp ? 1 : -1], reference: [1, 0, 0] },
    isAlong: true,
    loops: isUp
      ? [[...outer], ...holes.map(reverseLoop)]
      : [reverseLoop(outer), ...holes.map((hole) => [...hole])],
  });
}
