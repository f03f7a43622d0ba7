import { defaultKit } from '../../gear-library/reading-uncertainty.ts';
import { involute } from '../involute/involute-function.ts';
import { type MeasuredLength, measureLength } from './measured-length.ts';
import type { LengthKind, LengthReading, Mate, WheelEvidence } from './wheel-evidence.ts';

/** A reading that this kit can take on this wheel and that is not there yet. */
export interface PossibleReading {
  readonly of: LengthKind;
  readonly length: MeasuredLength;
  readonly why: string;
}

/** The wheel's leading answer, as far as it decides what a jaw or pin can reach. */
export interface LikelyTooth {
  readonly teeth: number;
  readonly module: number;
  readonly pressureAngle: number;
  readonly profileShift: number;
  readonly addendum: number;
  readonly dedendum: number;
}

/**
 * Every reading of the teeth that can still be taken: the jaw enters the space, the pin is owned and rests on the
 * flanks, the root can be reached, enough teeth stand in a row, a mate's teeth are counted.
 */
export function listPossibleReadings(wheel: WheelEvidence, tooth: LikelyTooth): PossibleReading[] {
  const found: PossibleReading[] = [];
  const has = (of: LengthKind, matches: (reading: LengthReading) => boolean = () => true): boolean =>
    wheel.readings.some((reading) => reading.of === of && matches(reading as LengthReading));
  const add = (reading: LengthReading, why: string, mate?: Mate): void => {
    found.push({ of: reading.of, length: measureLength(wheel, reading, -1, 0, mate), why });
  };
  const jaw = wheel.kit.jawTipMm ?? defaultKit.jawTipMm;
  const z = tooth.teeth;
  if (wheel.kind === 'rack') {
    if (!has('rack-pitch'))
      add({ of: 'rack-pitch', pitches: Math.max(1, z - 2) }, 'many pitches at once share one error');
    if (!has('tooth-depth')) add({ of: 'tooth-depth' }, 'the depth tells the rack');
    return found;
  }
  if (!has('outside')) {
    add(
      { of: 'outside', jaws: z % 2 === 0 ? undefined : 'rocked', taken: 'closed' },
      'the easiest reading, and it sets the size',
    );
  }
  if (!has('root') && rootSpace(tooth) > jaw)
    add({ of: 'root', taken: 'closed' }, 'with the outside it gives the depth of the tooth');
  if (!has('tooth-depth') && !has('root') && rootSpace(tooth) > jaw)
    add({ of: 'tooth-depth' }, 'the depth does not change with shift');
  if (flankSpace(tooth) > jaw) {
    for (const k of listSpans(wheel, tooth)) {
      if (has('span', (reading) => reading.teeth === k)) continue;
      const other = has('span');
      add(
        { of: 'span', teeth: k },
        other
          ? 'two spans apart give the base pitch, whatever the shift'
          : 'flat jaws on the flanks: worn tips do not matter',
      );
    }
  }
  for (const pin of wheel.kit.pinsMm ?? []) {
    if (has('over-pins', (reading) => reading.pinMm === pin) || !pinRests(tooth, pin)) continue;
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

/** Width of the space at the root circle, mm, root corners apart. */
function rootSpace(tooth: LikelyTooth): number {
  const { module: m, teeth: z, pressureAngle: a, profileShift: x } = tooth;
  const atReference = Math.PI / 2 - 2 * x * Math.tan(a);
  // Below the base circle the flanks run about radially: the space narrows from the reference circle by the rack's slope.
  return Math.max(0, m * (atReference - 2 * (tooth.dedendum - x) * Math.tan(a) * Math.min(1, z / 60)));
}

/** Width of the space where a span's jaws touch, about the reference circle, mm. */
function flankSpace(tooth: LikelyTooth): number {
  return tooth.module * (Math.PI / 2 - 2 * tooth.profileShift * Math.tan(tooth.pressureAngle));
}

/** Spans whose jaws touch the flanks between the base and the tip circle with enough whole teeth in a row. */
function listSpans(wheel: WheelEvidence, tooth: LikelyTooth): number[] {
  const { module: m, teeth: z, pressureAngle: a, profileShift: x } = tooth;
  if (wheel.kind !== 'external') return [];
  const base = m * z * Math.cos(a);
  const tip = m * (z + 2 * (tooth.addendum + x)) - 0.1 * m;
  let missing = 0;
  for (const damage of wheel.damage) if (damage.kind === 'teeth-missing') missing += damage.count ?? 1;
  const standing = missing === 0 ? z : z - missing;
  const found: number[] = [];
  for (let k = 2; k < z / 2 && k <= standing; k++) {
    const span = m * Math.cos(a) * (Math.PI * (k - 0.5) + z * involute(a)) + 2 * x * m * Math.sin(a);
    const contact = Math.hypot(base, span);
    // Jaws touch at the diameter √(d_b² + W²), and must not rest on the tips or fall to the root.
    const lowest = Math.max(base, m * (z - 2 * (tooth.dedendum - x)) + 0.6 * m);
    if (contact < tip && contact > lowest) found.push(k);
  }
  return found;
}

/** A pin rests on the flanks and stands proud of the tips. */
function pinRests(tooth: LikelyTooth, pin: number): boolean {
  const relative = pin / tooth.module;
  return relative > 1.4 && relative < 2.1;
}
