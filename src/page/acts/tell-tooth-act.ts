import type { Slot } from '../state/slot.ts';
import { isOdd, type SketchSubject } from './sketch-subject.ts';
import type { ActWords } from './tell-act.ts';

const threePlaces = 'Take it at three places and type all three in the one field.';
const touch = 'Don’t squeeze: touch. Soft teeth give way.';

/** The acts that say something about the teeth; undefined for any other slot. */
export function tellToothAct(slot: Slot, subject: SketchSubject): ActWords | undefined {
  switch (slot.of) {
    case 'teeth':
      return tellTeeth(subject);
    case 'outside':
      return tellOutside(subject);
    case 'root':
      return tellRoot(subject);
    case 'tooth-depth':
      return {
        title: 'Tooth depth',
        trade: 'whole depth',
        steps: [
          'Stand the end of the caliper’s bar across two tips.',
          'Slide the thin rod down to the bottom of the space between them.',
          'Take it in three spaces and type all three in the one field.',
        ],
        dont:
          subject.kind === 'rack'
            ? 'Don’t tilt: the rod stands square to the bar.'
            : 'Don’t tilt: the rod points at the middle of the gear.',
        minutes: 3,
        notes: [],
      };
    case 'span':
      return tellSpan(slot, subject);
    case 'over-pins':
      return tellPins(slot, subject);
    case 'helix-angle':
      return {
        title: 'Slant of the teeth',
        trade: 'helix angle',
        steps: [
          'Ink the tips with a felt pen and lay a ruler on paper.',
          'Roll the gear once along the ruler: every tooth leaves a line.',
          'Measure how far the lines lean from square to the ruler, in degrees.',
        ],
        dont: 'Don’t press: a gear that slides draws a wrong slant.',
        minutes: 5,
        notes: ['Gear standing with its hole upright: lines that rise to the right are right-hand.'],
      };
    case 'rack-pitch':
      return tellRackPitch(slot);
    case 'hand-roll':
      return {
        title: 'Roll it by hand',
        trade: 'trial mesh',
        steps: [
          'Put the trial gear on its post, against its mate.',
          'Turn it slowly by hand, once round for the larger of the two.',
          'Say what you felt: smooth, bumps or jams.',
        ],
        dont: 'Don’t let the motor turn it.',
        minutes: 4,
        notes: ['One, two or three holes tell which trial gear it is.'],
      };
    default:
      return undefined;
  }
}

function tellTeeth({ kind }: SketchSubject): ActWords {
  const isBar = kind === 'rack';
  return {
    title: 'Count the teeth',
    steps: [
      'Mark one tooth with a pen.',
      isBar
        ? 'Count along the bar, touching every tooth to the end.'
        : kind === 'internal'
          ? 'Count round inside the ring, touching every tooth, back to the mark.'
          : 'Count round, touching every tooth, until you are back at the mark.',
      isBar ? 'Count again from the other end.' : 'Count again the other way round.',
    ],
    dont: isBar ? 'Don’t count half a tooth at an end.' : 'Don’t count the marked tooth twice.',
    minutes: 1,
    notes: [
      'Teeth gone? Count those left, then say how many seem to be gone.',
      'Much gone? Count a row of whole teeth in a picture taken from straight above.',
    ],
  };
}

function tellOutside(subject: SketchSubject): ActWords {
  if (subject.kind === 'rack') {
    return {
      title: 'Back to the tips',
      trade: 'height over the teeth',
      steps: ['Lay one jaw flat on the back of the bar.', 'Close the other on the tips.', threePlaces],
      dont: touch,
      minutes: 2,
      notes: [],
    };
  }
  if (subject.kind === 'internal') {
    return {
      title: 'Between the tips',
      trade: 'tip diameter, inside',
      steps: [
        isOdd(subject)
          ? 'Open the inside jaws between the two tips most nearly opposite.'
          : 'Open the inside jaws between two tips that stand opposite.',
        'Rock one jaw over its tip and keep the largest reading.',
        threePlaces,
      ],
      dont: 'Don’t let a jaw slip into a space.',
      minutes: 3,
      notes: [],
    };
  }
  const words = { title: 'Across the tips', trade: 'outside diameter', dont: touch, minutes: 3 };
  if (isOdd(subject)) {
    return {
      ...words,
      steps: [
        'Settled: one jaw lies flat on two tips, the other meets one.',
        'Or rocked: turn the gear to the largest reading, one tip at each jaw.',
        'Take three places, all the same way, and say which way it was.',
      ],
      notes: ['Not sure which way? Say so: that is a good answer.'],
    };
  }
  return {
    ...words,
    steps: [
      'Close the jaws over two teeth that stand opposite.',
      'Turn the gear a little to and fro and keep the largest reading.',
      threePlaces,
    ],
    notes: subject.teeth === undefined ? ['Count the teeth first: odd counts are held another way.'] : [],
  };
}

