/**
 * Where a pair that is free to turn counts as rough. Judgment, not a standard: standards grade how exactly a wheel was
 * cut, not what a repaired machine can live with.
 */
const source = 'judgment, not a standard: common practice, no published source';

export const rollingLimits = {
  contactRatio: {
    least: 1,
    reason: 'below it there are moments in which no pair of flanks drives, and a corner scrapes',
    source,
  },
  transmissionError: {
    /** Of the circular pitch of the finer wheel */
    mostPitches: 0.01,
    reason:
      'a step that a hand feels and an ear hears: 0.016 mm at module 0.5, about what good small wheels stray',
    source,
  },
  backlash: {
    /** Of the module of the finer wheel */
    leastModules: 0.02,
    reason: 'less is taken up by dirt, warmth and runout: 0.01 mm at module 0.5',
    source,
  },
  helix: {
    /** Between the two helices at the base cylinder, rad */
    most: 0.035,
    reason:
      'two degrees over a face of ten modules take a third of a module, more than any backlash; less is within reading error',
    source,
  },
} as const;
