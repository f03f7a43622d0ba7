import type { Look } from './look.ts';

/** What can still be done with a gear that can't be worked out yet; undefined for one that can. */
export function tellUncovered(look: Look): string | undefined {
  return uncovered[look];
}

const uncovered: Readonly<Partial<Record<Look, string>>> = {
  cone:
    'A cone works only with its mate. Count both, measure the angle between their posts, and look for a pair to ' +
    'replace both. Its count and readings can be kept here.',
  crown:
    'Its flat-lying teeth fit one small gear. Choose Straight teeth for that small gear: its size is the size of both.',
  worm:
    'Measure across it and along ten turns of its thread, and count its threads. Keep those here, and work out the ' +
    'wheel it drives only as a rough guide.',
  'clock-teeth':
    'These teeth follow another curve than gears of machines do, so its readings would point to a wrong size. A clock ' +
    'repairer can cut one from the count and the distance of the posts.',
  ratchet:
    'Trace it: photograph or scan it flat beside a ruler and draw one tooth over. Its shape need only catch, not roll.',
  'belt-wheel':
    'The belt tells its size: count the belt teeth along 100 mm, then count the teeth of the wheel. Wheels for listed ' +
    'belts are sold by those two numbers.',
};
