import type { Criterion } from './check-tooth.ts';
import type { BreakExplanation } from './explain-break.ts';
import type { Range } from './range.ts';

/** Whether a wheel lasts in a material and process, as plain data: mm, N, N mm, MPa, °C. */
export interface StrengthReport {
  readonly wheel: string;
  /** Key and name of the material */
  readonly material: { readonly key: string; readonly name: string };
  readonly process: { readonly key: string; readonly name: string };
  /** Whether the process makes gears of that material */
  readonly isMaterialOfProcess: boolean;
  readonly temperatureC: number;
  readonly cycles: number;
  readonly faceWidthMm: number;
  /** Whether the wheel's identity is not sure enough to rely on */
  readonly isTrial: boolean;
  readonly load: {
    readonly runningN: number | null;
    readonly stallN: number | null;
    /** Where the stall's load comes from: given, or the job's motor on this wheel's own shaft */
    readonly stallFrom: 'given' | 'motor' | null;
  };
  /** What gives way first; null where no load is known and nothing else stands against it */
  readonly governs: Criterion['kind'] | 'heat' | 'wall' | null;
  readonly verdict: 'holds' | 'doubtful' | 'fails' | 'no-load';
  readonly criteria: readonly {
    readonly kind: Criterion['kind'];
    readonly stressMpa: Range;
    readonly allowableMpa: Range;
    readonly margin: Range;
    readonly wanted: number;
    readonly verdict: Criterion['verdict'];
  }[];
  /** What the teeth bear with the wanted margins: force, and on a wheel torque */
  readonly carries: {
    readonly runningN: Range;
    readonly stallN: Range;
    readonly runningNmm: Range | null;
    readonly stallNmm: Range | null;
  };
  readonly form: {
    readonly lewisY: number;
    /** y = Y/π, as tables by the circular pitch have it */
    readonly lewisYOverPi: number;
    readonly atTip: IsoFactors;
    readonly atSingleContact: IsoFactors | null;
    readonly contactRatio: number | null;
    readonly filletRadiusMm: number;
    /** False: the corner is sharper than the formula for Y_S was made for, and the true stress is higher */
    readonly isConcentrationInRange: boolean;
  };
  readonly allowableBasis: 'formula' | 'share-of-strength';
  readonly heat: {
    readonly warmLimitC: Range;
    readonly leftC: number;
    readonly verdict: 'cool' | 'near' | 'too-warm';
  };
  /** Between root and bore, or root and rim; null without a bore */
  readonly wall: {
    readonly mm: number;
    readonly inToothDepths: number;
    readonly leastMm: number;
    readonly verdict: 'enough' | 'thin' | 'too-thin';
  } | null;
  /** What pressing it on its shaft would allow; null where no shaft is known */
  readonly press: {
    readonly shaftMm: number;
    readonly hubMm: number;
    readonly lengthMm: number;
    readonly lastingMm: number;
    readonly onceMm: number;
    readonly boreScatterMm: number;
    readonly isWithinReach: boolean;
    readonly freshHoopMpa: number;
    readonly laterHoopMpa: number;
    readonly freshGripNmm: number;
    readonly laterGripNmm: number;
  } | null;
  /** Of a broken wheel: why, the likeliest first */
  readonly broke: readonly BreakExplanation[];
  /** How far the old wheel's bore was stretched on its shaft, from a split's gap or from both diameters */
  readonly stretch: {
    readonly strain: number;
    readonly from: 'gap' | 'shaft-and-bore';
    /** What pulled round its bore, as pressed and after 1,000 h; null where material or shaft isn't known */
    readonly hoop: {
      readonly lastingStrain: number;
      readonly freshMpa: number;
      readonly laterMpa: number;
      readonly strengthMpa: number;
    } | null;
  } | null;
  readonly mate: {
    readonly id: string;
    readonly material: string;
    /** The mate's material isn't known: steel, the hardest on this wheel's flanks, stands for it */
    readonly isMaterialAssumed: boolean;
  } | null;
}

interface IsoFactors {
  readonly formFactor: number;
  readonly stressCorrection: number;
}
