import { toNumber } from '../numeric/rational.ts';
import { listReworks } from '../stock/list-reworks.ts';
import type { ChosenWheel } from '../stock/list-wheel-groups.ts';
import { namePart, nameSearch } from '../stock/name-part.ts';
import type { NeedPlace } from '../stock/need.ts';
import type { PostsPlan } from '../stock/plan-posts.ts';
import type { Verdict } from '../stock/prove-wheel.ts';
import type { SubstituteTrain, SubstituteTrains, TrainPair } from '../stock/search-substitute-trains.ts';
import { fieldsOfSpec } from './spec-fields.ts';
import type { SpecFields } from './spec-schema.ts';
import { specOfReworked, widthOf } from './substitutes-report.ts';

/** Trains that keep the ratio while the posts stay. Lengths mm. */
export interface TrainsReport {
  /** Product of driven over driver teeth that is looked for, over the meshes that may change */
  readonly wantedRatio: number;
  /** True where the job says what is wanted; else it is what the drive had */
  readonly isWanted: boolean;
  readonly tolerancePercent: number;
  /** Wheels that may change */
  readonly changing: readonly string[];
  /** Whether nothing on these posts is nearer, and nothing on the front is beaten */
  readonly proven: boolean;
  /** Trains that the posts allow, and how many steps it took to know */
  readonly space: number;
  readonly visited: number;
  readonly searchedPercent: number;
  readonly rows: readonly TrainRow[];
  readonly notes: readonly string[];
}

export interface TrainRow {
  readonly ratio: { readonly num: number; readonly den: number };
  /** Positive: the output is slower than wanted */
  readonly errorPercent: number;
  readonly newParts: number;
  /** Times by which the finest made wheel is too fine for the usual printer, less 1; 0 where none is */
  readonly fineness: number;
  readonly backlashMm: number;
  readonly verdict: Verdict;
  /** No other train is as good by ratio, new parts, fineness and backlash at once */
  readonly isOnFront: boolean;
  /** It turns, and the ratio is within the tolerance */
  readonly fits: boolean;
  readonly meshes: readonly {
    readonly driver: WheelPick;
    readonly driven: WheelPick;
    readonly centerMm: number;
    readonly uMm: number;
    readonly verdict: Verdict;
    readonly backlashMinMm: number;
    readonly backlashMaxMm: number;
    readonly transmissionErrorMm: number;
    readonly contactRatio: number;
  }[];
  readonly accept: readonly { readonly wheelId: string; readonly spec: SpecFields }[];
}

export interface WheelPick {
  readonly wheelId: string;
  readonly from: 'present' | 'own' | 'range' | 'made';
  readonly name: string;
  readonly teeth: number;
  readonly moduleMm: number;
  readonly profileShift: number;
  /** What to do to it before it goes in */
  readonly reworks: readonly string[];
  readonly search: string;
}

export function reportTrains(
  plan: PostsPlan,
  found: SubstituteTrains,
  changing: readonly string[],
  placeOf: (wheelId: string) => NeedPlace,
): TrainsReport {
  const empty = plan.posts.filter((_, post) => found.choices[post] === 0);
  const notes = [
    ...plan.notes,
    ...empty.map(
      ({ driver, driven, centerDistance }) =>
        `no two wheels of the pool meet the ${centerDistance.toFixed(2)} mm between "${driver.wheelId}" and "${driven.wheelId}"`,
    ),
    ...(found.isProven
      ? []
      : [
          'the search was ended before all was seen: let fewer wheels change, or fewer tooth counts and modules be made',
        ]),
    'made wheels here are spur gears of full depth, 20 degrees; their shifts suit the distances as measured',
  ];
  return {
    wantedRatio: toNumber(plan.wanted),
    isWanted: plan.isWanted,
    tolerancePercent: plan.tolerance * 100,
    changing,
    proven: found.isProven,
    space: found.space,
    visited: found.visited,
    searchedPercent: found.isProven ? 100 : found.searched * 100,
    rows: found.trains.map((train) => reportTrain(train, plan, placeOf)),
    notes,
  };
}

function reportTrain(
  train: SubstituteTrain,
  plan: PostsPlan,
  placeOf: (wheelId: string) => NeedPlace,
): TrainRow {
  const wheels = train.pairs.flatMap(({ choice }) => [choice.driver, choice.driven]);
  return {
    ratio: train.ratio,
    errorPercent: train.errorRelative * 100,
    newParts: train.newParts,
    fineness: train.fineness,
    backlashMm: train.backlash,
    verdict: train.verdict,
    isOnFront: train.isOnFront,
    fits: train.verdict === 'turns' && Math.abs(train.errorRelative) <= plan.tolerance * (1 + 1e-9),
    meshes: train.pairs.map((pair) => reportMesh(pair, placeOf)),
    accept: wheels
      .filter(({ from }) => from !== 'present')
      .map((wheel) => ({ wheelId: wheel.wheelId, spec: specOfChosen(wheel, placeOf(wheel.wheelId)) })),
  };
}

function reportMesh(
  { question, choice, proof }: TrainPair,
  placeOf: (wheelId: string) => NeedPlace,
): TrainRow['meshes'][number] {
  const { mean } = proof;
  return {
    driver: pick(choice.driver, placeOf),
    driven: pick(choice.driven, placeOf),
    centerMm: question.centerDistance,
    uMm: question.uncertainty,
    verdict: proof.verdict,
    backlashMinMm: mean.backlashLeast,
    backlashMaxMm: mean.backlashGreatest,
    transmissionErrorMm: mean.transmissionError,
    contactRatio: mean.contactRatio,
  };
}

function pick(wheel: ChosenWheel, placeOf: (wheelId: string) => NeedPlace): WheelPick {
  const { wheelId, from, spec, part, size } = wheel;
  const base = { wheelId, teeth: spec.teeth, moduleMm: spec.module, profileShift: spec.profileShift };
  if (part && size) {
    return {
      ...base,
      from: part.from,
      name: namePart(part, size),
      reworks: listReworks(part, spec, placeOf(wheelId)).reworks.map(({ words }) => words),
      search: nameSearch(part, size, spec),
    };
  }
  const shift = Math.abs(spec.profileShift) < 0.005 ? '' : `, shift ${spec.profileShift.toFixed(2)}`;
  return {
    ...base,
    from: from === 'present' ? 'present' : 'made',
    name: `${spec.teeth} teeth, module ${Number(spec.module.toFixed(4))}${shift}${from === 'present' ? ', as it is' : ', to make'}`,
    reworks: [],
    search: '',
  };
}

function specOfChosen({ spec, part }: ChosenWheel, place: NeedPlace): SpecFields {
  if (!part) return { ...fieldsOfSpec(spec), ...widthOf(place.faceWidth ?? null) };
  return specOfReworked(part, spec, listReworks(part, spec, place).reworks, place);
}
