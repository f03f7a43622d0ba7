import { sizeScale, tipLandKept } from '../../gear-library/tooth-variation.ts';
import { involute } from '../../src/involute/involute-function.ts';
import type { Random } from '../../src/numeric/random.ts';
import { listPitches, listRacks } from '../../src/readings/pitch-prior.ts';
import { findScaleSpread, findThinning, listShifts, listTipLosses } from '../../src/readings/tooth-prior.ts';
import type { Damage } from '../../src/readings/wheel-evidence.ts';

/** A size of a world, with its chance among all sizes and toothings. */
export interface WorldSize {
  readonly system: string;
  readonly size: number;
  readonly module: number;
  /** Relative spread of the module: a free cell's, else 0. */
  readonly spread: number;
  readonly weight: number;
}

/** An angle and rack of a world, with the sizes that it is made in. */
export interface Toothing {
  readonly pressureAngle: number;
  readonly addendum: number;
  readonly dedendum: number;
  /** mm */
  readonly extraDedendum: number;
  readonly sizes: readonly WorldSize[];
}

/** What varies from wheel to wheel of one toothing and count, in modules or relative. */
export interface ToothDraw {
  readonly shift: number;
  readonly tipLoss: number;
  readonly thinning: number;
  readonly scale: number;
  readonly tipLandKept: number;
}

/** A population of wheels that can be drawn from, and that an exact answer can be held against. */
export interface World {
  /** Chance of a tooth count, not normalized. */
  countChance(teeth: number): number;
  readonly toothings: readonly Toothing[];
  /** Whether a pointed tooth is drawn again with its size and count kept, rather than the whole wheel. */
  readonly keepsSize: boolean;
  /** The ways in which wheels of one toothing and count are shifted and worn. */
  listKinds(toothing: Toothing, teeth: number): readonly ToothKind[];
}

/** One way of being shifted and worn, and how common it is. */
export interface ToothKind {
  readonly weight: number;
  draw(random: Random): ToothDraw;
}

/** The world that the product's prior describes, for wheels with this damage. */
export function openWorld(damage: readonly Damage[] = []): World {
  const wheel = {
    id: 'w',
    kind: 'external',
    damage,
    readings: [],
    kit: {},
    machine: {},
    mates: [],
  } as const;
  const pitches = listPitches({});
  const losses = listTipLosses(wheel);
  const thinning = findThinning(wheel);
  const scaleSpread = findScaleSpread(wheel);
  return {
    // z = 7 e^(u ln(100/7)) with u even, rounded.
    countChance: (z) =>
      z < 7 || z > 100 ? 0 : Math.log(Math.min(100, z + 0.5) / Math.max(7, z - 0.5)) / Math.log(100 / 7),
    toothings: listRacks({}).map(({ pressureAngle, rack, logWeight }) => ({
      pressureAngle,
      addendum: rack.addendum,
      dedendum: rack.dedendum,
      extraDedendum: rack.extraDedendum,
      sizes: pitches.flatMap(({ system, size, module, spread, logWeight: log }) => {
        const weight = Math.exp(log + logWeight[system]);
        return weight > 0 ? [{ system, size, module, spread, weight }] : [];
      }),
    })),
    keepsSize: true,
    listKinds({ pressureAngle, addendum }, teeth) {
      return listShifts('external', teeth, pressureAngle, 0, addendum).flatMap((shift) =>
        losses.map((loss) => ({
          weight: Math.exp(shift.logWeight + loss.logWeight),
          draw: (random: Random): ToothDraw => ({
            shift: shift.mean + shift.spread * random.normal(),
            tipLoss: loss.mean + loss.spread * random.normal(),
            thinning: thinning.mean + thinning.spread * random.normal(),
            scale: scaleSpread * random.normal(),
            tipLandKept: tipLandKept.mean + tipLandKept.spread * random.normal(),
          }),
        })),
      );
    },
  };
}

/** A narrower world than the prior: common sizes, two angles, modest shifts, little wear. */
export function openNarrowWorld(): World {
  const modules = [0.3, 0.4, 0.5, 0.6, 0.8, 1].map((size): WorldSize => {
    return { system: 'module', size, module: size, spread: 0, weight: 1 / 9 };
  });
  const inches = (share: number): WorldSize[] =>
    [32, 48, 64].map((size) => {
      return { system: 'diametral-pitch', size, module: 25.4 / size, spread: 0, weight: share / 9 };
    });
  const twenty = { pressureAngle: (20 * Math.PI) / 180, addendum: 1 };
  return {
    countChance: (z) => (z < 10 || z > 59 ? 0 : 1 / 50),
    toothings: [
      { ...twenty, dedendum: 1.25, extraDedendum: 0, sizes: modules },
      { ...twenty, dedendum: 1.2, extraDedendum: 0.0508, sizes: inches(0.7) },
      {
        pressureAngle: (14.5 * Math.PI) / 180,
        addendum: 1,
        dedendum: 1.157,
        extraDedendum: 0,
        sizes: inches(0.3),
      },
    ],
    keepsSize: false,
    listKinds: (_, teeth) => [
      {
        weight: 1,
        draw: (random): ToothDraw => ({
          shift: teeth < 17 ? 0.5 * random.uniform() : 0,
          tipLoss: 0.05 * random.uniform(),
          thinning: 0.02 + 0.03 * random.uniform(),
          scale: narrowScale * random.normal(),
          tipLandKept: 0.7 + 0.3 * random.uniform(),
        }),
      },
    ],
  };
}

const narrowScale = (sizeScale.plastic.spread * 2) / 3;

/** Angle of the tip land, rad, on a unit module; not above 0: a pointed tooth, which can't be made. */
export function findLand(teeth: number, pressureAngle: number, shift: number, tip: number): number {
  const base = teeth * Math.cos(pressureAngle);
  if (tip <= base) return -1;
  return (
    (Math.PI / 2 + 2 * shift * Math.tan(pressureAngle)) / teeth +
    involute(pressureAngle) -
    involute(Math.acos(base / tip))
  );
}
