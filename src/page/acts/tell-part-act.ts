import type { Slot } from '../state/slot.ts';
import type { SketchSubject } from './sketch-subject.ts';
import type { ActWords } from './tell-act.ts';
import { lostActs } from './tell-lost-act.ts';

const threePlaces = 'Take it at three places and type all three in the one field.';

/** The acts about bore, hub, posts, damage, caliper, and the questions before the first reading. */
export function tellPartAct(slot: Slot, subject: SketchSubject): ActWords | undefined {
  const act = partActs[slot.of];
  if (act && slot.of === 'face-width' && subject.kind === 'rack') {
    return {
      ...act,
      steps: [act.steps[0], 'Keep clear of burrs.', act.steps[2]],
      dont: 'Don’t squeeze: touch.',
    };
  }
  return act;
}

const partActs: Readonly<Record<string, ActWords>> = {
  ...lostActs,
  bore: {
    title: 'Bore by drill',
    trade: 'bore diameter',
    steps: [
      'Find the thickest drill whose plain shank goes in: it goes.',
      'Find the next thicker one that doesn’t go in: it stops.',
      'Measure both shanks with the caliper and type both.',
    ],
    dont: 'Don’t push: a forced shank widens plastic.',
    minutes: 4,
    notes: ['A bore with a flat: the round shank still finds its width.'],
  },
  'd-flat': {
    title: 'Flat of the D',
    trade: 'across the flat',
    steps: [
      'Find the flat on the shaft and wipe it.',
      'Lay one jaw on the flat, the other on the round side opposite.',
      threePlaces,
    ],
    dont: 'Don’t measure on a burr at the end of the shaft.',
    minutes: 2,
    notes: ['No shaft? Take it in the bore with the inside jaws.'],
  },
  shaft: {
    title: 'Shaft',
    trade: 'shaft diameter',
    steps: ['Wipe the shaft where the gear sat.', 'Close the flat jaws over it, square to it.', threePlaces],
    dont: 'Don’t measure where it is worn or rusty.',
    minutes: 2,
    notes: [],
  },
  'face-width': {
    title: 'Tooth width',
    trade: 'face width',
    steps: [
      'Close the jaws over both sides of the toothed rim.',
      'Keep clear of the hub and of burrs.',
      threePlaces,
    ],
    dont: 'Don’t take the hub with it.',
    minutes: 2,
    notes: [],
  },
  'hub-diameter': {
    title: 'Across the hub',
    trade: 'hub diameter',
    steps: [
      'Find the smooth round collar beside the teeth.',
      'Close the jaws over it, clear of the teeth.',
      threePlaces,
    ],
    dont: 'Don’t measure over a set-screw or a seam.',
    minutes: 2,
    notes: ['No hub? Say so: the gear is then a plain disc.'],
  },
  'overall-length': {
    title: 'Whole length',
    trade: 'overall length',
    steps: [
      'Lay one jaw flat on one end of the gear.',
      'Close the other on the far end, hub and all.',
      threePlaces,
    ],
    dont: 'Don’t measure over a burr or a flash of the mold.',
    minutes: 2,
    notes: [],
  },
  'face-offset': {
    title: 'Lower end to the teeth',
    trade: 'face offset',
    steps: [
      'Lay the gear with its marked face up.',
      'Stand the bar of the caliper on the lower hub and slide the rod down to the teeth.',
      threePlaces,
    ],
    dont: 'Don’t let the rod slip into a space between teeth.',
    minutes: 3,
    notes: ['No hub on the lower side? Then it is nothing: leave it out.'],
  },
  'center-distance': {
    title: 'Distance of the posts',
    trade: 'center distance',
    steps: [
      'Take both gears off and wipe the posts.',
      'Close the jaws over both posts, or open the inside jaws between them.',
      'Measure each post too and type all three: the page does the sum.',
    ],
    dont: 'Don’t bend the posts: hold the jaws low, close to the plate.',
    minutes: 5,
    notes: [],
  },
  'split-gap': {
    title: 'Gap of the split',
    steps: [
      'Take the gear off and let it lie as it will.',
      'At the rim, find the slip of card or feeler that just fits the gap.',
      'Measure that slip with the caliper and type it.',
    ],
    dont: 'Don’t push the split wider.',
    minutes: 3,
    notes: [],
  },
  zero: {
    title: 'Zero the caliper',
    trade: 'zero error',
    steps: [
      'Wipe both jaws with clean paper.',
      'Close them and hold them to the light: no gap may show.',
      'Read, and type what it shows, with its sign.',
    ],
    dont: 'Don’t press harder than when you measure.',
    minutes: 1,
    notes: ['Its smallest step is given or taken in every reading; that is allowed for.'],
  },
  'looks-like': {
    title: 'Which looks like yours?',
    steps: [
      'Wipe the gear and look at it from the front and from the side.',
      'Find the picture that is most like it.',
      'Touch that picture.',
    ],
    dont: 'Don’t mind its size or what it is made of.',
    minutes: 1,
    notes: [],
  },
  happened: {
    title: 'What happened to it?',
    steps: [
      'Turn it slowly under a bright light.',
      'Look for a crack from the hole, gaps in the rim, and thin teeth.',
      'Touch what you see; more than one is fine.',
    ],
    dont: 'Don’t glue anything yet.',
    minutes: 1,
    notes: [],
  },
};
