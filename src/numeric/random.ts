/** A stream of numbers that a seed fixes: the same seed, the same stream on every machine. */
export interface Random {
  /** Uniform in [0, 1). */
  uniform(): number;
  /** Normal, mean 0, standard deviation 1. */
  normal(): number;
  /** An index drawn with chances in proportion to the weights (non-negative, not all 0). */
  index(weights: readonly number[]): number;
}

/**
 * Starts a stream from a 32-bit seed: Marsaglia's xorshift128 (Xorshift RNGs, J. Stat. Software 8(14), 2003),
 * its state filled by a multiplicative congruence. For draws in tests and benches, not for secrets.
 */
export function startRandom(seed: number): Random {
  let spare: number | undefined;
  const state = new Uint32Array(4);
  let fill = (seed ^ 0x9e3779b9) >>> 0 || 1;
  for (let i = 0; i < 4; i++) {
    fill = (Math.imul(fill ^ (fill >>> 15), 0x2c1b3c6d) + 0x297a2d39) >>> 0;
    state[i] = fill || 1;
  }
  const uniform = (): number => {
    const t = state[0] ^ (state[0] << 11);
    state[0] = state[1];
    state[1] = state[2];
    state[2] = state[3];
    state[3] = state[3] ^ (state[3] >>> 19) ^ (t ^ (t >>> 8));
    return state[3] / 4294967296;
  };
  for (let i = 0; i < 20; i++) uniform();
  return {
    uniform,
    normal() {
      // Box and Muller make two at a time.
      if (spare !== undefined) {
        const kept = spare;
        spare = undefined;
        return kept;
      }
      const radius = Math.sqrt(-2 * Math.log(1 - uniform()));
      const angle = 2 * Math.PI * uniform();
      spare = radius * Math.sin(angle);
      return radius * Math.cos(angle);
    },
    index(weights) {
      let total = 0;
      for (const weight of weights) total += weight;
      let left = uniform() * total;
      for (let i = 0; i < weights.length; i++) {
        left -= weights[i];
        if (left < 0) return i;
      }
      return weights.length - 1;
    },
  };
}
