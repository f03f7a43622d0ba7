import type { Material } from '../../gear-library/materials.ts';
import type { Process } from '../../gear-library/processes.ts';
import { findLargestInterference, findPressFit, type PressFit } from './press-fit.ts';

/** Whether a hub could be pressed on its shaft for good, and what that would hold. Lengths mm. */
export interface PressFitPlan {
  /** Largest interference on the diameter that lasts for years */
  readonly lasting: number;
  /** Largest that is survived on the day */
  readonly once: number;
  /** At the lasting interference, as pressed */
  readonly fresh: PressFit;
  /** The same after 1,000 h: what creep leaves */
  readonly afterCreep: PressFit;
  /** How far bores of this process scatter on the diameter, from the tightest to the widest */
  readonly boreScatter: number;
  /** Whether the process and a caliper can meet so narrow a fit at all */
  readonly isWithinReach: boolean;
}

/**
 * What a press fit of a hub on a steel shaft allows. The strain at the bore is interference over diameter whatever
 * the hub, so the lasting strain of the material sets the lasting interference; the strength left after 1,000 h with
 * the creep modulus sets the other limit. A fit is within reach where bore scatter and a caliper's error of 0.02 mm
 * together are less than that interference.
 *
 * @example POM, shaft 2, hub 4: 0.02 mm lasting; grip of 32 N mm after 1,000 h over 4 mm with friction 0.2
 */
export function planPressFit(
  material: Material,
  process: Process,
  hub: { readonly shaftDiameter: number; readonly hubDiameter: number; readonly length: number },
): PressFitPlan {
  const at = {
    ...hub,
    poisson: material.poisson.value,
    friction: material.friction.value,
    // Beside plastic a steel shaft is rigid; beside metal it gives as the hub does.
    ...(material.family === 'metal' ? { shaftModulus: steelModulus } : {}),
  };
  const soft = material.modulusAfter1000hMpa.value;
  const strength = material.strengthMpa.value;
  const lasting = findLargestInterference(
    { ...at, modulus: soft },
    // Half the strength: what plastics bear for years under steady pull (common practice).
    { strain: material.lastingStrain.value, stress: strength / 2 },
  );
  const once = hub.shaftDiameter * material.onceStrain.value;
  const scatter = process.holeErrorMm[1] - process.holeErrorMm[0];
  return {
    lasting,
    once,
    fresh: findPressFit({ ...at, interference: lasting, modulus: material.modulusMpa.value }),
    afterCreep: findPressFit({ ...at, interference: lasting, modulus: soft }),
    boreScatter: scatter,
    isWithinReach: Math.hypot(scatter, caliperError) < lasting,
  };
}

/** E of steel, MPa; handbooks give 200,000 to 212,000. */
const steelModulus = 206_000;

/** What a good caliper is off by on a shaft, mm; common practice. */
const caliperError = 0.02;
