import { toModule } from '../../gear-library/pitch-series.ts';
import type { StockRange } from '../../gear-library/stock-ranges.ts';
import type { StockPart } from './stock-part.ts';

/**
 * The concrete gears of a range: every count with every bore, and small counts both plain and shifted where both are
 * met. Full-depth teeth after ISO 53. Bores that would leave no wall under the teeth are left out.
 *
 * @example a range of 28 counts and 2 bores, 5 counts of them shifted too: 66 parts less those without a wall
 */
export function listRangeParts(range: StockRange): StockPart[] {
  const module = toModule(range.system, range.size);
  const parts: StockPart[] = [];
  for (const teeth of range.teeth) {
    const shifts = teeth <= range.shiftedUpTo ? [0, range.profileShift] : [0];
    for (const shift of shifts) {
      for (const bore of range.boresMm) {
        if (bore > module * (teeth - 2 * rootDepth + 2 * shift) - 2 * leastWall) continue;
        parts.push({
          id: `${range.key}:${teeth}:${bore}${shift === 0 ? '' : ':fat'}`,
          from: 'range',
          name: range.name,
          teeth,
          sizes: [{ system: range.system, size: range.size, module }],
          isGuess: false,
          moduleUncertainty: 0,
          pressureAngle: (range.pressureAngleDeg * Math.PI) / 180,
          isAngleAssumed: false,
          profileShift: shift,
          tipDiameter: null,
          bore: { shape: 'round', diameter: bore },
          faceWidth: range.faceWidthMm,
          material: range.material,
          kept: '',
          price: '',
          count: range.pack,
          notes: '',
        });
      }
    }
  }
  return parts;
}

/** h_f of ISO 53 A. */
const rootDepth = 1.25;
/** mm: nothing thinner is sold, since it would split as it is pressed on. */
const leastWall = 0.3;
