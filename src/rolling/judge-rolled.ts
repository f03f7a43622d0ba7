import { rollingLimits } from '../../gear-library/rolling-limits.ts';
import type { GearSpec } from '../involute/gear-spec.ts';
import type { RolledAt, RollingReason } from './rolling-proof.ts';

/** The library's limits for one pair, in mm: those of the wheel with the finer teeth. */
export interface RollingLimits {
  readonly contactRatio: number;
  readonly transmissionError: number;
  readonly backlash: number;
  readonly finerModule: number;
}

export function findRollingLimits(driver: GearSpec, driven: GearSpec): RollingLimits {
  const pitchOf = (spec: GearSpec): number => (Math.PI * spec.module) / Math.cos(spec.helixAngle);
  const finerModule = Math.min(driver.module, driven.module);
  return {
    contactRatio: rollingLimits.contactRatio.least,
    transmissionError:
      rollingLimits.transmissionError.mostPitches * Math.min(pitchOf(driver), pitchOf(driven)),
    backlash: rollingLimits.backlash.leastModules * finerModule,
    finerModule,
  };
}

/** Why a pair that is free at a distance runs rough there; empty where it doesn't. */
export function listRoughness(rolled: RolledAt, limits: RollingLimits): RollingReason[] {
  const { contactRatio, transmissionError, backlashLeast } = rolled;
  const faults: RollingReason[] = [];
  if (contactRatio < limits.contactRatio) {
    faults.push({ kind: 'contact-ratio', value: contactRatio, limit: limits.contactRatio, unit: '' });
  }
  if (transmissionError > limits.transmissionError) {
    faults.push({
      kind: 'transmission-error',
      value: transmissionError,
      limit: limits.transmissionError,
      unit: 'mm',
    });
  }
  if (backlashLeast < limits.backlash) {
    faults.push({ kind: 'backlash', value: backlashLeast, limit: limits.backlash, unit: 'mm' });
  }
  return faults;
}

/** By how much a pair at a distance is within every limit, mm; below 0 where it is rough or jams. */
export function findSmoothness(one: RolledAt, limits: RollingLimits): number {
  return Math.min(
    (one.contactRatio - limits.contactRatio) * limits.finerModule,
    limits.transmissionError - one.transmissionError,
    one.backlashLeast - limits.backlash,
  );
}
