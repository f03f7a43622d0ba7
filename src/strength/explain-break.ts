import type { Material } from '../../gear-library/materials.ts';
import {
  type BreakCause,
  breakCauses,
  type DamageSeen,
  growthLeaning,
  heatLeaning,
  type Leaning,
  likelihoodWords,
  marginLeaning,
  strainLeaning,
} from '../../gear-library/strength-limits.ts';

/** What is known of a wheel that broke. Whatever is left out speaks for no cause. */
export interface BrokenWheel {
  readonly seen: readonly DamageSeen[];
  readonly material?: Material | undefined;
  /** Strain at the bore: from the gap of a split, or interference over shaft diameter */
  readonly boreStrain?: number | undefined;
  /** Allowable over stress of the old wheel, in a stall and running */
  readonly stallMargin?: number | undefined;
  readonly runningMargin?: number | undefined;
  readonly temperatureC?: number | undefined;
}

export interface BreakExplanation {
  readonly cause: BreakCause['key'];
  readonly name: string;
  readonly probability: number;
  /** The probability in words */
  readonly likelihood: string;
  /** The figure that spoke for or against it, if any did */
  readonly figure?:
    | {
        readonly of:
          | 'strain-over-lasting'
          | 'stall-margin'
          | 'running-margin'
          | 'degrees-left'
          | 'growth-percent';
        readonly value: number;
      }
    | undefined;
  /** What tells it from the others */
  readonly test: string;
}

/**
 * Why a wheel broke, the likeliest first: each cause's share among broken small gears, times how often it shows the
 * damage that is seen, times what the figures say (the factors are judgments, in gear-library). The chances sum to 1
 * over the causes held; a cause that is not among them can't be found. Empty where no damage is seen: then nothing
 * broke.
 */
export function explainBreak(wheel: BrokenWheel): readonly BreakExplanation[] {
  if (wheel.seen.length === 0) return [];
  const weighed = breakCauses.map((cause) => {
    const figure = findFigure(cause.key, wheel);
    const shown = wheel.seen.reduce((product, seen) => product * cause.shows[seen], 1);
    const ground = wheel.material?.family === 'metal' ? cause.onMetal : 1;
    return { cause, figure, weight: cause.weight * shown * ground * (figure?.factor ?? 1) };
  });
  const sum = weighed.reduce((total, { weight }) => total + weight, 0);
  return weighed
    .map(({ cause, figure, weight }): BreakExplanation => {
      const probability = weight / sum;
      return {
        cause: cause.key,
        name: cause.name,
        probability,
        likelihood: likelihoodWords.find(({ atLeast }) => probability >= atLeast)?.words ?? 'unlikely',
        figure: figure && { of: figure.of, value: figure.value },
        test: cause.test,
      };
    })
    .sort((a, b) => b.probability - a.probability);
}

interface WeighedFigure {
  readonly of: NonNullable<BreakExplanation['figure']>['of'];
  readonly value: number;
  readonly factor: number;
}

/** The one figure that speaks for or against a cause, where it is known. */
function findFigure(key: BreakCause['key'], wheel: BrokenWheel): WeighedFigure | undefined {
  const { material, boreStrain, temperatureC } = wheel;
  const weigh = (
    of: WeighedFigure['of'],
    value: number | undefined,
    steps: readonly Leaning[],
  ): WeighedFigure | undefined => {
    const factor = value === undefined ? undefined : steps.find(({ below }) => value < below)?.factor;
    return value === undefined || factor === undefined ? undefined : { of, value, factor };
  };
  switch (key) {
    case 'hub-split':
      return weigh(
        'strain-over-lasting',
        material && boreStrain !== undefined ? boreStrain / material.lastingStrain.value : undefined,
        strainLeaning,
      );
    case 'stall-shock':
      return weigh('stall-margin', wheel.stallMargin, marginLeaning);
    case 'fatigue':
      return weigh('running-margin', wheel.runningMargin, marginLeaning);
    case 'heat':
      return weigh(
        'degrees-left',
        material && temperatureC !== undefined ? material.warmLimitC.value - temperatureC : undefined,
        heatLeaning,
      );
    case 'swelling':
      return weigh('growth-percent', material?.growthSoakedPercent.value, growthLeaning);
    case 'wear':
    case 'breakdown':
      return undefined;
  }
}
