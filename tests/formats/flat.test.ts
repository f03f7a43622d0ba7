import { describe, expect, test } from 'vitest';
import { encodePart } from '../../src/formats/encode-part.ts';
import { partFormats } from '../../src/formats/part-formats.ts';
import { findDiameters } from '../../src/involute/gear-diameters.ts';
import type { GearSpec } from '../../src/involute/gear-spec.ts';
import { traceOutline } from '../../src/involute/trace-outline.ts';
import { flattenPart } from '../../src/solid/flatten-part.ts';
import type { Mesh } from '../../src/solid/mesh.ts';
import type { WheelForm } from '../../src/solid/wheel-form.ts';
import { makeSpec, rad } from '../involute/make-spec.ts';
import { type ReadCurve, readDxf } from './read-dxf.ts';
import { readSvg } from './read-svg.ts';

const noMesh: Mesh = { positions: new Float64Array(0), triangles: new Uint32Array(0) };

function encode(key: 'dxf' | 'svg', ...forms: readonly WheelForm[]): Uint8Array {
  const format = partFormats.find((one) => one.key === key);
  if (!format) throw new Error(`no format ${key}`);
  const bodies = forms.map((form, k) => ({ form, x: 100 * k }));
  return encodePart(format, { mesh: noMesh, bodies }, 'a & b', {});
}

function formOf(spec: GearSpec, more: Partial<WheelForm> = {}): WheelForm {
  const bore =
    spec.kind === 'external' ? ({ shape: 'round', diameter: 4 } as const) : ({ shape: 'none' } as const);
  return { spec, faceWidth: 5, bore, hubs: [], chamfer: 0, ...more };
}

const wheels: readonly [string, WheelForm][] = [
  ['spur', formOf(makeSpec({ teeth: 20 }))],
  ['shifted pinion', formOf(makeSpec({ teeth: 9, profileShift: 0.5, module: 2 }))],
  ['undercut', formOf(makeSpec({ teeth: 10, module: 1.5 }))],
  ['fine', formOf(makeSpec({ teeth: 60, module: 0.2 }))],
  ['coarse', formOf(makeSpec({ teeth: 30, module: 5 }))],
  ['helical', formOf(makeSpec({ teeth: 25, helixAngle: rad(20) }))],
  ['pointed', formOf(makeSpec({ teeth: 12, profileShift: 0.3, tipDiameter: 14.8, module: 1 }))],
  ['internal', formOf(makeSpec({ kind: 'internal', teeth: 40 }), { rimDiameter: 50 })],
  [
    'internal, shaped',
    formOf(makeSpec({ kind: 'internal', teeth: 50, cutterTeeth: 24 }), { rimDiameter: 60 }),
  ],
  ['rack', formOf(makeSpec({ kind: 'rack', teeth: 8 }))],
];

/** Distance from a point to a piece, and the piece's own samples. */
function samplePieces(points: ReadCurve['points'], each: number): number[] {
  const out: number[] = [];
  points.forEach(({ x, y, bulge }, k) => {
    const next = points[(k + 1) % points.length];
    for (let i = 0; i < each; i++) {
      const t = i / each;
      if (bulge === 0) {
        out.push(x + t * (next.x - x), y + t * (next.y - y));
        continue;
      }
      // The arc's center stands (1 − b²)/(4 b) chords to the left of the chord's middle.
      const [dx, dy] = [next.x - x, next.y - y];
      const off = (1 - bulge * bulge) / (4 * bulge);
      const [cx, cy] = [(x + next.x) / 2 - off * dy, (y + next.y) / 2 + off * dx];
      const turn = 4 * Math.atan(bulge) * t;
      const [rx, ry] = [x - cx, y - cy];
      out.push(
        cx + rx * Math.cos(turn) - ry * Math.sin(turn),
        cy + rx * Math.sin(turn) + ry * Math.cos(turn),
      );
    }
  });
  return out;
}

