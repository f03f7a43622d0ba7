import { gapUncertainty } from '../../gear-library/reading-uncertainty.ts';
import type { Random } from '../../src/numeric/random.ts';
import type { Damage, LengthReading, Reading, WheelEvidence } from '../../src/readings/wheel-evidence.ts';
import { type DrawnWheel, drawFrom, measureWheel, type ReadingSet } from './draw-wheels.ts';
import { openWorld } from './wheel-worlds.ts';

export const damages = [
  'worn',
  'split, taken open',
  'split, taken closed',
  'split, not said how taken',
  'teeth missing, count uncertain',
  'swollen or shrunk',
] as const;

/** Draws a wheel with a damage that the job states, and measures it as a person would with that damage. */
export function drawDamaged(
  damage: (typeof damages)[number],
  set: ReadingSet,
  random: Random,
): { wheel: DrawnWheel; evidence: WheelEvidence } {
  if (damage === 'worn') return draw([{ kind: 'worn' }], set, random);
  if (damage === 'swollen or shrunk') return draw([{ kind: 'swollen' }], set, random);
  const { wheel, evidence } = draw([], set, random);
  if (damage === 'teeth missing, count uncertain')
    return { wheel, evidence: breakTeeth(wheel, evidence, random) };
  const gap = 0.1 + 0.5 * random.uniform();
  const stated: Damage = { kind: 'split', gapMm: Math.max(0.02, gap + gapUncertainty.uMm * random.normal()) };
  const isSaid = damage !== 'split, not said how taken';
  const readings = evidence.readings.map((reading): Reading => {
    if (reading.of !== 'outside' && reading.of !== 'root') return reading;
    const taken = damage === 'split, taken open' || (!isSaid && random.uniform() < 0.5) ? 'open' : 'closed';
    const mm = Number((reading as LengthReading).mm) + (taken === 'open' ? gap / Math.PI : 0);
    return { ...(reading as LengthReading), mm, taken: isSaid ? taken : undefined };
  });
  return { wheel, evidence: { ...evidence, readings, damage: [stated] } };
}

function draw(
  damage: readonly Damage[],
  set: ReadingSet,
  random: Random,
): { wheel: DrawnWheel; evidence: WheelEvidence } {
  const wheel = drawFrom(openWorld(damage), random);
  return { wheel, evidence: { ...measureWheel(wheel, set, random, true), damage } };
}

/** Up to four teeth are gone; the guess of how many spans three counts and misses in one of eleven. */
function breakTeeth(wheel: DrawnWheel, evidence: WheelEvidence, random: Random): WheelEvidence {
  const gone = 1 + random.index([1, 1, 1, 1]);
  const left = wheel.teeth - gone;
  const place = random.index([1, 1, 1, 0.15, 0.15]);
  const least = Math.max(0, gone - [0, 1, 2, -1, 3][place]);
  const readings = evidence.readings.map(
    (reading): Reading =>
      reading.of === 'teeth' ? { of: 'teeth', left, missing: [least, least + 1, least + 2] } : reading,
  );
  return { ...evidence, readings, damage: [{ kind: 'teeth-missing', count: gone }] };
}
