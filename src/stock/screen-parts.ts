import { lookAlike, pairLimits } from '../../gear-library/rework-limits.ts';
import { findBasePitch } from '../involute/base-pitch.ts';
import { findDiameters } from '../involute/gear-diameters.ts';
import type { GearSpec } from '../involute/gear-spec.ts';
import { listReworks, type Rework } from './list-reworks.ts';
import { nameSize } from './name-part.ts';
import type { Need, NeedMate, SpeedEffect } from './need.ts';
import { specOfPart } from './spec-of-part.ts';
import { findRow, type StockIndex } from './stock-index.ts';
import type { PartSize, StockPart } from './stock-part.ts';
import { isNearDistance, suitsDistance } from './suits-distance.ts';

/**
 * exact: the same teeth, and it goes on as it is. rework: the same teeth, once its bore, width or hub is altered.
 * other-teeth: another count, shift or pitch that the distance allows, proven by rolling. look-alike: taken for the
 * wheel by eye, and it will not run, or can't be made to go on.
 */
export type StockKind = 'exact' | 'rework' | 'other-teeth' | 'look-alike';

export const stockKinds: readonly StockKind[] = ['exact', 'rework', 'other-teeth', 'look-alike'];

/** A part that was taken up by its numbers. */
export interface Draft {
  readonly kind: StockKind;
  readonly part: StockPart;
  readonly size: PartSize;
  readonly spec: GearSpec;
  /** Parts with one toothing share a proof */
  readonly toothing: string;
  readonly reworks: readonly Rework[];
  readonly doubts: readonly string[];
  readonly speed: SpeedEffect | null;
  /** Whether its base pitch is another */
  readonly isOtherPitch: boolean;
  readonly isPossible: boolean;
  readonly penalty: number;
}

export interface Screened {
  /** The most promising of each kind, best first */
  readonly drafts: readonly Draft[];
  /** How many parts the numbers alone took up */
  readonly found: { readonly sameTeeth: number; readonly otherTeeth: number; readonly lookAlikes: number };
}

/**
 * What of a stock is worth a closer look, by numbers alone: one pass over the columns near the wheel's base pitch. The
 * same teeth; other teeth that could run at the mates' distances; and what the eye would take for the wheel.
 */
export function screenParts(need: Need, index: StockIndex): Screened {
  const wanted = findBasePitch(need.spec);
  const { tip } = findDiameters(need.spec);
  const picked: { row: number; kind: StockKind; off: number }[] = [];
  const suits = new Map<number, boolean>();
  const isSpur = need.spec.helixAngle === 0;
  const allRows = (from: number, to: number, take: (row: number, pitchOff: number) => void): void => {
    const end = findRow(index, wanted * (1 + to));
    for (let row = findRow(index, wanted * (1 + from)); row < end; row++)
      take(row, index.basePitch[row] / wanted - 1);
  };
  const widest = Math.max(lookAlike.pitch.part, 0.2);
  allRows(-widest, widest, (row, pitchOff) => {
    const teeth = index.teeth[row];
    const isNear = Math.abs(teeth - need.spec.teeth) <= lookAlike.outside.teeth;
    const shiftOff = index.profileShift[row] - need.spec.profileShift;
    const off = Math.abs(pitchOff) * 20 + Math.abs(teeth - need.spec.teeth) + Math.abs(shiftOff);
    if (isSpur && Math.abs(pitchOff) <= samePitch) {
      const thickness = 2 * Math.abs(shiftOff) * Math.tan(need.spec.pressureAngle);
      if (teeth === need.spec.teeth && thickness <= sameThickness) {
        picked.push({ row, kind: 'exact', off: misfitOf(index.parts[index.part[row]], need) });
        return;
      }
      // Tips that differ by a few hundredths change nothing here; rolling sees them.
      const key = teeth * 4096 + Math.round(index.profileShift[row] * 100) + 1000;
      let does = need.mates.length > 0 ? suits.get(key) : false;
      if (does === undefined) {
        does = suitsDistance(specOfRow(index, row), need.mates);
        suits.set(key, does);
      }
      if (does) {
        picked.push({ row, kind: 'other-teeth', off });
        return;
      }
    }
    const isSameCount = teeth === need.spec.teeth && Math.abs(pitchOff) <= lookAlike.pitch.part;
    const isSameWidth = isNear && Math.abs(index.tip[row] - tip) <= lookAlike.outside.mm;
    const isNearPitch = Math.abs(pitchOff) > samePitch && Math.abs(pitchOff) <= pairLimits.nearPitch.part;
    if (isSameCount || isSameWidth) {
      // Told as a trap, unless rolling finds that it turns here: near pitches first, which may.
      picked.push({ row, kind: 'look-alike', off: off + (isSameCount ? 0 : 0.5) - (isNearPitch ? 1 : 0) });
    } else if (isSpur && isNearPitch && couldMeet(index, row, need.mates)) {
      picked.push({ row, kind: 'other-teeth', off });
    }
  });
  const byKind = stockKinds.flatMap((kind) =>
    picked
      .filter((one) => one.kind === kind)
      .sort(
        (a, b) =>
          a.off - b.off ||
          Number(index.parts[index.part[a.row]].from === 'range') -
            Number(index.parts[index.part[b.row]].from === 'range') ||
          a.row - b.row,
      ),
  );
  const taken: Record<StockKind, number> = { exact: 0, rework: 0, 'other-teeth': 0, 'look-alike': 0 };
  const drafts: Draft[] = [];
  for (const { row, kind, off } of byKind) {
    if (taken[kind]++ >= draftsAtMost) continue;
    drafts.push(draftOf(need, index, row, kind, off));
  }
  const count = (kind: StockKind): number => picked.filter((one) => one.kind === kind).length;
  return {
    drafts: drafts.sort((a, b) => a.penalty - b.penalty),
    found: { sameTeeth: count('exact'), otherTeeth: count('other-teeth'), lookAlikes: count('look-alike') },
  };
}