/** The farthest that a point of `from` lies from the closed polyline `to`; only edges near in a grid are tried. */
function farthest(from: ArrayLike<number>, to: ArrayLike<number>, cell: number): number {
  const grid = new Map<string, number[]>();
  const n = to.length / 2;
  for (let k = 0; k < n; k++) {
    const [ax, ay] = [to[2 * k], to[2 * k + 1]];
    const [bx, by] = [to[(2 * k + 2) % to.length], to[(2 * k + 3) % to.length]];
    const steps = Math.ceil(Math.hypot(bx - ax, by - ay) / cell) + 1;
    for (let i = 0; i <= steps; i++) {
      const key = `${Math.floor((ax + ((bx - ax) * i) / steps) / cell)} ${Math.floor((ay + ((by - ay) * i) / steps) / cell)}`;
      const list = grid.get(key);
      if (!list) grid.set(key, [k]);
      else if (list[list.length - 1] !== k) list.push(k);
    }
  }
  let most = 0;
  for (let p = 0; p < from.length; p += 2) {
    const [px, py] = [from[p], from[p + 1]];
    let least = Number.POSITIVE_INFINITY;
    for (let i = -1; i <= 1; i++) {
      for (let j = -1; j <= 1; j++) {
        for (const k of grid.get(`${Math.floor(px / cell) + i} ${Math.floor(py / cell) + j}`) ?? []) {
          const [ax, ay] = [to[2 * k], to[2 * k + 1]];
          const [dx, dy] = [to[(2 * k + 2) % to.length] - ax, to[(2 * k + 3) % to.length] - ay];
          const t = Math.min(1, Math.max(0, ((px - ax) * dx + (py - ay) * dy) / (dx * dx + dy * dy || 1)));
          least = Math.min(least, Math.hypot(px - ax - t * dx, py - ay - t * dy));
        }
      }
    }
    most = Math.max(most, least);
  }
  return most;
}

const readers = {
  dxf: (bytes: Uint8Array): readonly ReadCurve[] =>
    readDxf(bytes).curves.map((curve) => ({ ...curve, layer: curve.layer.toLowerCase() })),
  svg: (bytes: Uint8Array): readonly ReadCurve[] => readSvg(bytes).curves,
};

describe.each(['dxf', 'svg'] as const)('%s', (key) => {
  test.each(wheels)('%s: the outline lies within a micrometer of the exact curves, both ways', (_, form) => {
    const curves = readers[key](encode(key, form));
    const outline = curves.find((one) => one.layer === 'outline' && one.kind === 'loop');
    if (!outline) throw new Error('no outline');
    // Traced ten times finer than the file is allowed to stray.
    const exact = traceOutline(form.spec, 1e-4).points;
    const read = samplePieces(outline.points, 12);
    const cell = 0.2 * form.spec.module;
    // The exact curves' chords stray by 0.1 µm, and numbers are rounded to a nanometer.
    expect(farthest(read, exact, cell)).toBeLessThan(0.0011);
    const fine = samplePieces(outline.points, 40);
    expect(farthest(exact, fine, cell)).toBeLessThan(0.0012);
  });

  test.each(wheels.filter(([, { spec }]) => spec.kind !== 'rack'))(
    '%s: tips and roots are arcs of the tip and root circles about the axis, each one piece',
    (_, form) => {
      const { tip, root } = findDiameters(form.spec);
      const outline = readers[key](encode(key, form)).find(
        ({ layer, kind }) => layer === 'outline' && kind === 'loop',
      );
      const points = outline?.points ?? [];
      const radii = points.map(({ x, y }) => Math.hypot(x, y));
      const count = (diameter: number): number =>
        points.filter(({ bulge }, k) => {
          const next = (k + 1) % points.length;
          if (Math.abs(2 * radii[k] - diameter) > 1e-5 || Math.abs(2 * radii[next] - diameter) > 1e-5)
            return false;
          const chord = Math.hypot(points[next].x - points[k].x, points[next].y - points[k].y);
          // A chord's turn about the axis is the arc's own turn.
          const turn = 2 * Math.asin(chord / diameter);
          expect(4 * Math.atan(bulge)).toBeCloseTo(turn, 4);
          return true;
        }).length;
      expect(count(tip)).toBe(form.spec.teeth);
      expect([0, form.spec.teeth]).toContain(count(root));
      // Few pieces: a cutter's path, not a cloud of points.
      expect(points.length / form.spec.teeth).toBeLessThan(60);
    },
  );

  test('a wheel has its bore, hub edge and pitch circle on their own layers, at their sizes', () => {
    const form = formOf(makeSpec({ teeth: 24, module: 0.8 }), {
      hubs: [{ side: 'top', diameter: 10, length: 3 }],
    });
    const curves = readers[key](encode(key, form));
    const find = (layer: string): number[] =>
      curves
        .filter((one) => one.layer === layer && one.kind === 'circle')
        .map(({ radius = 0 }) => 2 * radius);
    expect(find('bore')).toEqual([4]);
    expect(find('edges')).toEqual([10]);
    expect(find('pitch-circle')[0]).toBeCloseTo(19.2, 9);
    expect(curves.length).toBe(4);
  });

  test('a D bore is one arc of the bore and one flat at its distance from the opposite wall', () => {
    const form = formOf(makeSpec({ teeth: 24 }), { bore: { shape: 'd', diameter: 6, flat: 5 } });
    const bore = readers[key](encode(key, form)).find(({ layer }) => layer === 'bore');
    const points = samplePieces(bore?.points ?? [], 200);
    const xs = points.filter((_, k) => k % 2 === 0);
    expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(5, 4);
    for (let k = 0; k < points.length; k += 2)
      expect(Math.hypot(points[k], points[k + 1])).toBeLessThan(3 + 1e-6);
  });

  test('a compound gear shows both toothings, the wider one to be cut, turned by its phase', () => {
    const form = formOf(makeSpec({ teeth: 12 }), {
      others: [
        { spec: makeSpec({ teeth: 40 }), faceWidth: 3, chamfer: 0, hubs: [], offset: 5, phase: rad(3) },
      ],
    });
    const curves = readers[key](encode(key, form));
    const at = (layer: string): ReadCurve | undefined => curves.find((one) => one.layer === layer);
    expect(Math.hypot(at('outline')?.points[0].x ?? 0, at('outline')?.points[0].y ?? 0)).toBeGreaterThan(18);
    const exact = traceOutline(makeSpec({ teeth: 40 }), 1e-4).points;
    const turned = Float64Array.from(exact);
    for (let k = 0; k < exact.length; k += 2) {
      turned[k] = exact[k] * Math.cos(rad(3)) - exact[k + 1] * Math.sin(rad(3));
      turned[k + 1] = exact[k] * Math.sin(rad(3)) + exact[k + 1] * Math.cos(rad(3));
    }
    expect(farthest(samplePieces(at('outline')?.points ?? [], 4), turned, 0.2)).toBeLessThan(0.0011);
    expect(at('other-outlines')?.points.length).toBeGreaterThan(48);
    expect(curves.filter(({ layer }) => layer === 'pitch-circle').length).toBe(2);
  });

  test('a sector has its teeth and a plain rest', () => {
    const form = formOf(makeSpec({ teeth: 30 }), { sector: { teeth: 10, restDiameter: 26 } });
    const outline = readers[key](encode(key, form)).find(({ layer }) => layer === 'outline');
    const points = samplePieces(outline?.points ?? [], 8);
    const at = (degrees: number): number => {
      let best = 0;
      let least = Number.POSITIVE_INFINITY;
      for (let k = 0; k < points.length; k += 2) {
        const off = Math.abs(
          ((Math.atan2(points[k + 1], points[k]) - rad(degrees) + 3 * Math.PI) % (2 * Math.PI)) - Math.PI,
        );
        if (off < least) [least, best] = [off, Math.hypot(points[k], points[k + 1])];
      }
      return best;
    };
    // Tooth 9 stands at 108°, its tip at 16 mm; at 240° there is only the rest.
    expect(at(108)).toBeCloseTo(16, 3);
    expect(at(240)).toBeCloseTo(13, 3);
  });

  test('several bodies stand side by side, and the same part gives the same bytes', () => {
    const form = formOf(makeSpec({ teeth: 12 }));
    const curves = readers[key](encode(key, form, form));
    const circles = curves.filter(({ layer }) => layer === 'bore').map(({ points }) => points[0].x);
    expect(circles).toEqual([0, 100]);
    expect(encode(key, form, form)).toEqual(encode(key, form, form));
  });
});

