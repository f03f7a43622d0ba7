import { findDiameters } from '../involute/gear-diameters.ts';
import type { GearSpec } from '../involute/gear-spec.ts';
import type { DriveMesh } from './drive-model.ts';
import type { DriveTrouble } from './drive-report.ts';

export interface Reach {
  readonly trouble: DriveTrouble;
  /** Tips in the bottoms; else the teeth don't reach each other */
  readonly isJam: boolean;
  /** So far beyond that there is nothing to look for: a slip of the distance or of a wheel */
  readonly isFar: boolean;
}

/** Too near for any position, or too far to touch, whatever the distance within twice its uncertainty; else undefined. */
export function checkReach(
  mesh: DriveMesh,
  mm: number,
  uMm: number,
  one: GearSpec,
  other: GearSpec,
): Reach | undefined {
  const { least, greatest } = findReach(one, other);
  const isNear = mm + 2 * uMm < least;
  if (!isNear && mm - 2 * uMm <= greatest) return undefined;
  const isRing = one.kind === 'internal' || other.kind === 'internal';
  // With a ring, a smaller distance draws the teeth apart.
  const isJam = isNear !== isRing;
  const beyond = isNear ? least - mm - 2 * uMm : mm - 2 * uMm - greatest;
  return {
    isJam,
    isFar: beyond > farModules * Math.min(one.module, other.module),
    trouble: {
      kind: 'cannot-mesh',
      about: [mesh.driver, mesh.driven],
      message: isJam
        ? `at ${tell(mm)} mm the tips of "${mesh.driver}" and "${mesh.driven}" run into the bottoms of each other's gaps: ` +
          `${isRing ? `${tell(greatest)} mm at most` : `${tell(least)} mm at least`}`
        : `at ${tell(mm)} mm "${mesh.driver}" and "${mesh.driven}" don't reach each other: ` +
          `${isRing ? `${tell(least)} mm at least` : `${tell(greatest)} mm at most`}`,
      remedy:
        'Measure the distance between the shafts again; else one of the two is another wheel than it is taken for.',
    },
  };
}

/** Distances between which tips reach each other and clear the roots, mm. */
function findReach(one: GearSpec, other: GearSpec): { readonly least: number; readonly greatest: number } {
  const rack = one.kind === 'rack' ? one : other.kind === 'rack' ? other : undefined;
  const ring = one.kind === 'internal' ? one : other.kind === 'internal' ? other : undefined;
  const wheel = one === rack || one === ring ? other : one;
  const round = findDiameters(wheel);
  if (rack) {
    const [addendum, dedendum] = [rack.addendum * rack.module, rack.dedendum * rack.module];
    return {
      least: Math.max(round.tip / 2 - dedendum, round.root / 2 + addendum),
      greatest: round.tip / 2 + addendum,
    };
  }
  const far = findDiameters(ring ?? other);
  if (ring) {
    return {
      least: (far.tip - round.tip) / 2,
      greatest: Math.min(far.root - round.tip, far.tip - round.root) / 2,
    };
  }
  return {
    least: Math.max(round.root + far.tip, round.tip + far.root) / 2,
    greatest: (round.tip + far.tip) / 2,
  };
}

/** Finer modules: a whole tooth's depth. */
const farModules = 2.25;

function tell(value: number): string {
  return String(Number(value.toPrecision(4)));
}
