import type { ActWords } from './tell-act.ts';

/** The acts that look for a gear that is no longer there. */
export const lostActs: Readonly<Record<string, ActWords>> = {
  crumbs: {
    title: 'Crumbs of it',
    steps: [
      'Search the grease, the bottom of the housing and the gaps of its neighbors.',
      'Wash what you find and lay it under good light.',
      'One tooth is enough: its depth is that of all of them.',
    ],
    dont: 'Don’t wipe the grease away before you have looked through it.',
    minutes: 5,
    notes: ['Keep every crumb: two that fit together tell more than one.'],
  },
  post: {
    title: 'Its post',
    trade: 'fixed pin or shaft',
    steps: [
      'Wipe the post and close the flat jaws over it.',
      'Measure from the plate to its end, or to the groove of a clip.',
      'Look for a groove, a flat or a split end: that is what held the gear.',
    ],
    dont: 'Don’t measure where it is worn.',
    minutes: 2,
    notes: [],
  },
  neighbors: {
    title: 'Which neighbors it touched',
    steps: [
      'Look at the gears around its post under light from the side.',
      'Teeth that ran against it are bright or worn; others are dull.',
      'Say of each bright one that the lost gear ran against it.',
    ],
    dont: 'Don’t go by distance alone: gears may pass over each other.',
    minutes: 2,
    notes: ['At what height the tracks lie says how thick it was and where it sat.'],
  },
  rows: {
    title: 'One row of teeth, or two',
    trade: 'compound gear',
    steps: [
      'Compare the tracks on its neighbors: at one height, or at two.',
      'Two heights mean two rows on one piece, each with its own count.',
      'Then add the second row as a gear of its own, one piece with this one.',
    ],
    dont: 'Don’t take a worn edge for a second track.',
    minutes: 1,
    notes: [],
  },
  'speed-wanted': {
    title: 'The speed that was wanted',
    steps: [
      'Look in a manual or on the type plate, or think how it ran.',
      'Turns, seconds, or the speed of paper, tape or belt: whichever you know.',
      'Type it with how near it must be.',
    ],
    dont: 'Don’t guess: “don’t know” is a good answer.',
    minutes: 2,
    notes: [],
  },
};
