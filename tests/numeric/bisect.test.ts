import fc from 'fast-check';
import { expect, test } from 'vitest';
import { bisect } from '../../src/numeric/bisect.ts';

test('closes in on the end of a condition from either side, and knows on which side it holds', () => {
  fc.assert(
    fc.property(fc.double({ min: 0.001, max: 999, noNaN: true }), fc.boolean(), (edge, isRising) => {
      const holds = (value: number): boolean => (isRising ? value < edge : value > edge);
      const { holding, failing } = isRising ? bisect(holds, 0, 1000) : bisect(holds, 1000, 0);
      expect(holds(holding)).toBe(true);
      expect(holds(failing)).toBe(false);
      expect(Math.abs(holding - failing)).toBeLessThanOrEqual(Math.abs(edge) * 2 ** -52 + 1000 * 2 ** -60);
    }),
    { seed: 5, numRuns: 300 },
  );
});
