import { expect, test } from 'vitest';
import { startRandom } from '../../src/numeric/random.ts';
import { identifyWheel } from '../../src/readings/identify-wheel.ts';
import { drawFrom, measureWheel } from '../bench/draw-wheels.ts';
import { nameSize, weighByBruteForce } from '../bench/weigh-by-brute-force.ts';
import { openWorld } from '../bench/wheel-worlds.ts';

const world = openWorld();

test.each(['outside', 'outside+root', 'two spans', 'all four'] as const)(
  'what is said of a wheel from %s is what brute force over the same model says',
  (set) => {
    const random = startRandom(31);
    const own = startRandom(32);
    let apart = 0;
    const draws = 6;
    for (let i = 0; i < draws; i++) {
      const evidence = measureWheel(drawFrom(world, random), set, random, true);
      const [lead] = identifyWheel(evidence).pitch;
      const exact = weighByBruteForce(evidence, world, own);
      const there = exact.chances.get(nameSize(lead.system, lead.size)) ?? 0;
      // Linearizing costs a few hundredths at worst; brute force has its own error, which it states.
      expect(Math.abs(lead.probability - there)).toBeLessThan(0.06 + 4 * exact.error);
      apart += Math.abs(lead.probability - there) / draws;
    }
    expect(apart).toBeLessThan(0.025);
  },
);
