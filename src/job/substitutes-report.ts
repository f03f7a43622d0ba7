import type { GearSpec } from '../involute/gear-spec.ts';
import type { ArrivalCheck } from '../stock/list-arrival-checks.ts';
import type { MadeRow } from '../stock/list-made.ts';
import type { Rework } from '../stock/list-reworks.ts';
import type { StockRow } from '../stock/match-stock.ts';
import type { Need, NeedPlace, SpeedEffect } from '../stock/need.ts';
import type { MeshProof, Verdict, WheelProof } from '../stock/prove-wheel.ts';
import type { StockKind } from '../stock/screen-parts.ts';
import type { StockPart } from '../stock/stock-part.ts';
import { fieldsOfSpec } from './spec-fields.ts';
import type { SpecFields } from './spec-schema.ts';

/** One thing that could go in a wheel's place, with all that is needed to show it and to take it into the job. */
export interface SubstituteRow {
  readonly kind: StockKind | MadeRow['kind'];
  readonly from: 'own' | 'range' | 'made';
  /** What it is, in few words */
  readonly name: string;
  readonly part: {
    readonly id: string;
    readonly kept: string;
    readonly price: string;
    /** Of a range: how many come in a bag */
    readonly count: number | null;
    readonly material: string;
    readonly notes: string;
    readonly boreMm: number | null;
    readonly faceWidthMm: number | null;
    readonly isGuess: boolean;
    readonly moduleUMm: number;
  } | null;
  readonly pitch: { readonly system: string; readonly size: number; readonly moduleMm: number };
  readonly teeth: number;
  /** Whether it can go in: it turns (or is the same wheel and could not be rolled), and the speed stays within tolerance */
  readonly fits: boolean;
  /** Null where it was not rolled */
  readonly verdict: Verdict | null;
  readonly meshes: readonly MeshProof[];
  readonly speed: SpeedEffect | null;
  readonly reworks: readonly (Omit<Rework, 'from' | 'to'> & {
    readonly fromMm: number | null;
    readonly toMm: number | null;
  })[];
  readonly doubts: readonly string[];
  readonly why: string;
  /** Words to search for; empty for what is made */
  readonly search: string;
  readonly checks: readonly (Omit<ArrivalCheck, 'expected' | 'giveOrTake' | 'wrong'> & {
    readonly expectedMm: number;
    readonly giveOrTakeMm: number;
    readonly wrong: { readonly expectedMm: number; readonly name: string } | null;
  })[];
  /** Ways to make it, where it is made */
  readonly processes: readonly { readonly key: string; readonly name: string }[];
  /** The specs of the wheels that it changes, as the job file writes them */
  readonly accept: readonly { readonly wheelId: string; readonly spec: SpecFields }[];
}

export function reportStockRow(row: StockRow, need: Need): SubstituteRow {
  const { part, size } = row;
  return {
    kind: row.kind,
    from: part.from,
    name: row.name,
    part: {
      id: part.id,
      kept: part.kept,
      price: part.price,
      count: part.count,
      material: part.material,
      notes: part.notes,
      boreMm: part.bore?.diameter ?? null,
      faceWidthMm: part.faceWidth,
      isGuess: part.isGuess,
      moduleUMm: part.moduleUncertainty,
    },
    pitch: { system: size.system, size: size.size, moduleMm: size.module },
    teeth: row.spec.teeth,
    fits:
      row.kind !== 'look-alike' &&
      runs(row.proof, row.kind !== 'other-teeth') &&
      row.speed?.isWithin !== false,
    ...reportProof(row.proof),
    speed: row.speed,
    reworks: row.reworks.map(({ from, to, ...rest }) => ({ ...rest, fromMm: from, toMm: to })),
    doubts: row.doubts,
    why: row.why,
    search: row.search,
    checks: row.checks.map(({ expected, giveOrTake, wrong, ...rest }) => ({
      ...rest,
      expectedMm: expected,
      giveOrTakeMm: giveOrTake,
      wrong: wrong ? { expectedMm: wrong.expected, name: wrong.name } : null,
    })),
    processes: [],
    accept: [{ wheelId: need.wheelId, spec: specOfReworked(part, row.spec, row.reworks, need) }],
  };
}

export function reportMade(row: MadeRow, need: Need): SubstituteRow {
  const size = row.spec.module;
  return {
    kind: row.kind,
    from: 'made',
    name: `${row.spec.teeth} teeth, module ${Number(size.toFixed(4))}`,
    part: null,
    pitch: { system: 'module', size, moduleMm: size },
    teeth: row.spec.teeth,
    fits: runs(row.proof, true) && row.speed?.isWithin !== false && row.processes.length > 0,
    ...reportProof(row.proof),
    speed: row.speed,
    reworks: [],
    doubts: row.doubts,
    why: row.why,
    search: '',
    checks: [],
    processes: row.processes,
    // Bore and width stay as the job has them: what is made is made to the place.
    accept: [
      { wheelId: need.wheelId, spec: { ...fieldsOfSpec(row.spec), ...widthOf(need.faceWidth ?? null) } },
    ],
  };
}

/** Turns; or, the same wheel and nothing known to roll it against. */
function runs(proof: WheelProof | undefined, isSame: boolean): boolean {
  return proof === undefined ? isSame : proof.verdict === 'turns';
}

function reportProof(proof: WheelProof | undefined): Pick<SubstituteRow, 'verdict' | 'meshes'> {
  return { verdict: proof?.verdict ?? null, meshes: proof?.meshes ?? [] };
}

/** A part as the job file writes it, once its rework is done. */
export function specOfReworked(
  part: StockPart,
  spec: GearSpec,
  reworks: readonly Rework[],
  place: NeedPlace,
): SpecFields {
  const isShortened = reworks.some(({ kind }) => kind === 'shorten');
  const isBored = reworks.some(
    ({ kind }) => kind === 'ream' || kind === 'drill' || kind === 'bush' || kind === 'bond',
  );
  const shaft = place.shaft ?? place.bore?.diameter;
  return {
    ...fieldsOfSpec(spec),
    ...widthOf(isShortened ? (place.faceWidth ?? part.faceWidth) : part.faceWidth),
    ...(isBored && shaft !== undefined ? { bore: { shape: 'round', diameterMm: shaft } } : boreOf(part)),
  };
}

/** A D hole wants more than one measure, and the list has one: it is left out. */
function boreOf({ bore }: StockPart): Pick<SpecFields, 'bore'> {
  if (bore === null || bore.shape === 'd') return {};
  if (bore.shape === 'none') return { bore: { shape: 'none' } };
  return bore.shape === 'round'
    ? { bore: { shape: 'round', diameterMm: bore.diameter } }
    : { bore: { shape: bore.shape, acrossFlatsMm: bore.diameter } };
}

export function widthOf(faceWidth: number | null): Pick<SpecFields, 'faceWidthMm'> {
  return faceWidth === null ? {} : { faceWidthMm: faceWidth };
}
