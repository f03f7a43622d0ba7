import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import Module from 'manifold-3d';
import { build } from 'vite';
import { describe, expect, test } from 'vitest';
import { encodePart } from '../../src/formats/encode-part.ts';
import { partFormats } from '../../src/formats/part-formats.ts';
import { sheetFormats } from '../../src/formats/sheet-formats.ts';
import { encodeStl } from '../../src/formats/stl.ts';
import { encodeThreeMf } from '../../src/formats/three-mf.ts';
import { writeModel } from '../../src/formats/write-model.ts';
import { checkMesh } from '../../src/solid/check-mesh.ts';
import type { Mesh } from '../../src/solid/mesh.ts';
import { makePlate } from './make-plate.ts';
import { readStep } from './read-step.ts';
import { readStl } from './read-stl.ts';
import { readThreeMf } from './read-three-mf.ts';

/** How each format's bytes become a mesh again; a format without a reader fails the tests below. */
const readers: Readonly<Record<string, (bytes: Uint8Array) => Mesh | Promise<Mesh>>> = {
  stl: (bytes) => readStl(bytes).mesh,
  '3mf': (bytes) => readThreeMf(bytes).mesh,
  step: async (bytes) => (await readStep(bytes, 0.004)).solids[0].mesh,
};

const shape = makePlate();
const plate = shape.mesh;

/** Files of the section alone: flat.test.ts reads them back. */
const flat: readonly string[] = ['dxf', 'svg'];
const solids = partFormats.filter(({ key }) => !flat.includes(key));

describe('every format', () => {
  test('has its own key, extension and reader', () => {
    expect(solids.map((one) => one.key).sort()).toEqual(Object.keys(readers).sort());
    expect(partFormats.length).toBe(solids.length + flat.length);
    expect(new Set(partFormats.map((one) => one.extension)).size).toBe(partFormats.length);
  });

  test('has its row in the README, the sheet too', () => {
    const rows = readFileSync('README.md', 'utf8')
      .split('\n')
      .filter((line) => line.startsWith('| '))
      .map((line) => line.split('|').map((cell) => cell.trim()));
    for (const { key, mediaType, what } of [...partFormats, ...sheetFormats])
      expect(rows.find((row) => row[1] === key)?.slice(1, 4)).toEqual([key, mediaType, what]);
  });

  test('says its media type and whom it is for in one sentence', () => {
    for (const { key, mediaType, forWhom } of partFormats) {
      const flatTypes: Readonly<Record<string, string>> = { dxf: 'image/vnd.dxf', svg: 'image/svg+xml' };
      expect(mediaType).toBe(flatTypes[key] ?? `model/${key}`);
      expect(forWhom).toMatch(/^For [^.]+\.$/);
    }
  });

  for (const format of solids) {
    const { key } = format;
    test(`${key}: what an independent reader finds is the closed part, as large as it was`, async () => {
      const mesh = await readers[key](encodePart(format, shape, 'plate', {}));
      // An exact format has no triangles: its reader makes its own, finer than these (step.test.ts has the volumes).
      const isExact = key === 'step';
      const [was, is] = [checkMesh(plate), checkMesh(mesh)];
      expect(is).toMatchObject({ isClosed: true, degenerate: 0, genus: was.genus });
      expect(Math.abs(is.volume / was.volume - 1)).toBeLessThan(isExact ? 1e-3 : 1e-6);
      if (isExact) return;
      expect(mesh.triangles.length).toBe(plate.triangles.length);
      const kernel = await Module();
      kernel.setup();
      const solid = new kernel.Manifold(
        new kernel.Mesh({
          numProp: 3,
          vertProperties: Float32Array.from(mesh.positions),
          triVerts: mesh.triangles,
        }),
      );
      expect(solid.genus()).toBe(was.genus);
      expect(Math.abs(solid.volume() / was.volume - 1)).toBeLessThan(1e-5);
      solid.delete();
    });
  }

  test('gives the same bytes on a second run, in another process and in other time zones', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'sparetooth-'));
    try {
      await build({
        configFile: false,
        logLevel: 'silent',
        ssr: { noExternal: true },
        build: {
          ssr: fileURLToPath(new URL('print-digests.ts', import.meta.url)),
          outDir: folder,
          rollupOptions: { output: { entryFileNames: 'print-digests.mjs' } },
        },
      });
      const runs = ['Asia/Kolkata', 'America/New_York'].map((zone) =>
        execFileSync(process.execPath, [join(folder, 'print-digests.mjs')], {
          env: { ...process.env, TZ: zone },
          encoding: 'utf8',
        })
          .trim()
          .split('\n'),
      );
      expect(runs.map((lines) => lines[0])).toEqual(['offset -330', 'offset 300']);
      expect(runs[0].length).toBe(1 + partFormats.length);
      for (const lines of runs) expect(lines.slice(1)).toEqual(runs[0].slice(1));
      for (const format of partFormats) {
        const encode = (): Uint8Array => encodePart(format, shape, 'a', { teeth: '12' });
        expect(encode()).toEqual(encode());
      }
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  });
});

