import { processes, usualProcess } from '../gear-library/processes.ts';
import { stockRanges } from '../gear-library/stock-ranges.ts';
import type { DriveModel } from './drive/drive-model.ts';
import { identify } from './identify.ts';
import type { GearSpec } from './involute/gear-spec.ts';
import { collectDrive } from './job/collect-drive.ts';
import { findWheels, isCovered, kindOf } from './job/collect-evidence.ts';
import { collectPlace } from './job/collect-place.ts';
import type { Job, Wheel } from './job/job-schema.ts';
import { openIdentities } from './job/open-identities.ts';
import { roundNumbers } from './job/round-numbers.ts';
import { fieldsOfSpec, specOfFields } from './job/spec-fields.ts';
import { reportMade, reportStockRow, type SubstituteRow } from './job/substitutes-report.ts';
import { reportTrains, type TrainsReport } from './job/trains-report.ts';
import { rollPair } from './rolling/roll-pair.ts';
import { listMade } from './stock/list-made.ts';
import { listRangeParts } from './stock/list-range-parts.ts';
import { listReworks } from './stock/list-reworks.ts';
import type { WheelPool } from './stock/list-wheel-groups.ts';
import { matchStock, type StockMatch } from './stock/match-stock.ts';
import type { Need, NeedPlace, Roll } from './stock/need.ts';
import { needOfDrive } from './stock/need-of-drive.ts';
import { planPosts } from './stock/plan-posts.ts';
import { searchSubstituteTrains } from './stock/search-substitute-trains.ts';
import { specOfPart } from './stock/spec-of-part.ts';
import { indexParts } from './stock/stock-index.ts';
import type { StockPart } from './stock/stock-part.ts';
import { nameReading } from './words/name-reading.ts';

export interface SubstituteOptions {
  /** This wheel only; else every wheel that is damaged or lost, or all where none is said to be */
  readonly wheelId?: string | undefined;
  /** The person's own parts */
  readonly parts?: readonly StockPart[] | undefined;
  /** Wheels that substitute trains may change; else those that are looked at, and what they mesh with */
  readonly change?: readonly string[] | undefined;
  /** Tooth counts that can be made; 10 to 120 where left out */
  readonly teeth?: readonly [number, number] | undefined;
  /** Modules that can be made; those of the drive where left out */
  readonly modulesMm?: readonly number[] | undefined;
}

