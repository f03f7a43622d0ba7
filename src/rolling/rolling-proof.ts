/**
 * How a pair runs, proven by rolling its outlines. Lengths mm, angles rad; a rack's angles are its travel in mm. Where
 * no tooth holds the driven wheel, backlash, transmission error and the curve's bounds are infinite.
 */
export interface RollingProof {
  readonly verdict: 'turns' | 'rough' | 'jams';
  /** Why it is not `turns`; empty where it turns */
  readonly reasons: readonly RollingReason[];
  /** At the mean distance */
  readonly mean: RolledAt;
  /** From mean − 2u to mean + 2u, ascending, the mean among them; one alone where u is 0 */
  readonly range: readonly RolledAt[];
  /**
   * The first distance from the mean on at which the pair is free, and at which it turns smoothly, going the way that
   * draws teeth apart (larger; for an internal pair smaller); undefined where there is none before the teeth part, or
   * where it was not looked for
   */
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
  /**
   * Teeth sharing the load as they really do, mean over the cycle, driving flank in contact; where base pitches differ,
   * the pitches for which a pair could drive on its flanks were it alone
   */
  readonly contactRatio: number;
  /** Circumferential, at the driven wheel's working circle a z2/(z1+z2); least below 0 where it jams */
  readonly backlashLeast: number;
  readonly backlashGreatest: number;
  /** Driver's angle, of its tooth 0 from the line of centers, where the backlash is least */
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

/**
 * The driven wheel's free interval, as its angle less the nominal one, over the cycle; counted in the way that it is
 * driven, so that `low` has the driving flanks in contact. A long cycle keeps up to 8192 of its steps.
 */
export interface RollingCurve {
  readonly driverAngle: Float64Array;
  readonly low: Float64Array;
  readonly high: Float64Array;
}
