import { lookAlike, pairLimits } from '../../gear-library/rework-limits.ts';
import type { RollPair } from '../drive/check-pair.ts';
import { findBasePitch } from '../involute/base-pitch.ts';
import { findDiameters } from '../involute/gear-diameters.ts';
import type { GearSpec } from '../involute/gear-spec.ts';
import { type ArrivalCheck, listArrivalChecks } from './list-arrival-checks.ts';
import { listReworks, type Rework } from './list-reworks.ts';
import { namePart, nameSearch, nameSize } from './name-part.ts';
import type { Need, SpeedEffect } from './need.ts';
import { proveWheel, type WheelProof } from './prove-wheel.ts';
import { specOfPart } from './spec-of-part.ts';
import { findRow, type StockIndex } from './stock-index.ts';
import type { PartSize, StockPart } from './stock-part.ts';
import { suitsDistance } from './suits-distance.ts';

/**
 * exact: the same teeth, and it goes on as it is. rework: the same teeth, once its bore, width or hub is altered.
 * other-teeth: another count, shift or pitch that the distance allows, proven by rolling. look-alike: taken for the
 * wheel by eye, and it will not run, or can't be made to go on.
 */
export type StockKind = 'exact' | 'rework' | 'other-teeth' | 'look-alike';

export interface StockRow {
  readonly kind: StockKind;
  readonly part: StockPart;
  /** The one of the part's sizes that this row is about */
  readonly size: PartSize;
  readonly name: string;
  readonly spec: GearSpec;
  readonly reworks: readonly Rework[];
  /** What is not known or not as good */
  readonly doubts: readonly string[];
  readonly speed: SpeedEffect | null;
  /** Undefined where it was not rolled: no mate is known well enough, or leading rows alone are */
  readonly proof: WheelProof | undefined;
  readonly why: string;
  readonly search: string;
  readonly checks: readonly ArrivalCheck[];
}

export interface StockMatch {
  /** Ranked, the most useful first within each kind; look-alikes last */
  readonly rows: readonly StockRow[];
  /** How many parts the numbers alone took up, shown or not */
  readonly found: { readonly sameTeeth: number; readonly otherTeeth: number; readonly lookAlikes: number };
  /** Toothings that were rolled, and those that would have been worth it */
  readonly rolled: number;
  readonly worthRolling: number;
}

export interface MatchOptions {
  /** Toothings rolled of each kind: a proof costs up to a sixth of a second */
  readonly rollAtMost?: number;
  /** Rows given of each kind */
  readonly rowsAtMost?: number;
}

export interface MatchProgress {
  readonly done: number;
  readonly of: number;
}

/**
 * What of a stock fits a need. Every part is compared by numbers; of each kind the leading toothings are rolled against
 * all mates at their distances, and what was found by rolling decides: what turns though its pitch differs becomes
 * other-teeth, what was thought to run and does not is dropped or told as a trap.
 *
 * Order: what turns first, then the person's own before what must be bought, known before guessed, least to alter.
 * Only external wheels are matched: for another need the answer is empty. A generator, so that a worker can stop it
 * between two proofs.
 */
export function* matchStock(
  need: Need,
  index: StockIndex,
  roll: RollPair,
  options: MatchOptions = {},
): Generator<MatchProgress, StockMatch> {
  const rollAtMost = options.rollAtMost ?? 4;
  const rowsAtMost = options.rowsAtMost ?? 12;
  if (need.spec.kind !== 'external') {
    return { rows: [], found: { sameTeeth: 0, otherTeeth: 0, lookAlikes: 0 }, rolled: 0, worthRolling: 0 };
  }

  // 1. By numbers alone, over all parts.
  const { drafts, found } = screen(need, index);

  // 2. The leading toothings of each kind are rolled.
  const proofs = new Map<string, WheelProof | undefined>();
  const queue: Draft[] = [];
  const worth = new Set(drafts.map(({ toothing }) => toothing));
  for (const kind of stockKinds) {
    const names = new Set<string>();
    for (const draft of drafts.filter((one) => one.kind === kind)) {
      if (names.size >= rollAtMost && !names.has(draft.toothing)) continue;
      if (!names.has(draft.toothing) && !queue.some((one) => one.toothing === draft.toothing))
        queue.push(draft);
      names.add(draft.toothing);
    }
  }
  for (const [done, draft] of queue.entries()) {
    yield { done, of: queue.length };
    proofs.set(draft.toothing, proveWheel(draft.spec, need.mates, roll));
  }

  // 3. What rolling says goes before what numbers said.
  const settled = drafts.flatMap((draft) => settle(draft, proofs));
  const trap = settled.find(({ kind, isOtherPitch }) => kind === 'look-alike' && isOtherPitch);
  const rows: StockRow[] = [];
  for (const kind of stockKinds) {
    const seen = new Set<string>();
    const ranked = settled
      .filter((one) => one.kind === kind)
      .sort((a, b) => rankOf(a, proofs) - rankOf(b, proofs) || a.penalty - b.penalty);
    for (const draft of ranked) {
      if (seen.size >= rowsAtMost) break;
      const key = groupOf(draft, kind);
      if (seen.has(key)) continue;
      seen.add(key);
      rows.push(finish(draft, need, proofs.get(draft.toothing), trap));
    }
  }
  return { rows, found, rolled: need.mates.length === 0 ? 0 : queue.length, worthRolling: worth.size };
}

