import { describe, expect, test } from 'vitest';
import { encodePart } from '../../src/formats/encode-part.ts';
import { partFormats } from '../../src/formats/part-formats.ts';
import { encodeStep } from '../../src/formats/step.ts';
import { quoteText, startStepText } from '../../src/formats/step-text.ts';
import { findDiameters } from '../../src/involute/gear-diameters.ts';
import type { GearSpec } from '../../src/involute/gear-spec.ts';
import { toothThicknessAt } from '../../src/involute/tooth-thickness.ts';
import { traceOutline } from '../../src/involute/trace-outline.ts';
import { findTrochoid } from '../../src/involute/trochoid.ts';
import { buildExact } from '../../src/solid/build-exact.ts';
import { buildSolid } from '../../src/solid/build-solid.ts';
import { checkMesh } from '../../src/solid/check-mesh.ts';
import type { Mesh } from '../../src/solid/mesh.ts';
import type { WheelForm } from '../../src/solid/wheel-form.ts';
import { makeSpec, rad } from '../involute/make-spec.ts';
import { exactVolume } from '../solid/exact-volume.ts';
import { evaluate, listSplines, parseStep } from './parse-step.ts';
import { readStep } from './read-step.ts';
import { readStl } from './read-stl.ts';
import { readThreeMf } from './read-three-mf.ts';

const bore = { shape: 'round', diameter: 4 } as const;
const plain = { bore, hubs: [], chamfer: 0, faceWidth: 4 } as const;
const writeForm = (form: WheelForm): Uint8Array => encodeStep([{ body: buildExact(form), x: 0 }], 'part', '');

/** A pinion on a wheel, each with its own slant, a neck between. */
const compound: WheelForm = {
  ...plain,
  spec: makeSpec({ teeth: 24, module: 0.5 }),
  hubs: [{ side: 'top', diameter: 5.6, length: 1 }],
  others: [
    {
      spec: makeSpec({ teeth: 12, module: 0.6, profileShift: 0.4 }),
      faceWidth: 5,
      chamfer: 0,
      hubs: [],
      offset: 5,
    },
  ],
};

/** Where a tooth has no tip chamfer: its trochoid and involute on either side, tip land, root land. */
const perTooth = 6;

const cases: readonly {
  readonly name: string;
  readonly form: WheelForm;
  readonly faces: number;
  readonly genus: number;
  readonly volume?: number;
}[] = [
  {
    name: 'a spur wheel',
    form: { ...plain, spec: makeSpec({ teeth: 10, profileShift: 0.4 }) },
    faces: 10 * perTooth + 2 + 2,
    genus: 1,
  },
  {
    name: 'a slanted wheel',
    form: { ...plain, spec: makeSpec({ teeth: 10, profileShift: 0.4, helixAngle: rad(18) }) },
    faces: 10 * perTooth + 4,
    genus: 1,
  },
  {
    name: 'a D bore and a hub',
    form: {
      ...plain,
      spec: makeSpec({ teeth: 10, profileShift: 0.4 }),
      bore: { shape: 'd', diameter: 4, flat: 3.2 },
      hubs: [{ side: 'top', diameter: 7, length: 3 }],
    },
    // Two rings and the hub's wall and end, the bore's arc and flat.
    faces: 10 * perTooth + 2 + 2 + 1 + 2,
    genus: 1,
  },
  {
    name: 'a compound gear',
    form: compound,
    // Two bore halves, two neck halves; faces: bottom, over the wheel, under the pinion, top.
    faces: (24 + 12) * perTooth + 2 + 2 + 4,
    genus: 1,
    volume:
      exactVolume({ ...plain, spec: compound.spec, bore: { shape: 'none' } }, 1e-5) +
      exactVolume(
        {
          ...plain,
          spec: makeSpec({ teeth: 12, module: 0.6, profileShift: 0.4 }),
          faceWidth: 5,
          bore: { shape: 'none' },
        },
        1e-5,
      ) +
      (Math.PI * 5.6 ** 2) / 4 -
      Math.PI * 4 * 10,
  },
  {
    name: 'a chamfered slanted wheel',
    form: { ...plain, spec: makeSpec({ teeth: 10, profileShift: 0.4, helixAngle: rad(-12) }), chamfer: 0.3 },
    // Each involute is split, and its upper part and the tip land have a chamfer at both ends.
    faces: 10 * (2 + 2 + 3 * 2 + 3 + 1) + 4,
    genus: 1,
  },
  {
    name: 'a ring',
    form: {
      ...plain,
      bore: { shape: 'none' },
      spec: makeSpec({ kind: 'internal', teeth: 30, addendum: 0.8 }),
      rimDiameter: 36,
    },
    faces: 30 * perTooth + 4,
    genus: 1,
  },
  {
    name: 'a rack',
    form: {
      ...plain,
      bore: { shape: 'none' },
      spec: makeSpec({ kind: 'rack', teeth: 5, helixAngle: rad(10) }),
    },
    // A tooth: two corners, two flanks, its top; six floors, three sides of the bar, two ends.
    faces: 5 * 5 + 6 + 3 + 2,
    genus: 0,
  },
];

