import { createHash } from 'node:crypto';
import { materials } from '../../gear-library/materials.ts';
import { processes } from '../../gear-library/processes.ts';
import { encodePart } from '../../src/formats/encode-part.ts';
import { partFormats } from '../../src/formats/part-formats.ts';
import { encodeSheetPdf } from '../../src/formats/sheet-pdf.ts';
import { planMakingSheet } from '../../src/making/making-sheet.ts';
import { writeOrder } from '../../src/making/order-sheet.ts';
import { papers } from '../../src/making/sheet-page.ts';
import { buildSolid } from '../../src/solid/build-solid.ts';
import type { WheelForm } from '../../src/solid/wheel-form.ts';
import { readDxf } from '../formats/read-dxf.ts';
import { makeSpec } from '../involute/make-spec.ts';

const form: WheelForm = {
  spec: makeSpec({ teeth: 60 }),
  faceWidth: 6,
  bore: { shape: 'd', diameter: 6, flat: 5.2 },
  hubs: [{ side: 'bottom', diameter: 14, length: 3 }],
  chamfer: 0.3,
  others: [{ spec: makeSpec({ teeth: 15 }), faceWidth: 8, chamfer: 0, hubs: [], offset: 6 }],
};

/**
 * A compound part of 60 and 15 teeth in every format, solid and sheet included, held against the 2 seconds that a person
 * waits for a button; and the DXF beside the time that an independent reader takes for it. Time is never asserted.
 */
export async function run(brief: boolean): Promise<void> {
  const rounds = brief ? 1 : 12;
  console.log(`formats: compound part, 60 and 15 teeth, module 1, D bore, hub, chamfer, ${rounds} rounds`);
  const mesh = buildSolid(form, 0.002);
  const shape = { mesh, bodies: [{ form, x: 0 }] };
  let total = await measure('solid', rounds, async () => {
    const { positions } = buildSolid(form, 0.002);
    return new Uint8Array(positions.buffer);
  });
  for (const format of partFormats)
    total += await measure(format.key, rounds, async () =>
      encodePart(format, shape, 'wheel', { Title: 'wheel' }),
    );
  const [process] = processes;
  const [material] = materials;
  total += await measure('pdf', rounds, () => {
    const sheet = planMakingSheet({
      title: 'Bench',
      part: 'wheel',
      number: 'p1',
      isInvented: true,
      plan: { form, isTrial: false, warnings: [], about: { bore: [], helix: [] } },
      evidence: {
        id: 'wheel',
        kind: 'external',
        damage: [],
        readings: [],
        kit: {},
        machine: {},
        mates: [],
      },
      process,
      material,
    });
    return encodeSheetPdf(sheet, writeOrder(sheet, 3), papers.a4);
  });
  console.log(`  all of them: ${total.toFixed(0)} ms of 2000`);
  const dxf = partFormats.find(({ key }) => key === 'dxf');
  if (!dxf) throw new Error('no DXF');
  const bytes = encodePart(dxf, shape, 'wheel', {});
  await measure('an independent reader reads the DXF', rounds, async () => {
    readDxf(bytes);
    return bytes;
  });
}

/** Prints median and spread over all rounds; returns the median. */
async function measure(name: string, rounds: number, work: () => Promise<Uint8Array>): Promise<number> {
  const times: number[] = [];
  let bytes = new Uint8Array(0);
  for (let round = 0; round < rounds; round++) {
    const start = performance.now();
    bytes = Uint8Array.from(await work());
    times.push(performance.now() - start);
  }
  times.sort((a, b) => a - b);
  const median = times[times.length >> 1];
  const sum = createHash('sha256').update(bytes).digest('hex').slice(0, 12);
  console.log(
    `  ${name}: median ${median.toFixed(1)} ms (${times[0].toFixed(1)} to ${times[times.length - 1].toFixed(1)}), ${bytes.length} bytes, checksum ${sum}`,
  );
  return median;
}
