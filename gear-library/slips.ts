/** How often a reading is simply not what it says, by kind; judgments of ours, with their reasons. */
const judgment = 'common practice, no published source';

export const slipRates = {
  wrong: {
    chance: 0.005,
    reason: 'wrong feature, damaged place, a line of the list mixed up',
    source: judgment,
  },
  askew: {
    chance: 0.005,
    reason: 'jaws askew or on a burr, a scale misread by a few lines',
    source: judgment,
  },
  'inch-for-mm': { chance: 0.002, reason: 'the caliper was left in inches', source: judgment },
  'radius-for-diameter': { chance: 0.001, reason: 'half the width written down', source: judgment },
  'swapped-digits': { chance: 0.002, reason: 'two neighboring digits exchanged', source: judgment },
  'lost-decimal': { chance: 0.002, reason: 'decimal point lost or one place off', source: judgment },
  'zero-not-set': { chance: 0.003, reason: 'all readings of one caliper off alike', source: judgment },
  'count-off-by-one': { chance: 0.01, reason: 'first tooth counted twice or not at all', source: judgment },
} as const;

/** A plain wrong reading lies this far around the right one: a part of its size, one standard deviation. */
export const wrongSpread = {
  part: 0.1,
  least: 0.25,
  reason: 'wrong features are of the same order of size',
  source: judgment,
};

/** A reading taken askew lies a few tenths off whatever its size, one standard deviation, mm. */
export const askewSpread = {
  uMm: 0.35,
  reason: 'a burr, a tilt or a few lines of a scale are tenths of a millimeter',
  source: judgment,
};

/** Spread of a zero that was not set, mm. */
export const zeroSlipSpread = {
  uMm: 0.25,
  reason: 'burr, dirt or a zero pressed half open',
  source: judgment,
};