test('DXF says that it is in mm, names its layers and writes no exponent', () => {
  const bytes = encode(
    'dxf',
    formOf(makeSpec({ teeth: 17, module: 0.3 }), { bore: { shape: 'round', diameter: 1 } }),
  );
  const { units, layers } = readDxf(bytes);
  expect(units).toBe(4);
  expect(layers).toEqual(expect.arrayContaining(['OUTLINE', 'BORE', 'PITCH-CIRCLE']));
  expect(new TextDecoder().decode(bytes)).not.toMatch(/\n-?\d+(\.\d+)?e-?\d+\n/);
});

test('SVG is as large as its view box says in mm, holds all of the part and a title that XML can hold', () => {
  const form = formOf(makeSpec({ teeth: 20 }));
  const { widthMm, heightMm, box, title } = readSvg(encode('svg', form));
  expect([widthMm, heightMm]).toEqual([box[2], box[3]]);
  expect(widthMm).toBeGreaterThan(22);
  expect(widthMm).toBeLessThan(25);
  expect(box[0]).toBeLessThan(-11);
  expect(title).toBe('a &amp; b');
});

test('seen from above, what lies under something wider is hidden: a hub below, not one above', () => {
  const hub = (side: 'top' | 'bottom', diameter: number) => ({ side, diameter, length: 2 });
  const form = formOf(makeSpec({ teeth: 30 }), { hubs: [hub('top', 10), hub('bottom', 12)] });
  const hidden = flattenPart(form, 0, 0.01).flatMap((curve) =>
    curve.isHidden && curve.kind === 'circle' ? [2 * curve.radius] : [],
  );
  expect(hidden).toEqual([12]);
});
