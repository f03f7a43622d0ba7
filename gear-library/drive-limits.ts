/** Where a drive's numbers stop making sense; judgments with their reasons. */
const source = 'common practice, no published source';

export const driveLimits = {
  /** mm. Two counts and a distance below this module are no mesh: a slip of the distance, or of a count. */
  finestModule: {
    mm: 0.05,
    reason: 'the finest of DIN 780-1 (value from memory)',
    source: 'DIN 780-1 (value from memory)',
  },
  coarsestModule: {
    mm: 50,
    reason: 'the coarsest of ISO 54 (value from memory)',
    source: 'ISO 54:1996 (value from memory)',
  },
  /** Relative. Base pitches nearer than this are one pitch under two names. */
  samePitch: { part: 0.001, reason: 'a hundredth of a tooth over ten pitches', source },
} as const;
