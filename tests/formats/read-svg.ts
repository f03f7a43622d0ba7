import type { ReadCurve } from './read-dxf.ts';

/** The curves of an SVG file of lines, circles and paths of M, L, A and Z, y turned up again. Throws on anything else. */
export function readSvg(bytes: Uint8Array): {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly box: readonly number[];
  readonly title: string;
  readonly curves: readonly ReadCurve[];
} {
  const text = new TextDecoder().decode(bytes);
  const root = /<svg [^>]*width="([\d.]+)mm" height="([\d.]+)mm" viewBox="([^"]+)"/.exec(text);
  if (!root) throw new Error('no size in mm');
  const curves: ReadCurve[] = [];
  for (const [, layer, content] of text.matchAll(/<g id="([\w-]+)"[^>]*>([\s\S]*?)<\/g>/g)) {
    for (const [, tag, rest] of content.matchAll(/<(\w+) ([^>]*)\/>/g)) {
      const value = (key: string): number => {
        const found = new RegExp(`(?:^| )${key}="([^"]*)"`).exec(rest);
        if (!found) throw new Error(`no ${key} in ${rest}`);
        return Number(found[1]);
      };
      if (tag === 'circle') {
        const points = [{ x: value('cx'), y: -value('cy'), bulge: 0 }];
        curves.push({ layer, kind: 'circle', points, radius: value('r') });
      } else if (tag === 'line') {
        const points = [1, 2].map((k) => ({ x: value(`x${k}`), y: -value(`y${k}`), bulge: 0 }));
        curves.push({ layer, kind: 'line', points });
      } else if (tag === 'path') {
        curves.push({ layer, kind: 'loop', points: readPath(/d="([^"]*)"/.exec(rest)?.[1] ?? '') });
      } else throw new Error(`<${tag}> is not expected`);
    }
  }
  return {
    widthMm: Number(root[1]),
    heightMm: Number(root[2]),
    box: root[3].split(' ').map(Number),
    title: /<title>(.*)<\/title>/.exec(text)?.[1] ?? '',
    curves,
  };
}

/** Endpoint arcs back to bulges: a chord of length c on radius r turns by 2 asin(c/2r), or the rest of the circle. */
function readPath(path: string): ReadCurve['points'] {
  const points: { x: number; y: number; bulge: number }[] = [];
  let closing: { x: number; y: number } | undefined;
  for (const [, command, list] of path.matchAll(/([MLAZ])([^MLAZ]*)/g)) {
    const n = list.trim().split(/[ ,]+/).filter(Boolean).map(Number);
    if (command === 'Z') break;
    const [x, y] = [n[n.length - 2], -n[n.length - 1]];
    const before = points[points.length - 1];
    if (command === 'A' && before) {
      const [radius, , , isLarge, sweep] = n;
      const half = Math.asin(Math.min(1, Math.hypot(x - before.x, y - before.y) / 2 / radius));
      const turn = isLarge ? 2 * Math.PI - 2 * half : 2 * half;
      before.bulge = (sweep ? -1 : 1) * Math.tan(turn / 4);
    }
    points.push({ x, y, bulge: 0 });
    closing = points[0];
  }
  // The path comes back to its first point before it is closed.
  const last = points.pop();
  if (!last || !closing || Math.hypot(last.x - closing.x, last.y - closing.y) > 1e-9)
    throw new Error('an open path');
  return points;
}
