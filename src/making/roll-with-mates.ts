import { Fail } from '../fail.ts';
import type { GearSpec } from '../involute/gear-spec.ts';
import { type RollingOptions, rollPair } from '../rolling/roll-pair.ts';
import type { RollingProof } from '../rolling/rolling-proof.ts';
import type { DesignMate } from './part-design.ts';

/** The part's teeth rolled with one mate. `closer`: by how much nearer than measured their shafts are taken, mm. */
export function rollWithMate(
  spec: GearSpec,
  mate: DesignMate & { readonly center: { readonly mm: number; readonly u: number } },
  closer = 0,
  options?: RollingOptions,
): RollingProof | undefined {
  const own = { spec };
  const at = options ? mate.center : { mm: mate.center.mm - closer, u: 0 };
  const effort = options ?? { distances: 1, seeksDistance: false };
  try {
    return mate.isDriven ? rollPair(own, mate.wheel, at, effort) : rollPair(mate.wheel, own, at, effort);
  } catch (error) {
    // Teeth without an outline, or two wheels that never mesh: nothing to roll, and no change stands on it.
    if (error instanceof Fail) return undefined;
    throw error;
  }
}

const ranks = { jams: 0, rough: 1, turns: 2 } as const;

/**
 * In which way a pair runs worse than before; undefined where it runs as well. A lower verdict or a new reason counts,
 * and where it jammed before, jamming deeper.
 */
export function findWorsening(
  before: RollingProof | undefined,
  after: RollingProof | undefined,
): string | undefined {
  if (!before) return undefined;
  if (!after) return 'its teeth would have no outline';
  if (ranks[after.verdict] < ranks[before.verdict]) return `it ${words[after.verdict]}`;
  if (after.verdict === 'jams' && after.mean.backlashLeast < before.mean.backlashLeast - sameLength) {
    return 'it jams deeper';
  }
  const known = new Set(before.reasons.map(({ kind }) => kind));
  const added = after.reasons.find(({ kind }) => !known.has(kind));
  return added && after.verdict === 'rough' ? `it runs rough: ${reasons[added.kind]}` : undefined;
}

/** What an outline's chords may hide, mm: twice a rolled pair's error at module 0.5. */
export const sameLength = 0.002;

const words = { jams: 'jams', rough: 'runs rough', turns: 'turns' } as const;

const reasons: Readonly<Record<RollingProof['reasons'][number]['kind'], string>> = {
  helix: 'the helices do not go together',
  jams: 'it jams',
  'jams-at-mean': 'it jams at the distance measured',
  'contact-ratio': 'there are moments in which no tooth drives',
  'transmission-error': 'its turning is uneven',
  backlash: 'hardly any backlash is left',
};
