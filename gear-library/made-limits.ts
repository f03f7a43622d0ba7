/**
 * From when a made part is tight, loose or warped. Judgment, not a standard: what a repaired small machine puts up with.
 * In modules where the tooth is meant.
 */
const judgment = 'judgment, not a standard: common practice, no published source';

export const madeLimits = {
  /** Without a mate to roll it against: tooth thickness less what was meant, modules */
  thickest: {
    modules: 0.04,
    reason: 'a pair has 0.03 to 0.06 of the module as backlash; more would take all of it',
    source: judgment,
  },
  thinnest: {
    modules: -0.12,
    reason: 'twice the usual backlash more: it clatters when the load turns',
    source: judgment,
  },
  /** Tip diameter less what was meant, modules */
  tallest: {
    modules: 0.25,
    reason: 'half of the usual clearance of a quarter of the module at the root of the mate',
    source: judgment,
  },
  shortest: {
    modules: -0.5,
    reason: 'a quarter of the tooth height above the pitch circle is gone: flanks part too soon',
    source: judgment,
  },
  /** Bore less shaft, mm */
  leastClearance: { mm: 0, reason: 'it would have to be pressed on', source: judgment },
  mostClearance: {
    mm: 0.2,
    reason: 'slip fits to be bonded are made 0.05 to 0.15 wide; more sits off center',
    source: judgment,
  },
  /** Where the shaft is not known: bore less what was meant, mm */
  narrowest: { mm: -0.05, reason: 'a reamer or a drill turned by hand still takes it off', source: judgment },
  widest: { mm: 0.15, reason: 'more sits off center by half of it', source: judgment },
  /** Takings that differ: mm, or so much of the module, whichever is more */
  outOfRound: {
    mm: 0.08,
    modules: 0.15,
    reason: 'distance to the mate changes by a quarter of it either way, which the usual backlash takes up',
    source: judgment,
  },
} as const;
