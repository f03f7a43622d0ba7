import { stockRanges } from '../gear-library/stock-ranges.ts';
import type { RollPair } from './drive/check-pair.ts';
import type { DriveModel } from './drive/drive-model.ts';
import { identify } from './identify.ts';
import type { GearSpec } from './involute/gear-spec.ts';
import { collectDrive } from './job/collect-drive.ts';
import { collectEvidence, findWheels, isCovered, kindOf } from './job/collect-evidence.ts';
import { collectPlace } from './job/collect-place.ts';
import type { Job, Wheel } from './job/job-schema.ts';
import { roundNumbers } from './job/round-numbers.ts';
import { fieldsOfSpec, specOfFields } from './job/spec-fields.ts';
import { reportMade, reportStockRow, type SubstituteRow } from './job/substitutes-report.ts';
import { type Identity, identifyWheel } from './readings/identify-wheel.ts';
import { rollPair } from './rolling/roll-pair.ts';
import { listMade } from './stock/list-made.ts';
import { listRangeParts } from './stock/list-range-parts.ts';
import { matchStock, type StockMatch } from './stock/match-stock.ts';
import type { Need } from './stock/need.ts';
import { needOfDrive } from './stock/need-of-drive.ts';
import { indexParts } from './stock/stock-index.ts';
import type { StockPart } from './stock/stock-part.ts';

export interface SubstituteOptions {
  /** This wheel only; else every wheel that is damaged or lost, or all where none is said to be */
  readonly wheelId?: string | undefined;
  /** The person's own parts */
  readonly parts?: readonly StockPart[] | undefined;
}

/** What fits a job's wheels. Plain data; lengths mm, angles degrees. */
export interface SubstitutesReport {
  readonly wheels: readonly WheelSubstitutes[];
  readonly notes: readonly string[];
}

export interface WheelSubstitutes {
  readonly id: string;
  readonly name: string | null;
  /** What is looked for; null where the wheel is not known well enough */
  readonly need: {
    readonly spec: ReturnType<typeof fieldsOfSpec>;
    readonly isSure: boolean;
    readonly shaftMm: number | null;
    readonly faceWidthMm: number | null;
    readonly mates: readonly { id: string; centerMm: number; uMm: number; isMeasured: boolean }[];
  } | null;
  /** What works, the most useful first */
  readonly rows: readonly SubstituteRow[];
  /** What looks like it and will not run, or can't be made to go on */
  readonly traps: readonly SubstituteRow[];
  readonly found: StockMatch['found'];
  /** Toothings that were rolled, of those that would have been worth it */
  readonly rolled: number;
  readonly worthRolling: number;
  readonly notes: readonly string[];
}

export interface SubstituteProgress {
  readonly wheelId: string;
  readonly done: number;
  readonly of: number;
}

/**
 * What can go where a job's damaged or lost wheels were, so that the machine runs as it did: parts out of the drawer,
 * parts as the trade sells them, and parts to make, each rolled against its mates at the shafts' distance; the traps that
 * look like them; each with all that is needed to show it and to take it into the job (`accept`).
 *
 * Throws Fail `no-such-wheel`.
 */
export function findSubstitutes(job: Job, options: SubstituteOptions = {}): SubstitutesReport {
  const search = searchSubstitutes(job, options);
  for (;;) {
    const step = search.next();
    if (step.done) return step.value;
  }
}

/** The same, a step for each proof, so that a worker can tell how far it is and can be stopped between two. */
export function* searchSubstitutes(
  job: Job,
  options: SubstituteOptions = {},
): Generator<SubstituteProgress, SubstitutesReport> {
  const wheels = chooseWheels(job, options.wheelId);
  const model = collectDrive(
    job,
    remember((wheel) => identifyWheel(collectEvidence(job, wheel))),
  );
  const own = options.parts ?? [];
  const index = indexParts([...own, ...stockRanges.flatMap(listRangeParts)]);
  const reports: WheelSubstitutes[] = [];
  for (const wheel of wheels) {
    const found = findNeed(job, model, wheel);
    if (typeof found === 'string') {
      reports.push(withoutNeed(wheel, found));
      continue;
    }
    const matching = matchStock(found, index, roll);
    let step = matching.next();
    while (!step.done) {
      yield { wheelId: wheel.id, ...step.value };
      step = matching.next();
    }
    reports.push(reportWheel(wheel, found, step.value, own.length > 0));
  }
  const notes = wheels.length === 0 ? ['the job has no wheels yet'] : [];
  return roundNumbers({ wheels: reports, notes });
}

/**
 * The mean distance and both ends of what it may be decide the verdict: freedom only grows on the way out. What lies
 * beyond is not looked for here; it costs ten times as much, and the page rolls a row again when it is opened.
 */
const roll: RollPair = (driver, driven, at) =>
  rollPair(driver, driven, at, { distances: 3, seeksDistance: false });

