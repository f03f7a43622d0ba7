import { findDiameters } from '../involute/gear-diameters.ts';
import { findGeneratingRack } from '../involute/generating-rack.ts';
import { rackBackDepth } from '../involute/rack-outline.ts';
import type { Loop } from '../solid/lay-layers.ts';
import { stackPart } from '../solid/part-stack.ts';
import type { WheelForm } from '../solid/wheel-form.ts';

/** A part cut along its axis, mm: x along the axis from the part's lowest face, y from the axis (a rack: its datum). */
export interface SectionLines {
  readonly length: number;
  /** Greatest y; the least is its negative, of a rack the back's own */
  readonly high: number;
  readonly low: number;
  /** x1, y1, x2, y2: what is seen or cut */
  readonly edges: readonly (readonly [number, number, number, number])[];
  /** Cut material: left, low, right, high */
  readonly cut: readonly (readonly [number, number, number, number])[];
  /** Reference lines: x1, x2 and y of each, above the axis */
  readonly pitch: readonly (readonly [number, number, number])[];
}

/**
 * The half section of a wheel or ring: above the axis cut, below as seen from outside. Teeth are not hatched; their root
 * line is drawn where they are cut (ISO 2203). A rack is cut whole. Holes beside the axis and across it are left out,
 * shaped bores are shown at their widest. Throws the Fails of `stackPart`.
 */
export function findSectionLines(form: WheelForm): SectionLines {
  if (form.spec.kind === 'rack') return cutRack(form);
  const { walls, faces } = stackPart(form);
  const onAxis = walls.filter(({ loop }) => loop.kind !== 'circle' || (loop.x === 0 && loop.y === 0));
  const base = walls.reduce((least, wall) => Math.min(least, wall.low), Number.POSITIVE_INFINITY);
  const top = walls.reduce((most, wall) => Math.max(most, wall.high), base);
  const edges: [number, number, number, number][] = [];
  const pitch: [number, number, number][] = [];
  for (const { loop, low, high } of onAxis) {
    const radius = edgeOf(loop);
    edges.push([low - base, radius, high - base, radius]);
    if (loop.kind !== 'teeth') continue;
    const { root, reference } = findDiameters(loop.section.spec);
    edges.push([low - base, root / 2, high - base, root / 2]);
    pitch.push([low - base, high - base, reference / 2]);
  }
  for (const { z, outer, holes } of faces) {
    const inner = holes
      .map(({ wall }) => walls[wall].loop)
      .filter((loop) => loop.kind !== 'circle' || (loop.x === 0 && loop.y === 0))
      .reduce((most, loop) => Math.max(most, edgeOf(loop)), 0);
    const loop = walls[outer.wall].loop;
    if (loop.kind === 'circle' && (loop.x !== 0 || loop.y !== 0)) continue;
    edges.push([z - base, inner, z - base, edgeOf(loop)]);
  }
  const levels = [...new Set(onAxis.flatMap(({ low, high }) => [low, high]))].sort((a, b) => a - b);
  const cut: [number, number, number, number][] = [];
  let seen = 0;
  for (let k = 0; k + 1 < levels.length; k++) {
    const [low, high] = [levels[k], levels[k + 1]];
    const here = onAxis
      .filter((wall) => wall.low < (low + high) / 2 && wall.high > (low + high) / 2)
      .map(({ loop }) => loop)
      .sort((a, b) => edgeOf(b) - edgeOf(a));
    for (let i = 0; i < here.length; i += 2) {
      const hole = here[i + 1];
      cut.push([low - base, hole ? cutOf(hole) : 0, high - base, cutOf(here[i])]);
    }
    const outside = here.length > 0 ? edgeOf(here[0]) : 0;
    edges.push([low - base, -outside, high - base, -outside]);
    if (outside !== seen)
      edges.push([low - base, -Math.min(outside, seen), low - base, -Math.max(outside, seen)]);
    seen = outside;
  }
  edges.push([top - base, 0, top - base, -seen]);
  const high = edges.reduce((most, [, y]) => Math.max(most, y), 0);
  return { length: top - base, high, low: -high, edges, cut, pitch };
}

/** The line that is seen: the tips of teeth, else the curve itself. */
function edgeOf(loop: Loop): number {
  return loop.kind === 'teeth' ? findDiameters(loop.section.spec).tip / 2 : loop.most;
}

/** Where hatching ends: the roots of teeth. */
function cutOf(loop: Loop): number {
  return loop.kind === 'teeth' ? findDiameters(loop.section.spec).root / 2 : loop.most;
}

function cutRack({ spec, faceWidth }: WheelForm): SectionLines {
  const high = spec.addendum * spec.module;
  const root = findGeneratingRack(spec).tip;
  const low = root - rackBackDepth * spec.module;
  return {
    length: faceWidth,
    high,
    low,
    edges: [
      [0, low, 0, high],
      [faceWidth, low, faceWidth, high],
      [0, low, faceWidth, low],
      [0, root, faceWidth, root],
      [0, high, faceWidth, high],
    ],
    cut: [[0, low, faceWidth, root]],
    pitch: [[0, faceWidth, 0]],
  };
}
