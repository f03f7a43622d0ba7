/**
 * How far each measuring act is off when the reading does not say: standard uncertainties in mm, instrument and
 * method apart, each with its reason. The caliper's zero error is shared by all its readings and comes on top.
 */
const judgment = 'common practice, no published source';

export const instruments = {
  'digital-0.01': { uMm: 0.015, reason: 'digital caliper, 0.01 mm steps, careful hands', source: judgment },
  'dial-0.02': { uMm: 0.02, reason: 'dial or vernier caliper, 0.02 mm steps', source: judgment },
  'vernier-0.05': { uMm: 0.03, reason: 'vernier caliper, 0.05 mm steps', source: judgment },
  micrometer: { uMm: 0.006, reason: 'micrometer, 0.01 mm', source: judgment },
} as const;

export type InstrumentKey = keyof typeof instruments;

export const defaultKit = {
  caliper: 'digital-0.01',
  zeroMm: 0,
  zeroUMm: 0.02,
  jawTipMm: 0.7,
  reason: 'an ordinary digital caliper',
  source: judgment,
} as const;

export interface MethodUncertainty {
  /** Added to the instrument's, root sum of squares. */
  readonly uMm: number;
  /** Expected reading minus true value, mm. */
  readonly biasMm: number;
  readonly reason: string;
  readonly source: string;
}

export const methods = {
  outside: { uMm: 0.02, biasMm: 0, reason: 'small soft wheel between flat jaws', source: judgment },
  root: {
    uMm: 0.05,
    biasMm: 0.02,
    reason: 'blades may not reach the bottom, so it tends to read large',
    source: judgment,
  },
  'tooth-depth': {
    uMm: 0.06,
    biasMm: -0.02,
    reason: 'a depth rod on a curved bottom tends to read small',
    source: judgment,
  },
  span: {
    uMm: 0.015,
    biasMm: 0,
    reason: 'flat jaws on two flanks, rocked to the smallest',
    source: judgment,
  },
  'over-pins': { uMm: 0.02, biasMm: 0, reason: 'two loose pins to hold', source: judgment },
  'center-distance': { uMm: 0.04, biasMm: 0, reason: 'over two posts, posts measured too', source: judgment },
  'rack-pitch': { uMm: 0.05, biasMm: 0, reason: 'edge to edge along a bar', source: judgment },
} as const satisfies Record<string, MethodUncertainty>;

/** Standard uncertainty of a helix angle inked and rolled, degrees. */
export const helixUncertaintyDeg = {
  deg: 1.5,
  reason: 'inked, rolled on paper, protractor',
  source: judgment,
};

/** Of a split's gap, mm, as measured with feelers or by eye. */
export const gapUncertainty = { uMm: 0.06, reason: 'feeler or graph paper at the rim', source: judgment };

/** A span whose reading states its total uncertainty still shares the zero error: at most this part of the total. */
export const sharedPartOfTotal = {
  part: 0.6,
  reason: 'a stated total leaves room for both',
  source: judgment,
};
