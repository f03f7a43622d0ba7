import type { GearSpec } from '../involute/gear-spec.ts';
import { type ArrivalCheck, listArrivalChecks } from './list-arrival-checks.ts';
import type { Rework } from './list-reworks.ts';
import { namePart, nameSearch, nameSize } from './name-part.ts';
import type { Need, Roll, SpeedEffect } from './need.ts';
import { proveWheel, type WheelProof } from './prove-wheel.ts';
import { type Draft, type Screened, type StockKind, screenParts, stockKinds } from './screen-parts.ts';
import type { StockIndex } from './stock-index.ts';
import type { PartSize, StockPart } from './stock-part.ts';
import { tellWhy } from './tell-why.ts';

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
  readonly found: Screened['found'];
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
  roll: Roll,
  options: MatchOptions = {},
): Generator<MatchProgress, StockMatch> {
  const rollAtMost = options.rollAtMost ?? 4;
  const rowsAtMost = options.rowsAtMost ?? 12;
  if (need.spec.kind !== 'external') {
    return { rows: [], found: { sameTeeth: 0, otherTeeth: 0, lookAlikes: 0 }, rolled: 0, worthRolling: 0 };
  }

  // 1. By numbers alone, over all parts.
  const { drafts, found } = screenParts(need, index);

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
