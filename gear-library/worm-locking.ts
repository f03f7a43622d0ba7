/** From which lead angle a worm can be driven back by its wheel, as the trade reckons; judgments with their reasons. */
const source = 'common practice, no published source';

export const wormLocking = {
  /** Degrees. Friction of greased metal or plastic, 0.09 and more, has an angle of 5 degrees. */
  holdsBelow: { deg: 5, reason: 'lead angle below the friction angle of about 0.09', source },
  /** Degrees. Dry, rough or old-greased worms still hold here; shaken ones creep. */
  mayHoldBelow: { deg: 10, reason: 'friction at rest of up to about 0.17, dry or gummed', source },
} as const;
