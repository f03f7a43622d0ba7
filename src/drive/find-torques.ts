import { toNumber } from '../numeric/rational.ts';
import type { DriveMotor } from './drive-model.ts';
import { shaftNode } from './list-relations.ts';
import type { Speed } from './solve-speeds.ts';

export interface ShaftTorque {
  readonly stall: number | undefined;
  readonly running: number | undefined;
}

/**
 * What each shaft could pull if all of the motor's power went to it and nothing were lost: T = T_motor |ω_motor/ω|,
 * N mm. Shafts that stand still or whose speed isn't known are left out.
 */
export function findTorques(
  motor: DriveMotor | undefined,
  from: string | undefined,
  speeds: ReadonlyMap<string, Speed>,
  shafts: readonly string[],
): ReadonlyMap<string, ShaftTorque> {
  const torques = new Map<string, ShaftTorque>();
  const shaft = motor?.shaft ?? from;
  const own = shaft === undefined ? undefined : speeds.get(shaftNode(shaft));
  if (!motor || !own) return torques;
  const given = Math.abs(toNumber(own.turns));
  for (const one of shafts) {
    const speed = speeds.get(shaftNode(one));
    const turns = speed ? Math.abs(toNumber(speed.turns)) : 0;
    if (turns === 0) continue;
    const times = (torque: number | undefined): number | undefined =>
      torque === undefined ? undefined : (torque * given) / turns;
    torques.set(one, { stall: times(motor.stallTorqueNmm), running: times(motor.torqueNmm) });
  }
  return torques;
}