describe('STL', () => {
  test('holds 50 bytes a triangle after 84, the corners in single precision and outward unit normals', () => {
    const bytes = encodeStl(plate, 'plate (mm)');
    expect(bytes.length).toBe(84 + (50 * plate.triangles.length) / 3);
    const { title, normals, mesh } = readStl(bytes);
    expect(title).toBe('plate (mm)');
    for (let k = 0; k < plate.triangles.length; k++) {
      for (let axis = 0; axis < 3; axis++) {
        const read = mesh.positions[3 * mesh.triangles[k] + axis];
        expect(read === Math.fround(plate.positions[3 * plate.triangles[k] + axis])).toBe(true);
      }
    }
    for (let k = 0; k < normals.length; k += 3) {
      const length = Math.hypot(normals[k], normals[k + 1], normals[k + 2]);
      if (!(Math.abs(length - 1) < 1e-6)) expect.fail(`normal ${k / 3} has length ${length}`);
    }
    // The part stands on z = 0 and its hub ends at z = 5: flat faces there look down and up.
    const looks = (z: number): Set<number> => {
      const found = new Set<number>();
      for (let t = 0; t < mesh.triangles.length; t += 3) {
        const corners = [0, 1, 2].map((k) => mesh.positions[3 * mesh.triangles[t + k] + 2]);
        if (corners.every((one) => one === z)) found.add(normals[t + 2]);
      }
      return found;
    };
    expect(looks(0)).toEqual(new Set([-1]));
    expect(looks(5)).toEqual(new Set([1]));
  });

  test('a title is never taken for a text file, cut at 80 and kept to ASCII', () => {
    expect(readStl(encodeStl(plate, 'solid wheel')).title).toBe(' solid wheel');
    expect(readStl(encodeStl(plate, 'Ritzel Ø 12')).title).toBe('Ritzel ? 12');
    expect(readStl(encodeStl(plate, 'x'.repeat(200))).title).toBe('x'.repeat(80));
  });

  test('corners that single precision merges leave no flat triangle and no hole', () => {
    // A pyramid far from the origin whose apex is an edge of a nanometer.
    const mesh: Mesh = {
      positions: Float64Array.from([
        90,
        0,
        0,
        91,
        0,
        0,
        91,
        1,
        0,
        90,
        1,
        0,
        90.5,
        0.5,
        1,
        90.5 + 1e-6,
        0.5,
        1,
      ]),
      triangles: Uint32Array.from([0, 2, 1, 0, 3, 2, 0, 1, 4, 1, 5, 4, 1, 2, 5, 2, 3, 5, 3, 4, 5, 3, 0, 4]),
    };
    expect(checkMesh(mesh)).toMatchObject({ isClosed: true, degenerate: 0, genus: 0 });
    const read = readStl(encodeStl(mesh, 'pyramid')).mesh;
    expect(read.triangles.length / 3).toBe(6);
    expect(checkMesh(read)).toMatchObject({ isClosed: true, degenerate: 0, genus: 0 });
  });
});

describe('3MF', () => {
  test('is millimeters, named, with the spec as metadata; whatever the text holds', () => {
    const name = 'wheel "A" <b> & c 𝛼';
    const metadata = { Title: name, Description: 'ünïcode\t2', teeth: '23', profileShift: '0.125' };
    const read = readThreeMf(encodeThreeMf(plate, name, metadata));
    expect(read.parts).toEqual(['[Content_Types].xml', '_rels/.rels', '3D/3dmodel.model']);
    expect(read.unit).toBe('millimeter');
    expect(read.name).toBe(name);
    expect(read.metadata).toEqual({
      Title: name,
      Description: 'ünïcode\t2',
      'st:teeth': '23',
      'st:profileShift': '0.125',
    });
  });

  test('characters that XML can not hold become ?, names that are not XML names are refused', () => {
    const read = readThreeMf(encodeThreeMf(plate, 'a\u0000b\ud800c', { Title: '\u0007' }));
    expect(read.name).toBe('a?b?c');
    expect(read.metadata.Title).toBe('?');
    expect(() => encodeThreeMf(plate, 'a', { 'not a name': '1' })).toThrow('metadata name');
  });

  test('keeps every triangle as it was and every coordinate to half a nanometer', () => {
    const { mesh } = readThreeMf(encodeThreeMf(plate, 'a', {}));
    expect(mesh.triangles).toEqual(plate.triangles);
    const off = mesh.positions.map((value, k) => Math.abs(value - plate.positions[k]));
    expect(Math.max(...off)).toBeLessThan(0.5001e-6);
  });

  test('coordinates are plain decimals: no exponent, no negative zero, no trailing zeros', () => {
    const encoder = (value: number): string => {
      const mesh = { positions: Float64Array.from([value, 0, -1e-9]), triangles: new Uint32Array(0) };
      const text = new TextDecoder().decode(writeModel('', mesh, ''));
      const [, x, , z] = text.match(/x="(.*)" y="(.*)" z="(.*)"/) ?? [];
      expect(z).toBe('0');
      return x;
    };
    expect(encoder(-12.5)).toBe('-12.5');
    expect(encoder(0.000001)).toBe('0.000001');
    expect(encoder(0.9999999)).toBe('1');
    expect(encoder(100)).toBe('100');
    fc.assert(
      fc.property(fc.double({ min: -999_999, max: 999_999, noNaN: true }), (value) => {
        const text = encoder(value);
        return (
          /^(0|-?(0|[1-9]\d*)(\.\d{0,5}[1-9])?)$/.test(text) && Math.abs(Number(text) - value) < 0.501e-6
        );
      }),
      { seed: 4, numRuns: 2000 },
    );
    for (const value of [Number.NaN, Number.POSITIVE_INFINITY, 1e6]) {
      expect(() => encoder(value)).toThrow('coordinate');
    }
  });
});