describe('STEP, read back by an independent kernel', () => {
  for (const { name, form, faces, genus, volume } of cases) {
    test(`${name} is one closed solid of ${faces} faces, as large as its definition says`, async () => {
      const { solids } = await readStep(writeForm(form), 0.0015);
      expect(solids.length).toBe(1);
      expect(solids[0].faces).toBe(faces);
      expect(checkMesh(solids[0].mesh)).toMatchObject({ isClosed: true, degenerate: 0, genus });
      const exact = volume ?? exactVolume(form, 1e-5);
      expect(Math.abs(checkMesh(solids[0].mesh).volume / exact - 1)).toBeLessThan(1e-4);
    }, 120_000);
  }

  test('the readers notice a face that is missing', async () => {
    const body = buildExact({ ...plain, spec: makeSpec({ teeth: 8, profileShift: 0.5 }) });
    const open = { ...body, faces: body.faces.slice(1) };
    const { solids } = await readStep(encodeStep([{ body: open, x: 0 }], 'open', ''), 0.01);
    expect(checkMesh(solids[0].mesh).isClosed).toBe(false);
  }, 60_000);

  test('STL, 3MF and STEP of one part agree in volume within 0.05 %', async () => {
    const shape = { mesh: buildSolid(compound, 0.002), bodies: [{ form: compound, x: 0 }] };
    const readers: Record<string, (bytes: Uint8Array) => Mesh | Promise<Mesh>> = {
      stl: (bytes) => readStl(bytes).mesh,
      '3mf': (bytes) => readThreeMf(bytes).mesh,
      step: async (bytes) => (await readStep(bytes, 0.002)).solids[0].mesh,
    };
    const volumes = [];
    for (const format of partFormats.filter(({ key }) => readers[key]))
      volumes.push(checkMesh(await readers[format.key](encodePart(format, shape, 'part', {}))).volume);
    expect(volumes.length).toBe(3);
    expect(Math.max(...volumes) / Math.min(...volumes) - 1).toBeLessThan(5e-4);
  }, 120_000);

  test('several gears side by side are as many solids, each in its place', async () => {
    const form: WheelForm = { ...plain, spec: makeSpec({ teeth: 9, profileShift: 0.5 }), faceWidth: 1.6 };
    const body = buildExact(form);
    const bytes = encodeStep(
      [
        { body, x: 0 },
        { body, x: 20 },
      ],
      'plate',
      '',
    );
    const { solids } = await readStep(bytes, 0.01);
    const middles = solids.map(({ mesh }) => {
      const xs = mesh.positions.filter((_, k) => k % 3 === 0);
      return (Math.max(...xs) + Math.min(...xs)) / 2;
    });
    expect(middles.length).toBe(2);
    expect(Math.abs(middles[1] - middles[0] - 20)).toBeLessThan(1e-3);
  }, 60_000);
});

