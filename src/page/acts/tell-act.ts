import type { Slot } from '../state/slot.ts';
import { isSmall, type SketchSubject } from './sketch-subject.ts';
import { tellPartAct } from './tell-part-act.ts';
import { tellToothAct } from './tell-tooth-act.ts';

/** How one reading is taken, for somebody at a bench: three steps and one don’t. */
export interface ActWords {
  readonly title: string;
  /** The trade’s word, where it is another */
  readonly trade?: string | undefined;
  readonly steps: readonly [string, string, string];
  readonly dont: string;
  readonly minutes: number;
  readonly notes: readonly string[];
}

/** Acts in which a jaw closes on soft teeth or a split rim. */
const closesOnTeeth = ['outside', 'root', 'tooth-depth', 'span', 'over-pins'];
/** Acts that need the thin tips themselves. */
const entersSpaces = ['root', 'span', 'tooth-depth'];
const opensWithSplit = ['outside', 'root', 'over-pins', 'bore'];

/** The words of the act that fills a slot, for the gear at hand. It never tells what the reading should be. */
export function tellAct(slot: Slot, subject: SketchSubject): ActWords {
  const act = tellToothAct(slot, subject) ?? tellPartAct(slot, subject) ?? tellOther(slot);
  const notes = [...act.notes];
  if (closesOnTeeth.includes(slot.of)) {
    if (isSmall(subject)) {
      notes.push('Stand it on a toothpick or drill shank in putty: both hands are free.');
      if (!entersSpaces.includes(slot.of)) notes.push('Use the flats just behind the thin tips of the jaws.');
    }
    if (isSmall(subject) || slot.of === 'root' || slot.of === 'span') {
      notes.push('Light from behind shows where the jaws touch.');
    }
  }
  if (subject.isSplit && opensWithSplit.includes(slot.of)) {
    notes.push('Split: say whether you took it open, as it lies, or pressed closed.');
  }
  return { ...act, notes };
}

/** A reading that the page has no own words for: the reading’s name, and how lengths are taken. */
function tellOther(slot: Slot): ActWords {
  return {
    title: slot.of.replaceAll('-', ' ').replace(/^./, (first) => first.toUpperCase()),
    steps: [
      'Wipe the place clean.',
      'Close the jaws until they touch.',
      'Take it at three places; type all three.',
    ],
    dont: 'Don’t squeeze: touch.',
    minutes: 2,
    notes: [],
  };
}
