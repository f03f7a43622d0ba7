/**
 * What holds between wheels that mesh, and what a wheel that is lost may have been, before any reading. Judgments of
 * ours; each says its reason.
 */
const judgment = 'common practice, no published source';

/** How often two wheels that mesh have the same system, size and pressure angle. */
export const sharedPitch = {
  chance: 0.99,
  reason: 'mixed pitches run where base pitches are near (0.4 with 64 DP), and repairs of old mixed them',
  source: judgment,
};

/** How far the distance of mixed pitches lies from the sum of the reference radii, relative, one deviation. */
export const mixedDistance = {
  spread: 0.03,
  reason: 'whoever mixes pitches sets the posts by trial',
  source: judgment,
};

/** Teeth that a lost wheel may have had, all ratios alike. */
export const lostCount = {
  least: 6,
  greatest: 200,
  reason: 'what small machines hold, from motor pinions to the large wheels of timers',
  source: judgment,
};

/** How far the ratio of a drive may lie from the one wanted, where the job says no tolerance: percent. */
export const wantedTolerance = {
  percent: 1,
  reason: 'a stopwatch and a motor plate know a speed to about a per cent',
  source: judgment,
};

/** How often the speed that a person says was wanted is not what the drive was made for. */
export const wantedSlip = {
  chance: 0.03,
  reason: 'another speed step, another mains frequency, a roller measured over its rubber',
  source: judgment,
};
