/**
 * One wheel's toothing, fully described: the input of every function in this room. Lengths in mm, angles in
 * radians; module, angle, shift, coefficients, root radius and thinning are those of the normal section
 * (ISO 21771). For internal wheels, teeth and diameters are positive and a positive shift moves the profile away
 * from the axis, as on external wheels; ISO 21771 with negative z has the other sign. Said here, once.
 */
export interface GearSpec {
  readonly kind: 'external' | 'internal' | 'rack';
  /** z, positive. For a rack: how many teeth it is long. */
  readonly teeth: number;
  /** m_n, mm */
  readonly module: number;
  /** α_n, rad */
  readonly pressureAngle: number;
  /** β, rad, positive = right hand */
  readonly helixAngle: number;
  /** x */
  readonly profileShift: number;
  /** h_a, coefficient of the generating rack (ISO 53 h_aP*) */
  readonly addendum: number;
  /** h_f, coefficient (ISO 53 h_fP*) */
  readonly dedendum: number;
  /** ρ_f, coefficient (ISO 53 ρ_fP*): radius of the rack's tip corner */
  readonly rootRadius: number;
  /** Arc taken off each tooth, both flanks together, at the reference circle, mm. Root and tip unchanged. */
  readonly thinning: number;
  /** d_a in mm where it is not d + 2 m (h_a + x) (minus for internal): shortened or trimmed tips. */
  readonly tipDiameter: number | null;
  /** Teeth of the shaper that cut an internal wheel; absent: a circular fillet stands for the trochoid. */
  readonly cutterTeeth?: number;
}
