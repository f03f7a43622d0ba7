import { createRequire } from 'node:module';
import Module from 'manifold-3d';
import { encodePart } from '../../src/formats/encode-part.ts';
import { partFormats } from '../../src/formats/part-formats.ts';
import { traceOutline } from '../../src/involute/trace-outline.ts';
import { buildExact } from '../../src/solid/build-exact.ts';
import { buildSolid } from '../../src/solid/build-solid.ts';
import { checkMesh } from '../../src/solid/check-mesh.ts';
import type { WheelForm } from '../../src/solid/wheel-form.ts';
import { makeSpec, rad } from '../involute/make-spec.ts';

const chordError = 0.002;

/** A wheel of 60 teeth with a pinion over it, chamfered, with web and lightening holes. */
function compound(helix: number): WheelForm {
  return {
    spec: makeSpec({ teeth: 60, helixAngle: rad(helix) }),
    faceWidth: 10,
    bore: { shape: 'd', diameter: 8, flat: 7 },
    hubs: [{ side: 'top', diameter: 13.5, length: 2 }],
    chamfer: 0.2,
    web: { thickness: 4, hubDiameter: 20, rimDiameter: 52 },
    holes: { count: 6, diameter: 10, circleDiameter: 36 },
    others: [
      {
        spec: makeSpec({ teeth: 16, profileShift: 0.2, helixAngle: rad(-helix) }),
        faceWidth: 12,
        chamfer: 0.2,
        hubs: [],
        offset: 12,
      },
    ],
  };
}

/**
 * A 60-tooth compound part in every format, beside independent kernels on the same solid: one extrudes the same
 * outlines and joins and cuts them, the other reads the STEP file. Time is never asserted.
 */
export async function run(brief: boolean): Promise<void> {
  const rounds = brief ? 2 : 40;
  console.log(
    `step: 60 and 16 teeth in one part, module 1, 24 mm long, web, 6 holes, D bore, chamfers, chord error 2 µm, ${rounds} rounds each`,
  );
  for (const [name, helix] of [
    ['straight', 0],
    ['slanted 15°', 15],
  ] as const) {
    const form = compound(helix);
    const body = buildExact(form);
    console.log(
      `  ${name}, boundary: ${measure(rounds, () => buildExact(form))}, ${body.faces.length} faces, ${body.edges.length} edges`,
    );
    const mesh = buildSolid(form, chordError);
    const report = checkMesh(mesh);
    if (!report.isClosed || report.degenerate > 0 || report.genus !== 7)
      throw new Error(`${name} is not whole`);
    console.log(
      `  ${name}, triangles: ${measure(rounds, () => buildSolid(form, chordError))}, ${mesh.triangles.length / 3} of them, checksum ${report.volume.toFixed(4)} mm³`,
    );
    const shape = { mesh, bodies: [{ form, x: 0 }] };
    for (const format of partFormats) {
      let bytes = new Uint8Array(0);
      const time = measure(rounds, () => {
        bytes = Uint8Array.from(encodePart(format, shape, 'part', {}));
      });
      console.log(
        `  ${name}, ${format.key} file: ${time}, ${(bytes.length / 1000).toFixed(0)} kB, checksum ${sumOf(bytes)}`,
      );
      if (format.key === 'step' && !brief) await readBack(name, bytes);
    }
  }
  await joinByKernel(rounds);
}

/** FNV-1a over the bytes. */
function sumOf(bytes: Uint8Array): string {
  let sum = 0x811c9dc5;
  for (const byte of bytes) sum = Math.imul(sum ^ byte, 0x01000193);
  return (sum >>> 0).toString(16);
}

async function readBack(name: string, bytes: Uint8Array): Promise<void> {
  const reader = await (
    createRequire(import.meta.url)('occt-import-js') as () => Promise<{
      ReadStepFile: (bytes: Uint8Array, options: object) => { success: boolean };
    }>
  )();
  const options = {
    linearUnit: 'millimeter',
    linearDeflectionType: 'absolute_value',
    linearDeflection: 0.02,
  };
  const time = measure(3, () => {
    if (!reader.ReadStepFile(bytes, { ...options, angularDeflection: 0.5 }).success)
      throw new Error('not read');
  });
  console.log(`  ${name}: a kernel reads that file and meshes it at 20 µm: ${time}`);
}

/** The straight part without its chamfers, by extrusion, union and difference. */
async function joinByKernel(rounds: number): Promise<void> {
  const kernel = await Module();
  kernel.setup();
  const form = compound(0);
  const outlineOf = (spec: WheelForm['spec']): [number, number][] => {
    const { points } = traceOutline(spec, chordError);
    return Array.from({ length: points.length / 2 }, (_, k) => [points[2 * k], points[2 * k + 1]]);
  };
  let volume = 0;
  const time = measure(Math.min(rounds, 10), () => {
    const extrude = (points: [number, number][], height: number, z: number) =>
      new kernel.CrossSection([points]).extrude(height).translate([0, 0, z]);
    const disk = (diameter: number, height: number, x: number, y: number, z: number) =>
      kernel.Manifold.cylinder(height, diameter / 2, diameter / 2, 128).translate([x, y, z]);
    let part = extrude(outlineOf(form.spec), 10, 0);
    for (const z of [0, 7]) part = part.subtract(disk(52, 3, 0, 0, z).subtract(disk(20, 3, 0, 0, z)));
    part = part.add(disk(13.5, 2, 0, 0, 10));
    for (const other of form.others ?? []) part = part.add(extrude(outlineOf(other.spec), 12, 12));
    for (let k = 0; k < 6; k++)
      part = part.subtract(
        disk(10, 4, 18 * Math.cos((k * Math.PI) / 3), 18 * Math.sin((k * Math.PI) / 3), 3),
      );
    part = part.subtract(
      disk(8, 24, 0, 0, 0).subtract(kernel.Manifold.cube([8, 16, 24]).translate([3, -8, 0])),
    );
    volume = part.volume();
    part.delete();
  });
  console.log(
    `  a kernel builds the straight part, no chamfers, triangles alone: ${time}, checksum ${volume.toFixed(4)} mm³`,
  );
}

/** Median and spread over all rounds but the first fifth, which warm up. */
function measure(rounds: number, work: () => void): string {
  const times: number[] = [];
  for (let round = 0; round < rounds; round++) {
    const start = performance.now();
    work();
    times.push(performance.now() - start);
  }
  const warm = times.slice(Math.floor(rounds / 5)).sort((a, b) => a - b);
  const at = (part: number): string => warm[Math.floor(part * (warm.length - 1))].toFixed(1);
  return `median ${at(0.5)} ms (least ${at(0)}, a tenth ${at(0.1)} to ${at(0.9)})`;
}
