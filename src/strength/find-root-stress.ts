import { findDiameters } from '../involute/gear-diameters.ts';
import type { GearSpec } from '../involute/gear-spec.ts';
import type { FormFactor } from './find-form-factor.ts';

/** Bending stress at the root of one tooth, MPa. */
export interface RootStress {
  /** F_t/(b m_n) Y_F Y_S with helix and rim: the stress in the fillet */
  readonly local: number;
  /** F_t/(b m_n Y): Lewis's stress, without the fillet's concentration */
  readonly lewis: number;
  /** Y_β: what a helix takes off */
  readonly helixFactor: number;
  /** Y_B: what a thin rim adds */
  readonly rimFactor: number;
}

/**
 * The root stress of a tooth that carries the whole tangential force, elastic.
 *
 * ISO 6336-3:2006 (value from memory): σ_F0 = F_t/(b m_n) Y_F Y_S Y_β Y_B, with Y_β = 1 − ε_β β/120° (ε_β to 1, β to
 * 30°); Y_B = 1.6 ln(2.242 h_t/s_R) for a rim s_R thinner than 1.2 tooth depths h_t (as AGMA's K_B; Shigley eq.
 * 14-40), internal 1.15 ln(8.324 m_n/s_R) below 3.5 modules. Dynamic and load factors are left to the caller.
 *
 * @param force tangential, at the reference circle, transverse, N
 * @param faceWidth mm
 * @param rim solid under the tooth, mm; left out: none to speak of missing. Below half a tooth depth (internal: 1.75
 * modules) the formula ends; the rim is taken at that limit and the true stress is higher.
 */
export function findRootStress(
  spec: GearSpec,
  factor: FormFactor,
  force: number,
  faceWidth: number,
  rim?: number,
): RootStress {
  const { module } = spec;
  const lewis = force / (faceWidth * module * factor.lewis.Y);
  const helixFactor = findHelixFactor(spec, faceWidth);
  const rimFactor = rim === undefined ? 1 : findRimFactor(spec, rim);
  const nominal = (force / (faceWidth * module)) * factor.tangent.form * factor.tangent.concentration;
  return { local: nominal * helixFactor * rimFactor, lewis, helixFactor, rimFactor };
}

/** From this many tooth depths on a rim bears teeth as solid ground does (ISO 6336-3, Y_B; AGMA, K_B). */
export const solidRim = 1.2;

function findHelixFactor({ helixAngle, module }: GearSpec, faceWidth: number): number {
  const helix = Math.abs(helixAngle);
  const overlap = (faceWidth * Math.sin(helix)) / (Math.PI * module);
  return 1 - (Math.min(1, overlap) * Math.min(helix, Math.PI / 6)) / ((2 * Math.PI) / 3);
}

function findRimFactor(spec: GearSpec, rim: number): number {
  if (spec.kind === 'internal') {
    const inModules = Math.max(1.75, rim / spec.module);
    return inModules >= 3.5 ? 1 : 1.15 * Math.log(8.324 / inModules);
  }
  const inDepths = Math.max(0.5, rim / findToothDepth(spec));
  return inDepths >= solidRim ? 1 : 1.6 * Math.log(2.242 / inDepths);
}

function findToothDepth(spec: GearSpec): number {
  if (spec.kind === 'rack') return (spec.addendum + spec.dedendum) * spec.module;
  const { tip, root } = findDiameters(spec);
  return Math.abs(tip - root) / 2;
}