function chooseWheels(job: Job, wheelId: string | undefined): readonly Wheel[] {
  if (wheelId !== undefined) return findWheels(job, wheelId);
  const wheels = job.wheels ?? [];
  const wanted = wheels.filter(
    ({ state, damage }) => state === 'damaged' || state === 'lost' || (damage ?? []).length > 0,
  );
  return wanted.length > 0 ? wanted : wheels;
}

function remember(identityOf: (wheel: Wheel) => Identity): (wheel: Wheel) => Identity {
  const known = new Map<string, Identity>();
  return (wheel) => {
    const found = known.get(wheel.id) ?? identityOf(wheel);
    known.set(wheel.id, found);
    return found;
  };
}

/** The need, or why there is none. */
function findNeed(job: Job, model: DriveModel, wheel: Wheel): Need | string {
  if (!isCovered(wheel))
    return `a ${wheel.kind} is not matched yet: spur gears, internal gears and racks are`;
  const driven = model.wheels.find(({ id }) => id === wheel.id);
  if (driven?.spec) return needOfDrive(model, wheel.id, driven.spec, true, collectPlace(job, wheel));
  const fields = wheel.spec;
  if (fields?.teeth !== undefined && fields.moduleMm !== undefined) {
    return needOfDrive(
      model,
      wheel.id,
      specOfFields(fields, kindOf(wheel), 'spec'),
      true,
      collectPlace(job, wheel),
    );
  }
  const [answer] = identify(job, { wheelId: wheel.id }).wheels;
  const [lead] = answer.candidates;
  if (!lead) {
    const [next] = answer.next;
    return `what the wheel was is not known yet${next ? `; measure next: ${next.why}` : ': count its teeth and measure across the tips'}`;
  }
  const isSure = (answer.verdict === 'certain' || answer.verdict === 'likely') && answer.suspect.length === 0;
  const spec: GearSpec = specOfFields(lead.spec, kindOf(wheel), 'spec');
  return needOfDrive(model, wheel.id, spec, isSure, collectPlace(job, wheel));
}

function withoutNeed(wheel: Wheel, why: string): WheelSubstitutes {
  return {
    id: wheel.id,
    name: wheel.name ?? null,
    need: null,
    rows: [],
    traps: [],
    found: { sameTeeth: 0, otherTeeth: 0, lookAlikes: 0 },
    rolled: 0,
    worthRolling: 0,
    notes: [why],
  };
}

function reportWheel(wheel: Wheel, need: Need, match: StockMatch, hasParts: boolean): WheelSubstitutes {
  const stock = match.rows.map((row) => reportStockRow(row, need));
  const made = listMade(need, roll).map((row) => reportMade(row, need));
  const notes = [...need.notes];
  if (!need.isSure)
    notes.unshift(
      'what the wheel was is not settled: this is for the leading answer; `identify` says what to measure next',
    );
  if (need.mates.length === 0)
    notes.push(
      'nothing could be rolled: no mate is known well enough, so teeth are compared by their numbers alone',
    );
  if (need.spec.kind !== 'external')
    notes.push('only external wheels are matched with stock: this one can be made');
  if (need.spec.helixAngle !== 0)
    notes.push(
      'stock gears here are spur gears: for a slanted one, change both wheels of the pair for spur gears, or make it',
    );
  if (match.rolled < match.worthRolling && need.mates.length > 0) {
    notes.push(
      `${match.rolled} of ${match.worthRolling} different toothings were rolled, the leading ones of each kind`,
    );
  }
  if (!hasParts) notes.push('your own spares were not looked through: no parts file was given');
  const rows = [...stock.filter(({ kind }) => kind !== 'look-alike'), ...made];
  return {
    id: wheel.id,
    name: wheel.name ?? null,
    need: {
      spec: fieldsOfSpec(need.spec),
      isSure: need.isSure,
      shaftMm: need.shaft ?? null,
      faceWidthMm: need.faceWidth ?? null,
      mates: need.mates.map(({ id, centerDistance, uncertainty, isMeasured }) => ({
        id,
        centerMm: centerDistance,
        uMm: uncertainty,
        isMeasured,
      })),
    },
    rows: rows.sort((a, b) => rankOf(a) - rankOf(b)),
    traps: stock.filter(({ kind }) => kind === 'look-alike'),
    found: match.found,
    rolled: match.rolled,
    worthRolling: match.worthRolling,
    notes,
  };
}

/** What fits before what does not quite; then as good as new before made, made before another count. Stable within. */
function rankOf({ kind, fits }: SubstituteRow): number {
  return (fits ? 0 : 10) + order.indexOf(kind);
}

const order: readonly SubstituteRow['kind'][] = [
  'exact',
  'rework',
  'made',
  'made-to-distance',
  'other-teeth',
  'look-alike',
];
