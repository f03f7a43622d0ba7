import type { Process } from '../../gear-library/processes.ts';
import type { GearSpec } from '../../src/involute/gear-spec.ts';
import { growTeeth } from '../../src/involute/grow-teeth.ts';
import { findSpan } from '../../src/involute/span.ts';
import { traceOutline } from '../../src/involute/trace-outline.ts';
import type { Random } from '../../src/numeric/random.ts';
import { findErrorPrior } from '../../src/readings/error-prior.ts';
import type { Reading } from '../../src/readings/wheel-evidence.ts';

/** A printed part with errors that are usual for its process, and what it truly is. */
export function drawMadePart(meant: GearSpec, bore: number, process: Process, random: Random) {
  const { mean, deviation, betweenPrints } = findErrorPrior(process);
  const draw = (k: number): number => mean[k] + deviation[k] * random.normal();
  const own = (): number => betweenPrints * random.normal();
  const scale = 1 + draw(0);
  const outside = draw(1) + own();
  const flanks = outside + draw(2) + own();
  const holes = draw(3) + own();
  return {
    spec: growTeeth(meant, { flanks, tips: outside, scale }),
    bore: bore * scale - 2 * holes,
  };
}

/** What a caliper with a zero of its own shows of it: the outline's own greatest width, two spans, inside jaws. */
export function readDrawnPart(
  part: { readonly spec: GearSpec; readonly bore: number },
  spans: readonly number[],
  random: Random,
): Reading[] {
  const zero = 0.02 * random.normal();
  const show = (true_: number, u: number): number =>
    Math.round((true_ + zero + Math.hypot(0.015, u) * random.normal()) * 100) / 100;
  return [
    { of: 'outside', jaws: 'rocked', mm: show(findGreatestWidth(part.spec), 0.02) },
    ...spans.map((teeth): Reading => ({ of: 'span', teeth, mm: show(findSpan(part.spec, teeth), 0.015) })),
    { of: 'bore', mm: show(part.bore - 0.02, 0.04) },
  ];
}

/** Between parallel jaws, whichever way they are turned: the farthest two points of the outline. */
function findGreatestWidth(spec: GearSpec): number {
  const { points, perTooth } = traceOutline(spec, 0.002);
  let greatest = 0;
  for (let i = 0; i < 2 * perTooth; i += 2)
    for (let k = 0; k < points.length; k += 2)
      greatest = Math.max(greatest, Math.hypot(points[k] - points[i], points[k + 1] - points[i + 1]));
  return greatest;
}
