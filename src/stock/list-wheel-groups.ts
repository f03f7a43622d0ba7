import type { GearSpec } from '../involute/gear-spec.ts';
import type { PartSize, StockPart } from './stock-part.ts';

/** One mesh between two posts, and what may stand on either. Lengths mm. */
export interface PairQuestion {
  readonly centerDistance: number;
  /** Standard uncertainty of the distance */
  readonly uncertainty: number;
  readonly driver: PairSide;
  readonly driven: PairSide;
}

/** One side: the wheel that is there, and whether others may take its place. */
export interface PairSide {
  readonly wheelId: string;
  /** The wheel that is there, where it is known and fit to stay */
  readonly present: GearSpec | undefined;
  readonly mayChange: boolean;
  /** How much there is to do before a part goes on here; undefined where it can't. None where left out */
  readonly effortOf?: (part: StockPart, spec: GearSpec) => number | undefined;
}

/** What new wheels may be: parts that exist, and what can be made. */
export interface WheelPool {
  readonly parts: readonly { readonly part: StockPart; readonly size: PartSize; readonly spec: GearSpec }[];
  readonly made: MadePool | undefined;
}

export interface MadePool {
  readonly teeth: readonly [number, number];
  /** m_n, mm */
  readonly modules: readonly number[];
  /** α_n, rad */
  readonly pressureAngles: readonly number[];
  /** Finest module that the process makes well: what is finer costs more */
  readonly leastModule: number;
}

export interface ChosenWheel {
  readonly wheelId: string;
  readonly from: 'present' | 'part' | 'made';
  readonly spec: GearSpec;
  readonly part?: StockPart;
  readonly size?: PartSize;
  /** Whether no other part has these teeth, and only one piece of it is there */
  readonly isSingle?: boolean;
}

/** All wheels of one module and angle that may stand on either side. */
export interface WheelGroup {
  readonly module: number;
  readonly pressureAngle: number;
  readonly drivers: readonly ChosenWheel[];
  readonly driven: readonly ChosenWheel[];
  readonly made: MadePool | undefined;
}

/** The modules and angles at which a pair can stand on two posts, each with the wheels that there are for either. */
export function listWheelGroups({ driver, driven }: PairQuestion, pool: WheelPool): WheelGroup[] {
  const groups = new Map<
    string,
    { module: number; pressureAngle: number; parts: WheelPool['parts'][number][] }
  >();
  const groupOf = (module: number, pressureAngle: number): WheelPool['parts'][number][] => {
    const key = keyOf(module, pressureAngle);
    const found = groups.get(key) ?? { module, pressureAngle, parts: [] };
    groups.set(key, found);
    return found.parts;
  };
  const sides = [driver, driven];
  for (const { present } of sides) if (present) groupOf(present.module, present.pressureAngle);
  const isFree = sides.every(({ mayChange }) => mayChange);
  if (isFree) {
    for (const module of pool.made?.modules ?? []) {
      for (const angle of pool.made?.pressureAngles ?? []) groupOf(module, angle);
    }
  }
  for (const part of pool.parts) {
    const { module, pressureAngle } = part.spec;
    if (isFree || groups.has(keyOf(module, pressureAngle))) groupOf(module, pressureAngle).push(part);
  }
  return [...groups.entries()].map(([key, { module, pressureAngle, parts }]) => ({
    module,
    pressureAngle,
    drivers: listSide(driver, key, parts),
    driven: listSide(driven, key, parts),
    made: pool.made,
  }));
}

function keyOf(module: number, pressureAngle: number): string {
  return `${module.toFixed(5)} ${pressureAngle.toFixed(5)}`;
}

/** The wheels of one group that may stand on a side. Of parts with one toothing the one that wants least work. */
function listSide(side: PairSide, key: string, parts: readonly WheelPool['parts'][number][]): ChosenWheel[] {
  const { wheelId, present, mayChange, effortOf } = side;
  const isOfGroup =
    present &&
    keyOf(present.module, present.pressureAngle) === key &&
    present.helixAngle === 0 &&
    present.kind !== 'rack';
  const kept: ChosenWheel[] = isOfGroup ? [{ wheelId, from: 'present', spec: present }] : [];
  if (!mayChange) return kept;
  const found = new Map<number, { readonly wheel: ChosenWheel; readonly effort: number }>();
  for (const { part, size, spec } of parts) {
    if (spec.helixAngle !== 0) continue;
    const effort = effortOf ? effortOf(part, spec) : 0;
    if (effort === undefined) continue;
    const toothing = spec.teeth * 1000 + Math.round(spec.profileShift * 20);
    const before = found.get(toothing);
    const isSingle = !before && part.from === 'own' && (part.count ?? 1) < 2;
    const wheel: ChosenWheel =
      before && before.effort <= effort ? before.wheel : { wheelId, from: 'part', spec, part, size };
    found.set(toothing, {
      wheel: { ...wheel, isSingle },
      effort: Math.min(effort, before?.effort ?? effort),
    });
  }
  return [...kept, ...[...found.values()].map(({ wheel }) => wheel)];
}