/** What fits a job's wheels. Plain data; lengths mm, angles degrees. */
export interface SubstitutesReport {
  readonly wheels: readonly WheelSubstitutes[];
  /** Trains that keep the ratio on the posts as they are; null where there is nothing to search, and `notes` say why */
  readonly trains: TrainsReport | null;
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

/** What the search is at: proofs of a wheel's parts, or a share of the trains. */
export interface SubstituteProgress {
  /** Null while trains are searched */
  readonly wheelId: string | null;
  readonly done: number;
  readonly of: number;
  /** Trains that the posts allow, while they are searched */
  readonly space?: number;
  /** Steps that the search will take, roughly: known from its first word on */
  readonly work?: number;
}

/**
 * What can go where a job's damaged or lost wheels were, so that the machine runs as it did: parts out of the drawer,
 * parts as the trade sells them, and parts to make, each rolled against its mates at the shafts' distance; the traps that
 * look like them; each with all that is needed to show it and to take it into the job (`accept`).
 *
 * A search for trains that would take minutes is not begun: its answer says so and how to narrow it. Whoever wants to
 * wait runs `searchSubstitutes`.
 *
 * Throws Fail `no-such-wheel`.
 */
export function findSubstitutes(job: Job, options: SubstituteOptions = {}): SubstitutesReport {
  const search = searchSubstitutes(job, options);
  let step = search.next();
  while (!step.done) step = search.next((step.value.work ?? 0) > mostWork ? 'stop' : undefined);
  return step.value;
}

/** Steps: about half a minute. */
const mostWork = 1e9;

/**
 * The same, a step for each proof and every few milliseconds of the search for trains, so that a worker can tell how far
 * it is and can be stopped. Answering `'stop'` while trains are searched ends that search with the best so far.
 */
export function* searchSubstitutes(
  job: Job,
  options: SubstituteOptions = {},
): Generator<SubstituteProgress, SubstitutesReport, 'stop' | undefined> {
  const wheels = chooseWheels(job, options.wheelId);
  const model = collectDrive(job, openIdentities(job));
  const own = options.parts ?? [];
  const index = indexParts([...own, ...stockRanges.flatMap(listRangeParts)]);
  const needs = wheels.map((wheel) => findNeed(job, model, wheel, null));
  const trains = yield* findTrainsOnPosts(job, withNeeds(model, needs), wheels, options);
  const reports: WheelSubstitutes[] = [];
  for (const [at, wheel] of wheels.entries()) {
    // A wheel of which nothing is known may be worked out by the trains.
    const found =
      typeof needs[at] === 'string' && typeof trains !== 'string'
        ? findNeed(job, model, wheel, trains)
        : needs[at];
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
  if (typeof trains === 'string') notes.push(`no other trains were searched: ${trains}`);
  return roundNumbers({ wheels: reports, trains: typeof trains === 'string' ? null : trains, notes });
}

/** The drive with what the needs found out: wheels that are not settled, and mates that were only counted. */
function withNeeds(model: DriveModel, needs: readonly (Need | string)[]): DriveModel {
  const specs = new Map<string, GearSpec>();
  for (const need of needs) {
    if (typeof need === 'string') continue;
    for (const { id, wheel } of need.mates) specs.set(id, wheel.spec);
    specs.set(need.wheelId, need.spec);
  }
  const wheels = model.wheels.map((wheel) => {
    const spec = wheel.spec ?? specs.get(wheel.id);
    return spec ? { ...wheel, spec, teeth: wheel.teeth ?? spec.teeth } : wheel;
  });
  return { ...model, wheels };
}

/** The trains, or why none were searched. */
function* findTrainsOnPosts(
  job: Job,
  model: DriveModel,
  wheels: readonly Wheel[],
  options: SubstituteOptions,
): Generator<SubstituteProgress, TrainsReport | string, 'stop' | undefined> {
  const changing = options.change ?? listChanging(job, wheels);
  for (const id of changing) findWheels(job, id);
  const places = new Map((job.wheels ?? []).map((wheel) => [wheel.id, collectPlace(job, wheel)]));
  const placeOf = (id: string): NeedPlace => {
    const place = places.get(id);
    if (!place) throw new Error(`the job has no wheel ${id}`);
    return place;
  };
  const broken = new Set(wheels.filter(isBroken).map(({ id }) => id));
  const plan = planPosts(model, new Set(changing), ({ id, spec }, mayChange) => ({
    wheelId: id,
    // What is broken can't stay; its count may come back as a part or made.
    present: mayChange && broken.has(id) ? undefined : spec,
    mayChange,
    effortOf: (part, own) => {
      const { reworks } = listReworks(part, own, placeOf(id));
      return reworks.every(({ isPossible }) => isPossible) ? reworks.length : undefined;
    },
  }));
  if ('why' in plan) return plan.why;
  const search = searchSubstituteTrains(plan, poolOf(model, options), roll);
  let step = search.next();
  while (!step.done) {
    const { searched, space, work } = step.value;
    step = search.next(yield { wheelId: null, done: Math.round(searched * 100), of: 100, space, work });
  }
  return reportTrains(plan, step.value, changing, placeOf);
}

/** The wheels that are looked at and what they mesh with: a pair is often easier to change than one wheel. */
function listChanging(job: Job, wheels: readonly Wheel[]): string[] {
  const ids = new Set(wheels.map(({ id }) => id));
  const mates = (job.meshes ?? []).flatMap(({ driver, driven }) => {
    if (driver === undefined || driven === undefined) return [];
    return ids.has(driver) ? [driven] : ids.has(driven) ? [driver] : [];
  });
  return [...new Set([...ids, ...mates])];
}

function poolOf(model: DriveModel, options: SubstituteOptions): WheelPool {
  // A size that is only a guess is no ground for a train.
  const parts = [
    ...(options.parts ?? []).filter(({ isGuess }) => !isGuess),
    ...stockRanges.flatMap(listRangeParts),
  ];
  const inDrive = model.wheels.flatMap(({ spec }) => (spec ? [spec.module] : []));
  const modules = options.modulesMm ?? (inDrive.length > 0 ? [...new Set(inDrive)] : usualModules);
  const process = processes.find(({ key }) => key === usualProcess);
  return {
    parts: parts.map((part) => ({ part, size: part.sizes[0], spec: specOfPart(part) })),
    made: {
      teeth: options.teeth ?? [10, 120],
      modules,
      pressureAngles: [usualAngle],
      leastModule: process?.leastModuleMm ?? 0,
    },
  };
}

/** mm: where no wheel of the drive is known. */
const usualModules = [0.5, 0.6, 0.8, 1];
/** 20°, rad: what nearly all small gears have. */
const usualAngle = Math.PI / 9;

/**
 * The mean distance and both ends of what it may be decide the verdict: freedom only grows on the way out. What lies
 * beyond is not looked for here; it costs ten times as much, and the page rolls a row again when it is opened.
 */
const roll: Roll = (driver, driven, at) =>
  rollPair(driver, driven, at, { distances: 3, seeksDistance: false });

function chooseWheels(job: Job, wheelId: string | undefined): readonly Wheel[] {
  if (wheelId !== undefined) return findWheels(job, wheelId);
  const wheels = job.wheels ?? [];
  const wanted = wheels.filter(isBroken);
  return wanted.length > 0 ? wanted : wheels;
}

function isBroken({ state, damage }: Wheel): boolean {
  return state === 'damaged' || state === 'lost' || (damage ?? []).length > 0;
}

/** The need, or why there is none. */
function findNeed(job: Job, model: DriveModel, wheel: Wheel, trains: TrainsReport | null): Need | string {
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
    const fitting = findInTrains(model, wheel, trains);
    if (fitting) {
      const need = needOfDrive(model, wheel.id, fitting, false, collectPlace(job, wheel));
      return {
        ...need,
        notes: ['its teeth were worked out from the speed that is wanted and the distances', ...need.notes],
      };
    }
    const [next] = answer.next;
    return `what the wheel was is not known yet; next: ${next ? `${nameReading(next)}, since ${next.why}` : 'count its teeth and measure across the tips'}`;
  }
  const isSure = (answer.verdict === 'certain' || answer.verdict === 'likely') && answer.suspect.length === 0;
  const spec: GearSpec = specOfFields(lead.spec, kindOf(wheel), 'spec');
  return needOfDrive(model, wheel.id, spec, isSure, collectPlace(job, wheel));
}

/** What the best train has in the wheel's place, its mates being as they are. */
function findInTrains(model: DriveModel, wheel: Wheel, trains: TrainsReport | null): GearSpec | undefined {
  const mates = model.meshes.flatMap(({ driver, driven }) =>
    driver === wheel.id ? [driven] : driven === wheel.id ? [driver] : [],
  );
  for (const { fits, accept } of trains?.rows ?? []) {
    const own = accept.find(({ wheelId }) => wheelId === wheel.id);
    const isAlone = !accept.some(({ wheelId }) => mates.includes(wheelId));
    if (fits && own && isAlone) return specOfFields(own.spec, kindOf(wheel), 'spec');
  }
  return undefined;
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
