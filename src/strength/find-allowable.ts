import type { Material } from '../../gear-library/materials.ts';
import { fatigueSpan, flankFading, flowPressure, formulaSpread } from '../../gear-library/strength-limits.ts';
import { exactly, lesser, multiply, type Range } from './range.ts';

/** What a material bears, MPa, each as a range. */
export interface Allowable {
  /** Once, slowly: a stall */
  readonly once: Range;
  /** At the root, so many times, always bent one way */
  readonly root: Range;
  /** Hertz pressure on the flank, so many times */
  readonly flank: Range;
  /** What stands behind `root`: a formula for this plastic, or a share of its strength */
  readonly basis: 'formula' | 'share-of-strength';
}

export interface Duty {
  readonly temperatureC: number;
  /** How often each tooth is bent in the time it has to last, at least 1 */
  readonly cycles: number;
  /** Whether the tooth bends across printed layers: a wheel printed standing */
  readonly isAcrossLayers?: boolean;
}

/**
 * The allowable stresses of a material at a temperature and a number of cycles N.
 *
 * Once: its strength, falling in a straight line from 23 °C to nothing where it softens (common practice; the curves
 * of plastics lie near it). Root: POM 26 − 0.0025 T² + 400 N^−0.2, PA66 30 − 0.22 T + (4600 − 900 T^0.3) N^(−1/3),
 * T in °C (VDI 2736-2, value from memory, not confirmed; the guideline's factor of 2 for its test wheel is not used),
 * never above the strength; other materials their strength times (N/10³)^−k, with k such that the endurance ratio is
 * left at 10⁷. Flank: PA66 36 − 0.0012 T² + (1000 − 0.025 T²) N^−0.21 (VDI 2736-2, value from memory, not confirmed),
 * other materials 1.67 times the strength, fading by the root of that; wear decides there, and no formula here
 * foresees it.
 *
 * All zero from the softening temperature on.
 */
export function findAllowable(material: Material, duty: Duty): Allowable {
  const layers = duty.isAcrossLayers ? material.layerRatio : exactly(1);
  const once = multiply(material.strengthMpa, findWarmth(material, duty.temperatureC), layers);
  const faded = multiply(once, findFading(material, duty.cycles));
  const flow = multiply(exactly(flowPressure.timesYield), once);
  const pressed = multiply(flow, findFading(material, duty.cycles, flankFading.power));
  const formula = material.rootFatigue;
  if (formula === null) return { once, root: faded, flank: pressed, basis: 'share-of-strength' };
  const root = lesser(multiply(exactly(findFormula(formula, duty)), spread, layers), once);
  const flank =
    formula === 'pa66' ? lesser(multiply(exactly(findFlankFormula(duty)), spread), flow) : pressed;
  return { once, root, flank, basis: 'formula' };
}

const spread: Range = { value: 1, low: formulaSpread.low, high: formulaSpread.high };

/** Room temperature of data sheets, °C. */
const room = 23;

function findWarmth({ softeningC }: Material, temperatureC: number): Range {
  const left = (softening: number): number =>
    Math.max(0, Math.min(1, (softening - temperatureC) / (softening - room)));
  return { value: left(softeningC.value), low: left(softeningC.low), high: left(softeningC.high) };
}

function findFading({ enduranceRatio }: Material, cycles: number, power = 1): Range {
  const decades = Math.max(0, Math.log10(cycles / fatigueSpan.from));
  const part = (power * decades) / Math.log10(fatigueSpan.to / fatigueSpan.from);
  return {
    value: enduranceRatio.value ** part,
    low: enduranceRatio.low ** part,
    high: enduranceRatio.high ** part,
  };
}

function findFormula(key: 'pom' | 'pa66', { temperatureC, cycles }: Duty): number {
  // Below freezing the formulas say nothing; plastics get stronger there.
  const T = Math.max(0, temperatureC);
  const limit =
    key === 'pom'
      ? 26 - 0.0025 * T ** 2 + 400 * cycles ** -0.2
      : 30 - 0.22 * T + (4600 - 900 * T ** 0.3) * cycles ** (-1 / 3);
  return Math.max(0, limit);
}

function findFlankFormula({ temperatureC, cycles }: Duty): number {
  const T = Math.max(0, temperatureC);
  return Math.max(0, 36 - 0.0012 * T ** 2 + (1000 - 0.025 * T ** 2) * cycles ** -0.21);
}
