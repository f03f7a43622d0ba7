/** A hub pressed on a shaft: what it takes and what it holds. Stresses MPa, forces N, torque N mm. */
export interface PressFit {
  /** W = (D² + d²)/(D² − d²) */
  readonly shape: number;
  /** Pull along the rim of the bore, greatest there */
  readonly hoopStress: number;
  /** How far the bore's rim is stretched: i/d exactly on a rigid shaft, however thick the hub */
  readonly hoopStrain: number;
  /** Between hub and shaft */
  readonly pressure: number;
  /** What pulls the hub off along the shaft */
  readonly gripForce: number;
  /** What turns the hub on the shaft */
  readonly gripTorque: number;
}

/** Lengths mm, moduli MPa. */
export interface PressedHub {
  /** d */
  readonly shaftDiameter: number;
  /** D: of the boss, or the root circle where the teeth sit on the bore */
  readonly hubDiameter: number;
  /** i: shaft less bore, on the diameter */
  readonly interference: number;
  /** L: how much of the shaft the hub holds */
  readonly length: number;
  /** E of the hub: its creep modulus for what is left after that time */
  readonly modulus: number;
  readonly poisson: number;
  /** µ between hub and shaft */
  readonly friction: number;
  /** E of a solid shaft; left out: rigid, which a steel shaft in a plastic hub is */
  readonly shaftModulus?: number;
  readonly shaftPoisson?: number;
}

/**
 * A thick ring on a solid shaft, elastic (Lamé; Shigley eq. 3-56): p = (i/d)/((W + ν)/E + (1 − ν_s)/E_s), hoop stress
 * W p, pull-off π d L µ p, torque that times d/2. On a rigid shaft the strain at the bore is (W p + ν p)/E = i/d.
 *
 * Throws a plain Error unless 0 < d < D and E > 0; no interference gives zeros.
 *
 * @example d 0.375 in, D 0.650 in, i 0.002 in, E 450,000 psi, ν 0.4: W 1.998, 2,000 psi
 */
export function findPressFit(hub: PressedHub): PressFit {
  const { shaftDiameter: d, hubDiameter: D, modulus: E, poisson } = hub;
  if (!(d > 0 && D > d && E > 0)) throw new Error(`a hub of ${D} mm on a shaft of ${d} mm, modulus ${E}`);
  const shape = (D * D + d * d) / (D * D - d * d);
  const strain = Math.max(0, hub.interference) / d;
  const shaft =
    hub.shaftModulus === undefined ? 0 : (1 - (hub.shaftPoisson ?? steelPoisson)) / hub.shaftModulus;
  const pressure = strain / ((shape + poisson) / E + shaft);
  const gripForce = Math.PI * d * hub.length * hub.friction * pressure;
  return {
    shape,
    hoopStress: shape * pressure,
    hoopStrain: ((shape + poisson) * pressure) / E,
    pressure,
    gripForce,
    gripTorque: (gripForce * d) / 2,
  };
}

/** Steel; gear shafts are nothing else. */
const steelPoisson = 0.3;

/**
 * The largest interference, mm on the diameter, at which neither the strain nor the stress at the bore passes its
 * limit, on a rigid shaft: d times the lesser of strain limit and σ (W + ν)/(E W).
 *
 * @example d 4, D 8, σ 60, E 2400, ν 0.38: 0.123 mm by stress alone
 */
export function findLargestInterference(
  hub: Omit<PressedHub, 'interference' | 'length' | 'friction' | 'shaftModulus' | 'shaftPoisson'>,
  limits: { readonly strain: number; readonly stress: number },
): number {
  const { shape } = findPressFit({ ...hub, interference: 0, length: 0, friction: 0 });
  const byStress = (limits.stress * (shape + hub.poisson)) / (hub.modulus * shape);
  return hub.shaftDiameter * Math.min(limits.strain, byStress);
}
