import { isCovered, type Wheel, type WheelReport } from '../../index.ts';
import { isKnownBySpec } from './is-specified.ts';
import { findReading, isSameSlot, type Slot, slotKey, slotOf } from './slot.ts';

/** What the person does next, why, and what for: more can be taken, but nothing asks for it. */
export interface NextAct {
  readonly slot: Slot;
  /** Why this one, in a clause; absent for the first questions */
  readonly why?: string | undefined;
  readonly purpose: 'start' | 'size' | 'part' | 'more';
}

/** A reading that changes the odds by less than words can say is not worth a walk to the bench. */
const leastGain = 0.02;

/**
 * Everything worth doing next on one gear, best first: what it looks like, what happened, the count, across the
 * tips, then what the answer says tells most; once the size is likely, what the part needs. Empty at an ending.
 */
export function listNextActs(wheel: Wheel, report: WheelReport | undefined): NextAct[] {
  if (!isCovered(wheel) || isKnownBySpec(wheel)) return [];
  const acts: NextAct[] = [];
  const has = (slot: Slot): boolean => findReading(wheel, slot) >= 0;
  const isLeftOut = (slot: Slot): boolean => (wheel.leftOut ?? []).includes(slotKey(slot));
  const add = (slot: Slot, purpose: NextAct['purpose'], why?: string): void => {
    if (isLeftOut(slot) || acts.some((act) => isSameSlot(act.slot, slot))) return;
    acts.push({ slot, purpose, why });
  };
  const isBlank = (wheel.readings ?? []).length === 0;
  if (wheel.kind === undefined && wheel.look === undefined && isBlank) add({ of: 'looks-like' }, 'start');
  if (wheel.state === undefined && wheel.damage === undefined) add({ of: 'happened' }, 'start');
  if (wheel.state === 'lost' && !has({ of: 'teeth' })) return [...acts, ...listLostActs(report, isLeftOut)];
  if (!has({ of: 'teeth' })) {
    add({ of: 'teeth' }, 'start');
    return acts;
  }
  const isLost = wheel.state === 'lost';
  if (!isLost && wheel.kind !== 'rack' && !has({ of: 'outside' })) add({ of: 'outside' }, 'size');
  if (isSlanted(wheel) && !has({ of: 'helix-angle' })) add({ of: 'helix-angle' }, 'size');
  if (needsGap(wheel)) add({ of: 'split-gap' }, 'size', 'a split that stands open makes the gear read large');
  for (const next of report?.next ?? []) {
    // What is to be done on another gear is not an act on this one.
    if (next.wheel !== undefined || lostAsks.includes(next.of)) continue;
    if (next.of === 'teeth' ? isLost : next.gainBits < leastGain || (isLost && next.of !== 'center-distance'))
      continue;
    add(slotOf(next), 'size', next.why);
  }
  if (isLost) return acts;
  const forPart = listPartSlots(wheel).filter((slot) => !has(slot));
  const parts = forPart.map((slot): NextAct => ({ slot, purpose: 'part' }));
  const worth = parts.filter(({ slot }) => !isLeftOut(slot));
  if (report?.verdict !== 'certain') return [...acts, ...worth];
  // Once the size is certain, what the part needs comes first, and the rest is for those who want it.
  return [
    ...acts.filter((act) => act.purpose === 'start'),
    ...worth,
    ...acts.filter((act) => act.purpose !== 'start').map((act): NextAct => ({ ...act, purpose: 'more' })),
  ];
}

/** What is asked of a gear that is lost, where it is no reading of its teeth. */
const lostAsks: readonly string[] = ['crumbs', 'post', 'neighbors', 'rows', 'speed-wanted'];

/** A gear that is lost is looked for in the order that the answer gives; whoever knows its count may say it. */
function listLostActs(report: WheelReport | undefined, isLeftOut: (slot: Slot) => boolean): NextAct[] {
  const isSettled = report?.verdict === 'certain';
  const asked = (report?.next ?? []).flatMap((next): NextAct[] => {
    const slot = slotOf(next);
    if (next.wheel !== undefined || next.of === 'teeth' || isLeftOut(slot)) return [];
    const isOfPart = next.of === 'post';
    if (!lostAsks.includes(next.of) && next.gainBits < leastGain) return [];
    return [{ slot, purpose: isOfPart ? 'part' : isSettled ? 'more' : 'size', why: next.why }];
  });
  return [
    ...asked,
    { slot: { of: 'teeth' }, purpose: 'more', why: 'if you know its count, from a drawing or a manual' },
  ];
}

/** What a part needs beside its teeth. */
function listPartSlots(wheel: Wheel): Slot[] {
  if (wheel.kind === 'internal' || wheel.kind === 'rack') return [{ of: 'face-width' }];
  return [{ of: 'shaft' }, { of: 'face-width' }];
}

export function isSlanted(wheel: Wheel): boolean {
  return wheel.look === 'slanted-left' || wheel.look === 'slanted-right';
}

function needsGap(wheel: Wheel): boolean {
  return (wheel.damage ?? []).some((one) => one.kind === 'split' && one.gapMm === undefined);
}
