import { pitchSizes } from '../../gear-library/pitch-series.ts';
import type { GearSpec } from '../involute/gear-spec.ts';
import { listPairChoices } from '../stock/list-pair-choices.ts';
import type { DesignMate } from './part-design.ts';
import { rollWithMate } from './roll-with-mates.ts';

/** Two wheels of a coarser module for the same shafts. */
export interface CoarserPair {
  readonly mate: string;
  readonly moduleMm: number;
  readonly teeth: number;
  readonly mateTeeth: number;
  readonly profileShift: number;
  readonly mateProfileShift: number;
  /** Mate's teeth over the part's, against what they were; positive: larger */
  readonly ratioErrorPercent: number;
}

/**
 * Pairs of straight wheels, both external and new, of a listed module at least so coarse, that run at the same distance,
 * each proven by rolling: the nearest ratio first, then the finest module; three at most. Empty where there is none, and
 * for internal wheels and racks.
 */
export function findCoarserPairs(
  spec: GearSpec,
  mate: DesignMate & { readonly center: { readonly mm: number; readonly u: number } },
  leastModule: number,
): CoarserPair[] {
  if (spec.kind !== 'external' || mate.wheel.spec.kind !== 'external') return [];
  const ratio = mate.wheel.spec.teeth / spec.teeth;
  const modules = pitchSizes.flatMap(({ system, module }) =>
    system === 'module' && module >= leastModule - 1e-9 ? [module] : [],
  );
  const sides = [
    { wheelId: 'part', present: undefined, mayChange: true },
    { wheelId: mate.id, present: undefined, mayChange: true },
  ] as const;
  const choices = listPairChoices(
    {
      centerDistance: mate.center.mm,
      uncertainty: mate.center.u,
      driver: mate.isDriven ? sides[0] : sides[1],
      driven: mate.isDriven ? sides[1] : sides[0],
    },
    {
      parts: [],
      made: { teeth: [leastTeeth, mostTeeth], modules, pressureAngles: [pressureAngle], leastModule },
    },
  );
  return choices
    .map(({ driver, driven }) => {
      const [own, other] = mate.isDriven ? [driver.spec, driven.spec] : [driven.spec, driver.spec];
      const ratioErrorPercent = (100 * (other.teeth / own.teeth - ratio)) / ratio;
      return { own, other, ratioErrorPercent };
    })
    .filter(({ ratioErrorPercent }) => Math.abs(ratioErrorPercent) <= mostError)
    .sort(
      (a, b) => Math.abs(a.ratioErrorPercent) - Math.abs(b.ratioErrorPercent) || a.own.module - b.own.module,
    )
    .slice(0, mostRolled)
    .filter(({ own, other }) => rollWithMate(own, { ...mate, wheel: { spec: other } })?.verdict === 'turns')
    .slice(0, mostPairs)
    .map(({ own, other, ratioErrorPercent }) => ({
      mate: mate.id,
      moduleMm: own.module,
      teeth: own.teeth,
      mateTeeth: other.teeth,
      profileShift: own.profileShift,
      mateProfileShift: other.profileShift,
      ratioErrorPercent,
    }));
}

const pressureAngle = (20 * Math.PI) / 180;
/** Fewer are undercut deeply at 20 degrees. */
const leastTeeth = 10;
/** More than small machines have. */
const mostTeeth = 200;
/** A ratio further off than this makes another machine, percent. */
const mostError = 5;
const mostRolled = 12;
const mostPairs = 3;
