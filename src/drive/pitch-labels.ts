import { freeModule } from '../../gear-library/priors.ts';
import { listPitches, listRacks, type PitchHypothesis } from '../readings/pitch-prior.ts';
import type { Machine } from '../readings/wheel-evidence.ts';

/**
 * What wheels that mesh have in common: system, size and pressure angle as one number, so that wheels weighed apart
 * can be held against each other. A free module is cut into narrow steps, for the mate has the very same one.
 */
export interface PitchLabels {
  /** The label of a listed size; of a free one, of the step that holds the module. */
  find(pitch: PitchHypothesis, angleDeg: number, module: number): number;
  describe(label: number): PitchLabel;
  /** Every label that has a chance before any reading. */
  listAll(): readonly number[];
}

export interface PitchLabel {
  readonly system: PitchHypothesis['system'];
  readonly size: number;
  /** mm, of a free step its middle */
  readonly module: number;
  /** α_n, rad */
  readonly pressureAngle: number;
  readonly pressureAngleDeg: number;
  readonly isFree: boolean;
  /** Chance before any reading; those of all labels sum to 1 */
  readonly prior: number;
}

/** Relative width of a step: two deviations of shrinkage, so that a module known that well lies in two or three. */
export const freeStep = 0.003;

export function createLabels(machine: Machine): PitchLabels {
  const racks = listRacks(machine);
  const pitches = listPitches(machine);
  const angles = [...new Set(racks.map((rack) => rack.pressureAngleDeg))];
  const shares = new Map(
    (['module', 'diametral-pitch', 'circular-pitch', 'free'] as const).map((system) => [
      system,
      angles.map((angle) =>
        racks.reduce(
          (sum, rack) => (rack.pressureAngleDeg === angle ? sum + Math.exp(rack.logWeight[system]) : sum),
          0,
        ),
      ),
    ]),
  );
  const angleShare = (system: PitchHypothesis['system'], angle: number): number =>
    shares.get(system)?.[angle] ?? 0;
  const listed = pitches.filter((pitch) => pitch.system !== 'free');
  const indices = new Map(listed.map((pitch, i) => [`${pitch.system} ${pitch.size}`, i]));
  const steps = Math.ceil(Math.log(freeModule.greatest / freeModule.least) / freeStep) + 2 * margin;
  const free = pitches.reduce(
    (sum, pitch) => (pitch.system === 'free' ? sum + Math.exp(pitch.logWeight) : sum),
    0,
  );
  const known = new Map<number, PitchLabel>();
  const build = (label: number): PitchLabel => {
    const angle = label % angles.length;
    const index = Math.floor(label / angles.length);
    const pressureAngleDeg = angles[angle];
    const shared = { pressureAngleDeg, pressureAngle: (pressureAngleDeg * Math.PI) / 180 };
    if (index < listed.length) {
      const { module, logWeight, system, size } = listed[index];
      const prior = Math.exp(logWeight) * angleShare(system, angle);
      return { ...shared, system, size, module, isFree: false, prior };
    }
    const step = index - listed.length - margin;
    const module = freeModule.least * Math.exp((step + 0.5) * freeStep);
    return {
      ...shared,
      system: 'free',
      size: module,
      module,
      isFree: true,
      prior: (free / (steps - 2 * margin)) * angleShare('free', angle),
    };
  };
  let all: readonly number[] | undefined;
  const describe = (label: number): PitchLabel => {
    let found = known.get(label);
    if (!found) {
      found = build(label);
      known.set(label, found);
    }
    return found;
  };
  return {
    describe,
    listAll() {
      all ??= Array.from({ length: (listed.length + steps) * angles.length }, (_, label) => label).filter(
        (label) => describe(label).prior > 0,
      );
      return all;
    },
    find(pitch, angleDeg, module) {
      const angle = angles.indexOf(angleDeg);
      const step = Math.floor(Math.log(module / freeModule.least) / freeStep) + margin;
      const index =
        pitch.system === 'free'
          ? listed.length + Math.min(steps - 1, Math.max(0, step))
          : (indices.get(`${pitch.system} ${pitch.size}`) ?? 0);
      return index * angles.length + angle;
    },
  };
}

/** Steps beyond either end, where the bells of the last cells reach. */
const margin = 15;
