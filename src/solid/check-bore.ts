import { Fail } from '../fail.ts';
import type { Bore } from './wheel-form.ts';

// A D whose flat reaches the axis, and a slot where two flats were meant, are slips rather than wishes.
const leastD = 0.55;
const leastDoubleD = 0.1;

/** Throws Fail `bad-geometry` for a bore that no shaft has, naming a value that works. */
export function checkBore(bore: Bore): void {
  if (bore.shape === 'none') return;
  const size = bore.shape === 'hex' || bore.shape === 'square' ? bore.acrossFlats : bore.diameter;
  if (!(size > 0)) throw refuse('bore', `a bore of ${size} mm`, 'Give a bore above 0.');
  if (bore.shape === 'd' && !(bore.flat > bore.diameter * leastD && bore.flat < bore.diameter)) {
    throw refuse(
      'bore.flat',
      `${bore.flat} mm from the flat to the wall of a ${bore.diameter} mm bore`,
      `Give more than ${ceil(bore.diameter * leastD)} and less than ${bore.diameter} mm.`,
    );
  }
  if (bore.shape === 'double-d' && !(bore.flat > bore.diameter * leastDoubleD && bore.flat < bore.diameter)) {
    throw refuse(
      'bore.flat',
      `${bore.flat} mm across the flats of a ${bore.diameter} mm bore`,
      `Give more than ${ceil(bore.diameter * leastDoubleD)} and less than ${bore.diameter} mm.`,
    );
  }
  if (bore.shape === 'spline' || bore.shape === 'knurl') checkGrooves(bore);
}

/** Grooves go no deeper than a third of the radius, and what stands between them stays. */
function checkGrooves(bore: Extract<Bore, { readonly shape: 'spline' | 'knurl' }>): void {
  const { count, depth, diameter } = bore;
  if (!(Number.isInteger(count) && count >= 3 && count <= mostGrooves)) {
    throw refuse('bore.count', `a bore with ${count} grooves`, `Give 3 to ${mostGrooves} of them.`);
  }
  const deepest = diameter / 6;
  if (!(depth > 0 && depth <= deepest)) {
    throw refuse(
      'bore.depth',
      `grooves ${depth} mm deep in a bore of ${diameter} mm`,
      `Give more than 0 and at most ${floor(deepest)} mm.`,
    );
  }
  if (bore.shape === 'knurl') return;
  const widest = 0.9 * (diameter - 2 * depth) * Math.sin(Math.PI / count);
  if (!(bore.width > 0 && bore.width <= widest)) {
    throw refuse(
      'bore.width',
      `${count} grooves ${bore.width} mm wide in a bore of ${diameter} mm`,
      `Give more than 0 and at most ${floor(widest)} mm.`,
    );
  }
}

/** Finer than any knurled shaft of a small machine (common practice, no published source). */
const mostGrooves = 120;

function ceil(value: number): string {
  return (Math.ceil(value * 100) / 100).toFixed(2);
}

function floor(value: number): string {
  return (Math.floor(value * 100) / 100).toFixed(2);
}

function refuse(field: string, what: string, remedy: string): Fail {
  return new Fail('bad-geometry', field, `${what} makes no solid`, remedy);
}
