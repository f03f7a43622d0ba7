import type { GearSpec } from '../involute/gear-spec.ts';

/** One wheel as it lies on the bench: what it was made to be, and what has become of it. */
export interface RolledWheel {
  readonly spec: GearSpec;
  /** Gone from every tip, mm on the radius (of a rack: in height) */
  readonly tipWear?: number;
  /**
   * Teeth that are gone, counted from 0: of the driver counter-clockwise as it drives on, of the driven wheel the way
   * it is driven, tooth 0 of both beside the line of centers at the start (see `rollPair`)
   */
  readonly missing?: readonly number[];
  /** How far the pitch circle runs out in one turn, mm from low to high: twice the eccentricity; high at tooth 0 */
  readonly runout?: number;
}