describe("the file's own curves", () => {
  const specs: readonly [string, GearSpec][] = [
    ['spur', makeSpec({ teeth: 20 })],
    ['undercut', makeSpec({ teeth: 10 })],
    ['a sharp rack', makeSpec({ teeth: 24, rootRadius: 0 })],
    ['slanted', makeSpec({ teeth: 20, helixAngle: rad(25) })],
    ['internal', makeSpec({ kind: 'internal', teeth: 36, addendum: 0.8, helixAngle: rad(10) })],
    ['shaped', makeSpec({ kind: 'internal', teeth: 50, addendum: 0.8, cutterTeeth: 20 })],
  ];
  for (const [name, spec] of specs) {
    test(`${name}: every spline lies within a micrometer of involute and root curve (module 1)`, () => {
      const form: WheelForm =
        spec.kind === 'internal'
          ? { ...plain, bore: { shape: 'none' }, spec, rimDiameter: findDiameters(spec).root + 4 }
          : { ...plain, spec };
      const splines = listSplines(parseStep(writeForm(form)));
      expect(splines.length).toBeGreaterThanOrEqual(2 * spec.teeth);
      const { reference, base, root } = findDiameters(spec);
      const twist = (2 * Math.tan(spec.helixAngle)) / reference;
      const pitch = (2 * Math.PI) / spec.teeth;
      const flankStart = spec.kind === 'internal' ? base / 2 : findTrochoid(spec).endRadius;
      const offOutline = startDistance(spec);
      let flanks = 0;
      let farthest = 0;
      for (const spline of splines) {
        for (let k = 0; k <= 24; k++) {
          const [x, y, z] = evaluate(spline, k / 24);
          const radius = Math.hypot(x, y);
          // Untwisted, and turned to the tooth on +x.
          let angle = Math.atan2(y, x) - twist * z;
          angle -= Math.round(angle / pitch) * pitch;
          farthest = Math.max(farthest, offOutline(radius * Math.cos(angle), radius * Math.sin(angle)));
          const isFlank = spec.kind === 'internal' ? radius < root / 2 - 0.5 : radius > flankStart + 1e-3;
          if (!isFlank) continue;
          // The involute by its thickness formula (ISO 21771), checked against handbooks elsewhere.
          const half = toothThicknessAt(spec, 2 * radius) / (2 * radius);
          farthest = Math.max(farthest, Math.abs(Math.abs(angle) - half) * radius);
          flanks++;
        }
      }
      expect(flanks).toBeGreaterThan(100);
      expect(farthest).toBeLessThan(1e-3);
    });
  }

  test('arcs stay arcs: every land of a spur wheel is on a circle of its own radius, the bore on its own', () => {
    const spec = makeSpec({ teeth: 18 });
    const { tip, root } = findDiameters(spec);
    const radii = [...parseStep(writeForm({ ...plain, spec })).values()]
      .filter(({ type }) => type === 'CIRCLE')
      .map(({ parameters }) => Number(parameters[2]));
    const count = (radius: number): number => radii.filter((one) => Math.abs(one - radius) < 1e-9).length;
    expect([count(tip / 2), count(root / 2), count(2)]).toEqual([36, 36, 4]);
    expect(radii.length).toBe(76);
  });
});

/** Distance from one tooth's outline (and its neighbors'), sampled a hundred times finer than what is asked. */
function startDistance(spec: GearSpec): (x: number, y: number) => number {
  const { points, perTooth: n } = traceOutline(spec, 1e-5);
  const indices = Array.from(
    { length: 2 * n + 1 },
    (_, k) => (k - Math.floor(n / 2) + points.length) % (points.length / 2),
  );
  return (x, y) => {
    let least = Number.POSITIVE_INFINITY;
    for (let k = 0; k + 1 < indices.length; k++) {
      const [ax, ay] = [points[2 * indices[k]], points[2 * indices[k] + 1]];
      const [bx, by] = [points[2 * indices[k + 1]], points[2 * indices[k + 1] + 1]];
      const [dx, dy] = [bx - ax, by - ay];
      const share = Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy)));
      least = Math.min(least, Math.hypot(x - ax - share * dx, y - ay - share * dy));
    }
    return least;
  };
}

describe('STEP as text', () => {
  test('holds only letters that ISO 10303-21 allows, whatever the name holds', () => {
    expect(quoteText("Ann's\\ Ø 12")).toBe("'Ann''s\\\\ \\X2\\00D8\\X0\\ 12'");
    expect(quoteText('𝛼')).toBe("'\\X4\\0001D6FC\\X0\\'");
    expect(quoteText('\n\ud800')).toBe("'\\X2\\000A\\X0\\?'");
  });

  test('numbers have their point, no negative zero, and are refused where there is none', () => {
    const { number } = startStepText('');
    expect([1, -0.0000000001, 0.1, 1e-7, 12.5].map(number)).toEqual(['1.', '0.', '0.1', '0.0000001', '12.5']);
    expect(() => number(Number.NaN)).toThrow('NaN');
  });
});