function tellRoot(subject: SketchSubject): ActWords {
  const isInside = subject.kind === 'internal';
  return {
    title: 'Bottom of the teeth',
    trade: 'root diameter',
    steps: [
      isOdd(subject)
        ? 'Take the two spaces most nearly opposite.'
        : 'Take two spaces that stand straight opposite.',
      isInside
        ? 'Open the inside jaws until both tips touch the bottoms.'
        : 'Set the thin tips of the jaws in them, down to the bottoms.',
      threePlaces,
    ],
    dont: 'Don’t let a jaw hang on the sides of the teeth.',
    minutes: 4,
    notes: ['A jaw that doesn’t reach the bottom? Say not sure.'],
  };
}

function tellSpan({ teeth: count }: Slot, subject: SketchSubject): ActWords {
  const what = subject.kind === 'internal' ? 'spaces' : 'teeth';
  const several = count === undefined ? `several ${what}` : count === 1 ? '1 tooth' : `${count} ${what}`;
  const notes: string[] = [];
  if (subject.isHelical) notes.push('Slanted teeth: hold the jaws square to the teeth, not to the gear.');
  if (subject.isSplit) notes.push('Split: take teeth away from the crack; then it may lie open.');
  return {
    title: `Across ${several}`,
    trade: 'span',
    steps: [
      `Count off ${several}; mark the first and the last.`,
      'Close the flat jaws on their outer sides and rock to the smallest reading.',
      threePlaces,
    ],
    dont: 'Don’t touch a tip or a bottom with the jaws.',
    minutes: 3,
    notes,
  };
}

function tellPins({ pinMm }: Slot, subject: SketchSubject): ActWords {
  const pins = pinMm === undefined ? 'two pins' : `two pins of ${pinMm} mm`;
  const isInside = subject.kind === 'internal';
  const isBar = subject.kind === 'rack';
  return {
    title: isBar ? 'Back to a pin' : `${isInside ? 'Between' : 'Over'} ${pins}`,
    trade: isInside ? 'between pins' : 'over pins',
    steps: [
      isBar
        ? 'Lay a pin in a space, along the tooth.'
        : `Lay the pins in ${isOdd(subject) ? 'the two spaces most nearly opposite' : 'two spaces straight opposite'}.`,
      isBar
        ? 'Close the jaws on the pin and the back of the bar.'
        : isInside
          ? 'Hold them with a dab of grease; open the inside jaws between them.'
          : 'Hold them with a rubber band; close the jaws to the largest reading.',
      threePlaces,
    ],
    dont: 'Don’t use a pin that you haven’t measured.',
    minutes: 5,
    notes: subject.isHelical ? ['Slanted teeth: let each pin lie along its own space.'] : [],
  };
}

function tellRackPitch({ pitches }: Slot): ActWords {
  const many = pitches === undefined ? 'many teeth' : pitches === 1 ? '1 tooth' : `${pitches} teeth`;
  return {
    title: pitches === undefined ? 'Along the bar' : `Along the bar, ${many} on`,
    trade: 'pitch',
    steps: [
      `Mark one tooth, count ${many} on, and mark that one too.`,
      'Set one jaw point on a left edge, the other on the left edge of the other.',
      threePlaces,
    ],
    dont: 'Don’t go from a left edge to a right edge.',
    minutes: 4,
    notes: ['Many teeth at once are better than one: their error is shared.'],
  };
}
