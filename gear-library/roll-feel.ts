/**
 * How a trial gear rolled by hand against the mate feels, by how far the base pitches differ (relative). Shares of
 * smooth, bumps and jams; judgments of ours, since nobody has published such a test.
 */
const source = 'common practice, no published source';

export const rollFeel = [
  {
    upTo: 0.004,
    smooth: 0.88,
    bumps: 0.1,
    jams: 0.02,
    reason: 'within what teeth of small wheels stray anyway',
    source,
  },
  {
    upTo: 0.012,
    smooth: 0.7,
    bumps: 0.26,
    jams: 0.04,
    reason: 'runs, a careful hand feels the entry of each tooth',
    source,
  },
  { upTo: 0.03, smooth: 0.3, bumps: 0.55, jams: 0.15, reason: 'teeth knock at entry', source },
  {
    upTo: 0.06,
    smooth: 0.08,
    bumps: 0.5,
    jams: 0.42,
    reason: 'a tooth out of step within one contact',
    source,
  },
  {
    upTo: Number.POSITIVE_INFINITY,
    smooth: 0.02,
    bumps: 0.23,
    jams: 0.75,
    reason: 'another pitch altogether',
    source,
  },
] as const;
