import { defaultKit, methods } from '../../gear-library/reading-uncertainty.ts';
import { Fail } from '../fail.ts';
import { findDiameters } from '../involute/gear-diameters.ts';
import type { GearSpec } from '../involute/gear-spec.ts';
import { isPinUsable } from '../involute/pin-range.ts';
import { findSpaceWidth } from '../involute/space-width.ts';
import { listSpanTeeth } from '../involute/span.ts';
import { referenceToothThickness } from '../involute/tooth-thickness.ts';
import { findPointedDiameter } from '../involute/undercut.ts';
import { type MeasuredLength, measureLength } from './measured-length.ts';
import type { LengthKind, LengthReading, Mate, WheelEvidence } from './wheel-evidence.ts';

/** A reading that this kit can take on this wheel and that is not there yet. */
export interface PossibleReading {
  readonly of: LengthKind;
  readonly length: MeasuredLength;
  readonly why: string;
}

/**
 * Every reading of the teeth that can still be taken: the jaw enters the space, the pin is owned and rests on the
 * flanks, the root can be reached, enough teeth stand in a row, a mate's teeth are counted.
 *
 * @param lead the leading answer's toothing, which decides what a jaw or a pin can reach
 */
export function listPossibleReadings(wheel: WheelEvidence, lead: GearSpec): PossibleReading[] {
  const found: PossibleReading[] = [];
  const has = (of: LengthKind, matches: (reading: LengthReading) => boolean = () => true): boolean =>
    wheel.readings.some((reading) => reading.of === of && matches(reading as LengthReading));
  const add = (reading: LengthReading, why: string, mate?: Mate): void => {
    found.push({ of: reading.of, length: measureLength(wheel, reading, -1, 0, mate), why });
  };
  const jaw = wheel.kit.jawTipMm ?? defaultKit.jawTipMm;
  const standing = countStanding(wheel, lead.teeth);
  if (lead.kind === 'rack') {
    for (const pitches of listRackPitches(standing)) {
      if (has('rack-pitch', (reading) => (reading.pitches ?? 1) === pitches)) continue;
      const why = has('rack-pitch') ? 'over another number, a pitch too many or too few shows' : manyAtOnce;
      add({ of: 'rack-pitch', pitches }, why);
    }
    if (!has('tooth-depth')) add({ of: 'tooth-depth' }, 'the depth tells the rack');
    return found;
  }
  const worn = wearTips(lead);
  if (!has('outside')) {
    add(
      { of: 'outside', jaws: lead.teeth % 2 === 0 ? undefined : 'rocked', taken: 'closed' },
      'the easiest reading, and it sets the size',
    );
  }
  const reachesRoot = !has('root') && unlessRefused(() => findSpaceWidth(worn, shyOfRoot) >= jaw, false);
  if (reachesRoot) add({ of: 'root', taken: 'closed' }, 'with the outside it gives the depth of the tooth');
  if (reachesRoot && !has('tooth-depth')) add({ of: 'tooth-depth' }, 'the depth does not change with shift');
  if (lead.module * Math.PI - referenceToothThickness(lead) > jaw) {
    for (const k of unlessRefused(() => listSpanTeeth(worn), [])) {
      if (k < 2 || k > standing || has('span', (reading) => reading.teeth === k)) continue;
      add(
        { of: 'span', teeth: k },
        has('span')
          ? 'two spans apart give the base pitch, whatever the shift'
          : 'flat jaws on the flanks: worn tips do not matter',
      );
    }
  }
  const pins = (wheel.kit.pinsMm ?? []).filter((pin) => !has('over-pins', (one) => one.pinMm === pin));
  for (const pin of pins) {
    if (!unlessRefused(() => isPinUsable(worn, pin), false)) continue;
    add({ of: 'over-pins', pinMm: pin, taken: 'closed' }, 'pins rest on the flanks, away from the worn tips');
  }
  for (const mate of wheel.mates) {
    if (has('center-distance', (reading) => reading.mate === mate.id)) continue;
    add(
      { of: 'center-distance', mate: mate.id },
      'meshing wheels share one pitch, so the distance of the posts speaks',
      mate,
    );
  }
  return found;
}

const manyAtOnce = 'many pitches at once share one error';

// A blade that stops higher over the root than this reads wrong by more than the reading is known to.
const shyOfRoot = methods.root.uMm;

/** Teeth that stand in a row, at least: those gone are taken to have stood side by side. */
function countStanding(wheel: WheelEvidence, teeth: number): number {
  let missing = 0;
  for (const damage of wheel.damage) if (damage.kind === 'teeth-missing') missing += damage.count ?? 1;
  return teeth - missing;
}

/** All pitches of a row, from the first tooth's edge to the same edge of the last one; half of them; and one. */
function listRackPitches(standing: number): Set<number> {
  const whole = Math.max(1, standing - 1);
  return new Set([whole, Math.max(1, Math.round(whole / 2)), 1]);
}

/** The toothing with its tips a twentieth of the module short or rounded, where neither jaw nor pin holds. */
function wearTips(spec: GearSpec): GearSpec {
  const { tip, base } = findDiameters(spec);
  const lost = 0.1 * spec.module;
  return {
    ...spec,
    // An internal tooth has no flank inside the base circle, an external one none past its point.
    tipDiameter:
      spec.kind === 'internal'
        ? Math.max(tip + lost, base)
        : Math.min(tip - lost, findPointedDiameter(spec) - lost),
  };
}

/** An answer that is no wheel as it stands (its rack pointed, its tooth cut off) gives no reading to propose. */
function unlessRefused<T>(find: () => T, otherwise: T): T {
  try {
    return find();
  } catch (error) {
    if (error instanceof Fail) return otherwise;
    throw error;
  }
}
