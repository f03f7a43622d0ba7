import Module from 'manifold-3d';
import { traceOutline } from '../../src/involute/trace-outline.ts';
import { buildSolid } from '../../src/solid/build-solid.ts';
import { checkMesh } from '../../src/solid/check-mesh.ts';
import type { WheelForm } from '../../src/solid/wheel-form.ts';
import { makeSpec, rad } from '../involute/make-spec.ts';

const chordError = 0.002;
const cases: readonly [string, number, number][] = [
  ['spur', 0, 0],
  ['spur, chamfered', 0, 0.2],
  ['helical 15°, chamfered', 15, 0.2],
];

/** A 100-tooth solid, outline included, beside an independent kernel extruding the same outline. Time is never asserted. */
export async function run(brief: boolean): Promise<void> {
  const kernel = await Module();
  kernel.setup();
  const rounds = brief ? 2 : 60;
  console.log(`solid: 100 teeth, module 1, 10 mm wide, 20 mm bore, chord error 2 µm, ${rounds} rounds each`);
  for (const [name, helix, chamfer] of cases) {
    const form: WheelForm = {
      spec: makeSpec({ teeth: 100, helixAngle: rad(helix) }),
      faceWidth: 10,
      bore: { shape: 'round', diameter: 20 },
      hubs: [],
      chamfer,
    };
    const report = checkMesh(buildSolid(form, chordError));
    if (!report.isClosed || report.degenerate > 0 || report.genus !== 1)
      throw new Error(`${name} is not whole`);
    let triangles = 0;
    const own = measure(rounds, () => {
      triangles = buildSolid(form, chordError).triangles.length / 3;
    });
    console.log(`  ${name}: ${own}, ${triangles} triangles, checksum ${report.volume.toFixed(6)} mm³`);
  }
  const { points } = traceOutline(makeSpec({ teeth: 100 }), chordError);
  const contour: [number, number][] = [];
  for (let k = 0; k < points.length; k += 2) contour.push([points[k], points[k + 1]]);
  let volume = 0;
  const kernels = measure(rounds, () => {
    const section = new kernel.CrossSection([contour]);
    const solid = section.extrude(10);
    volume = solid.volume();
    solid.delete();
    section.delete();
  });
  console.log(
    `  the kernel extrudes that spur outline, no bore: ${kernels}, checksum ${volume.toFixed(4)} mm³`,
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
