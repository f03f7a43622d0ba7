/** How a pair runs, proven by rolling its outlines. Lengths mm, angles rad. */
export interface RollingProof {
  readonly verdict: 'turns' | 'rough' | 'jams';
  /** Why it is not `turns`; empty where it turns */
  readonly reasons: readonly RollingReason[];
  /** At the mean distance */
  readonly mean: RolledAt;
  /** From mean − 2u to mean + 2u, ascending, the mean among them; one alone where u is 0 */
  readonly range: readonly RolledAt[];
  /** The smallest distance at or beyond the mean at which the pair is free and from which it turns smoothly; undefined
   * where there is none before the teeth part */
  readonly freeFrom: number | undefined;
  readonly smoothFrom: number | undefined;
  /** Relative positions that the proof went through: one pitch where teeth are alike, else every meeting of teeth */
  readonly cycle: { readonly of: 'one-pitch' | 'all-meetings'; readonly meetings: number };
}

export interface RollingReason {
  readonly kind: 'helix' | 'jams' | 'jams-at-mean' | 'contact-ratio' | 'transmission-error' | 'backlash';
  /** What was found and what the limit is, in `unit` */
  readonly value: number;
  readonly limit: number;
  readonly unit: 'mm' | 'rad' | '';
}

/** The pair at one distance. */
export interface RolledAt {
  readonly centerDistance: number;
  /** Whether a path of free positions runs through the whole cycle */
  readonly isFree: boolean;
  /** α_wt from base pitch; undefined where base circles leave none or base pitches differ */
  readonly workingPressureAngle: number | undefined;
  /** Teeth sharing the load as they really do, mean over the cycle, driving flank in contact */
  readonly contactRatio: number;
  /** Circumferential, at the driven wheel's working circle a z2/(z1+z2); least below 0 where it jams */
  readonly backlashLeast: number;
  readonly backlashGreatest: number;
  /** Driver's angle where the backlash is least */
  readonly tightestAt: number;
  /** Peak to peak, at the driven wheel's working circle; the worse of both flanks */
  readonly transmissionError: number;
  readonly interference: readonly Interference[];
  readonly curve: RollingCurve;
}

/** Where outlines press into each other however the driven wheel is turned. */
export interface Interference {
  readonly where: 'tip-root' | 'tip-fillet' | 'both-flanks';
  /** By how much the free interval is negative, mm at the driven wheel's working circle */
  readonly depth: number;
  readonly driverAngle: number;
  /** Where it touches, mm, driver's axis at the origin, driven's axis at (a, 0) */
  readonly x: number;
  readonly y: number;
}

/** The driven wheel's free interval, as its angle less the nominal one, over the cycle. */
export interface RollingCurve {
  readonly driverAngle: Float64Array;
  readonly low: Float64Array;
  readonly high: Float64Array;
}
