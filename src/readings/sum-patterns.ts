import { createPartFiller } from './linear-part.ts';
import type { WeighedPart } from './weigh-space.ts';
import type { WeighedWheel } from './weigh-wheel.ts';

/** Probability of each slip pattern of a weighed wheel, with other weights for its parts than its readings alone give. */
export function sumPatterns(weighed: WeighedWheel, parts: readonly WeighedPart[]): Float64Array {
  const { space, lengths, weigher } = weighed;
  const patterns = new Float64Array(weigher.patterns.length);
  const filler = createPartFiller(weigher, space, lengths);
  const best = Math.max(...parts.map((part) => part.log));
  for (const part of parts) {
    const weight = Math.exp(part.log - best);
    if (weight < negligible) continue;
    filler.chooseTooth(part);
    filler.chooseTipLoss(part.tipLoss);
    filler.fillCovariance();
    const log = weigher.weigh();
    for (let k = 0; k < weigher.countLive(); k++) {
      const pattern = weigher.live[k];
      patterns[pattern] += weight * Math.exp(weigher.logPatterns[pattern] - log);
    }
  }
  const total = patterns.reduce((sum, one) => sum + one, 0);
  return patterns.map((one) => one / (total || 1));
}

/** Parts below that share of the likeliest can't move a slip's odds. */
const negligible = 1e-4;