/** How far a part of the right teeth is from going on as it is, about 0 to 1: orders those that are looked at closely. */
function misfitOf({ bore, faceWidth, isGuess }: StockPart, need: Need): number {
  const shaft = need.shaft ?? need.bore?.diameter;
  const byBore = shaft === undefined ? 0 : bore === null ? 0.5 : Math.min(1, Math.abs(bore.diameter - shaft));
  const byWidth =
    need.faceWidth === undefined || faceWidth === null
      ? 0
      : Math.min(1, Math.abs(faceWidth - need.faceWidth) / 10);
  return byBore + byWidth + (isGuess ? 1 : 0);
}

/** Whether a toothing of another pitch is worth rolling: its teeth reach about where the mates' are. */
function couldMeet(index: StockIndex, row: number, mates: readonly NeedMate[]): boolean {
  const spec = specOfRow(index, row);
  return mates.length > 0 && mates.every((mate) => isNearDistance(spec, mate, closeBy));
}

/** Modules by which the teeth may be too shallow or too deep in each other. */
const closeBy = 0.6;

function specOfRow(index: StockIndex, row: number): GearSpec {
  const part = index.parts[index.part[row]];
  return specOfPart(part, part.sizes[index.size[row]]);
}

function draftOf(need: Need, index: StockIndex, row: number, kind: StockKind, off: number): Draft {
  const part = index.parts[index.part[row]];
  const size = part.sizes[index.size[row]];
  const spec = specOfPart(part, size);
  const { reworks, unknown, worse } = listReworks(part, spec, need);
  const isPossible = reworks.every((one) => one.isPossible);
  const doubts = [...unknown, ...worse];
  if (part.isGuess) {
    const others = part.sizes.filter((one) => one !== size).map(nameSize);
    doubts.unshift(
      `its size is a guess from the outside alone (module give or take ${part.moduleUncertainty.toFixed(3)})${others.length > 0 ? `: it may also be ${others.join(' or ')}` : ''}; measure a span`,
    );
  }
  if (part.isAngleAssumed) doubts.push('its pressure angle was not said: 20 degrees is taken');
  if (part.from === 'own' && part.count === 0) doubts.push('the list says none is left');
  const isSame = kind === 'exact';
  const speed = need.speedWith(spec.teeth);
  return {
    kind: isSame
      ? !isPossible
        ? 'look-alike'
        : reworks.length > 0
          ? 'rework'
          : 'exact'
      : kind === 'other-teeth' && !isPossible
        ? 'look-alike'
        : kind,
    part,
    size,
    spec,
    toothing: [
      spec.teeth,
      spec.module.toFixed(6),
      spec.pressureAngle.toFixed(6),
      spec.profileShift,
      spec.tipDiameter ?? '',
    ].join(' '),
    reworks,
    doubts,
    speed,
    isOtherPitch: Math.abs(findBasePitch(spec) / findBasePitch(need.spec) - 1) > samePitch,
    isPossible,
    penalty:
      (kind === 'exact' ? off : off * 4) +
      Math.min(20, Math.abs(speed?.changePercent ?? 0)) +
      (part.from === 'range' ? 6 : 0) +
      (part.isGuess ? 4 : 0) +
      (part.count === 0 ? 8 : 0) +
      reworks.length +
      unknown.length * 0.5 +
      worse.length * 0.5,
  };
}

/** Base pitches within this are the same teeth, as in `findWorkingPair`. */
const samePitch = 1e-3;
/** Arc by which tooth thickness may differ and the wheel still be the same, modules; a shift of 0.055. */
const sameThickness = 0.04;
/** Drafts of a kind that are looked at closely: more than anyone reads, few enough to be quick. */
const draftsAtMost = 400;