const stockKinds: readonly StockKind[] = ['exact', 'rework', 'other-teeth', 'look-alike'];

/** A part that was taken up by its numbers. */
interface Draft {
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

/** Base pitches within this are the same teeth, as in `findWorkingPair`. */
const samePitch = 1e-3;
/** Arc by which tooth thickness may differ and the wheel still be the same, modules; a shift of 0.055. */
const sameThickness = 0.04;
/** Drafts of a kind that are looked at closely: more than anyone reads, few enough to be quick. */
const draftsAtMost = 400;

function screen(need: Need, index: StockIndex): { drafts: Draft[]; found: StockMatch['found'] } {
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
    } else if (isSpur && Math.abs(pitchOff) <= pairLimits.nearPitch.part && isNear) {
      // Near pitches are told as traps unless rolling finds that they turn here.
      picked.push({ row, kind: 'look-alike', off: off - 1 });
      return;
    }
    const isSameCount = teeth === need.spec.teeth && Math.abs(pitchOff) <= lookAlike.pitch.part;
    const isSameWidth = isNear && Math.abs(index.tip[row] - tip) <= lookAlike.outside.mm;
    if (isSameCount || isSameWidth)
      picked.push({ row, kind: 'look-alike', off: off + (isSameCount ? 0 : 0.5) });
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

/** What a draft is once its toothing was rolled; nothing where it neither runs nor deceives. */
function settle(draft: Draft, proofs: ReadonlyMap<string, WheelProof | undefined>): Draft[] {
  const verdict = proofs.get(draft.toothing)?.verdict;
  if (draft.kind === 'other-teeth' && verdict !== 'turns') return [];
  if (draft.kind === 'look-alike' && draft.isPossible && verdict === 'turns')
    return [{ ...draft, kind: 'other-teeth' }];
  return [draft];
}

function rankOf(draft: Draft, proofs: ReadonlyMap<string, WheelProof | undefined>): number {
  const verdict = proofs.get(draft.toothing)?.verdict;
  if (draft.kind === 'look-alike') return draft.isPossible ? (verdict === undefined ? 1 : 0) : 2;
  return verdict === 'turns' ? 0 : verdict === 'rough' ? 1 : verdict === undefined ? 2 : 3;
}

/** A person's own parts stand each for itself; a range's bores, and traps of one toothing, are one row. */
function groupOf({ part, spec, toothing }: Draft, kind: StockKind): string {
  if (kind === 'look-alike')
    return [spec.teeth, spec.module, spec.pressureAngle, spec.profileShift].join(' ');
  return part.from === 'own' ? part.id : `${part.name} ${part.material} ${toothing}`;
}

function finish(draft: Draft, need: Need, proof: WheelProof | undefined, trap: Draft | undefined): StockRow {
  const { kind, part, size, spec } = draft;
  const mistaken =
    kind === 'look-alike'
      ? { spec: need.spec, name: 'the wheel you need' }
      : trap && { spec: trap.spec, name: `the look-alike, ${trap.spec.teeth} teeth ${nameSize(trap.size)},` };
  return {
    kind,
    part,
    size,
    name: namePart(part, size),
    spec,
    reworks: draft.reworks,
    doubts: draft.doubts,
    speed: draft.speed,
    proof,
    why: tellWhy(draft, need, proof),
    search: nameSearch(part, size, spec),
    checks: listArrivalChecks(spec, mistaken),
  };
}

function tellWhy(
  { kind, spec, size, isOtherPitch, isPossible, reworks }: Draft,
  need: Need,
  proof: WheelProof | undefined,
): string {
  const same = `the same ${spec.teeth} teeth of ${nameSize(size)}`;
  const rolled = proof ? `; rolled, it ${proof.meshes.map(({ words }) => words).join('; it ')}` : '';
  const notRolled =
    need.mates.length === 0
      ? '; not rolled, since no mate is known well enough'
      : '; not rolled, since others of its kind lead';
  const shown = proof ? rolled : notRolled;
  switch (kind) {
    case 'exact':
    case 'rework': {
      const but =
        proof && proof.verdict !== 'turns'
          ? '. It is the same wheel, so check the distance and the mate before you doubt it'
          : '';
      return `${same}${shown}${but}`;
    }
    case 'other-teeth': {
      const counts =
        spec.teeth === need.spec.teeth
          ? 'the same count'
          : `${spec.teeth} teeth in place of ${need.spec.teeth}`;
      const what = isOtherPitch
        ? `another size (${nameSize(size)}), ${counts}`
        : spec.profileShift !== need.spec.profileShift
          ? `${counts}, shift ${spec.profileShift} in place of ${Number(need.spec.profileShift.toFixed(2))}`
          : counts;
      return `${what}${shown}`;
    }
    case 'look-alike': {
      if (!isPossible) {
        const stop = reworks.find((one) => !one.isPossible);
        return `its teeth would do, but it can't be made to go on: ${stop?.limit ?? 'see the rework'}`;
      }
      const off = (findBasePitch(spec) / findBasePitch(need.spec) - 1) * 100;
      const what = isOtherPitch
        ? `looks like it, but its teeth are ${Math.abs(off).toFixed(1)} % ${off > 0 ? 'further apart' : 'closer together'} (${nameSize(size)}, ${spec.teeth} teeth)`
        : `looks like it, but has ${spec.teeth} teeth${spec.teeth === need.spec.teeth ? ' of another thickness' : ''}`;
      return `${what}${shown}`;
    }
  }
}
