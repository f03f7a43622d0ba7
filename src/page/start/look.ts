/** What a gear looks like to somebody who doesn't know gears. */
export type Look =
  | 'straight'
  | 'slanted-left'
  | 'slanted-right'
  | 'inside'
  | 'bar'
  | 'two-rows'
  | 'part-rim'
  | 'cone'
  | 'crown'
  | 'worm'
  | 'clock-teeth'
  | 'ratchet'
  | 'belt-wheel';

export interface LookWords {
  readonly look: Look;
  readonly word: string;
  readonly trade: string;
}

/** Looks that can be worked out. */
export const coveredLooks: readonly LookWords[] = [
  { look: 'straight', word: 'Straight teeth', trade: 'spur' },
  { look: 'slanted-left', word: 'Slanted left', trade: 'helical, left hand' },
  { look: 'slanted-right', word: 'Slanted right', trade: 'helical, right hand' },
  { look: 'inside', word: 'Teeth inside', trade: 'internal' },
  { look: 'bar', word: 'Straight bar', trade: 'rack' },
  { look: 'two-rows', word: 'Two rows, one piece', trade: 'compound' },
  { look: 'part-rim', word: 'Teeth on part of the rim', trade: 'sector' },
];

/** Looks that can't be worked out yet. */
export const uncoveredLooks: readonly LookWords[] = [
  { look: 'cone', word: 'Cone', trade: 'bevel' },
  { look: 'crown', word: 'Crown', trade: 'face gear' },
  { look: 'worm', word: 'Screw', trade: 'worm' },
  { look: 'clock-teeth', word: 'Clock teeth', trade: 'cycloidal' },
  { look: 'ratchet', word: 'Saw teeth', trade: 'ratchet' },
  { look: 'belt-wheel', word: 'Belt wheel', trade: 'toothed pulley' },
];
