import { madeLimits } from '../../gear-library/made-limits.ts';
import { rollingLimits } from '../../gear-library/rolling-limits.ts';
import type { OutOfRound } from '../readings/find-out-of-round.ts';
import type { MadeDimension, MadePartReading } from '../readings/read-made-part.ts';
import type { RollingProof } from '../rolling/rolling-proof.ts';

export type MadeVerdict = 'fits' | 'tight' | 'loose' | 'warped' | 'unread';

/** What is known of a made part, ready to be judged. Lengths mm. */
export interface MadeCase {
  readonly reading: MadePartReading;
  readonly outOfRound: OutOfRound | undefined;
  readonly module: number;
  readonly isInternal: boolean;
  /** The shaft that it goes on, where it was measured */
  readonly shaft: { readonly mm: number; readonly u: number } | undefined;
  /** This part as measured against its mate, where that is known */
  readonly proof: RollingProof | undefined;
}

export interface MadeJudgment {
  readonly verdict: MadeVerdict;
  /** How likely the verdict is, by what was read; of `fits`, of its least sure dimension */
  readonly chance: number;
  readonly dimensions: readonly JudgedDimension[];
  /** Readings that a dimension still wants */
  readonly unread: readonly ('span' | 'outside' | 'bore')[];
}

export interface JudgedDimension extends MadeDimension {
  readonly verdict: 'fits' | 'tight' | 'loose' | 'unread';
  readonly chance: number;
  /** What was held against the limits, mm: backlash, clearance, or the error itself */
  readonly heldAgainst: 'backlash' | 'clearance' | 'error';
}

/**
 * Whether a made part fits: `warped` where takings differ by more than the limit and more than chance would have it;
 * else `tight` or `loose` by its worst dimension, tight first, since that is what can't be lived with; else `fits`.
 * Teeth are held against the least backlash of the rolled pair where there is a proof, the bore against the shaft; what
 * has neither against what was meant. `unread` where nothing is against it and the teeth's thickness was not read.
 */
export function judgeMade(made: MadeCase): MadeJudgment {
  const dimensions = made.reading.dimensions.map((one) => judgeDimension(one, made));
  const unread = listUnread(dimensions);
  const read = dimensions.filter(({ verdict }) => verdict !== 'unread');
  const describe = (verdict: MadeVerdict, chance: number): MadeJudgment => ({
    verdict,
    chance,
    dimensions,
    unread,
  });
  const round = judgeRound(made);
  if (round.isWarped) return describe('warped', round.chance);
  // Teeth that don't even reach the mate's: no length of this part is wrong by a little.
  if (read.length > 0 && made.proof?.mean.backlashLeast === Number.POSITIVE_INFINITY)
    return describe('loose', 1);
  for (const verdict of ['tight', 'loose'] as const) {
    const chances = read.filter((one) => one.verdict === verdict).map(({ chance }) => chance);
    if (chances.length > 0) return describe(verdict, Math.max(...chances));
  }
  if (!read.some(({ of }) => of === 'tooth-thickness')) return describe('unread', 1);
  return describe('fits', Math.min(...read.map(({ chance }) => chance)));
}

function judgeDimension(one: MadeDimension, made: MadeCase): JudgedDimension {
  const held = holdAgainst(one, made);
  if (!one.isRead) return { ...one, verdict: 'unread', chance: 1, heldAgainst: held.by };
  const tight = held.tightBelow === undefined ? 0 : chanceBelow(held.tightBelow, held.value, held.u);
  const loose = held.looseAbove === undefined ? 0 : 1 - chanceBelow(held.looseAbove, held.value, held.u);
  const fits = 1 - tight - loose;
  const [verdict, chance] =
    tight > Math.max(fits, loose)
      ? (['tight', tight] as const)
      : loose > fits
        ? (['loose', loose] as const)
        : (['fits', fits] as const);
  return { ...one, verdict, chance, heldAgainst: held.by };
}

interface Held {
  readonly by: JudgedDimension['heldAgainst'];
  /** Room: the less, the tighter */
  readonly value: number;
  readonly u: number;
  readonly tightBelow: number | undefined;
  readonly looseAbove: number | undefined;
}

function holdAgainst(one: MadeDimension, { module, isInternal, shaft, proof }: MadeCase): Held {
  const byError = (most: number | undefined, least: number | undefined, sign = 1): Held => ({
    by: 'error',
    value: -sign * one.error,
    u: one.u,
    tightBelow: most === undefined ? undefined : -most,
    looseAbove: least === undefined ? undefined : -least,
  });
  switch (one.of) {
    case 'tooth-thickness': {
      const thin = madeLimits.thinnest.modules * module;
      const backlash = proof?.mean.backlashLeast;
      // A tip that stands in the mate's root is no matter of the flanks.
      if (backlash === undefined || !Number.isFinite(backlash) || isTipInRoot(proof))
        return byError(madeLimits.thickest.modules * module, thin);
      // Thicker by so much is closer by as much; looseness stays a matter of the tooth, not of the distance.
      const least = rollingLimits.backlash.leastModules * module;
      return {
        by: 'backlash',
        value: backlash,
        u: one.u,
        tightBelow: least,
        looseAbove: backlash + one.error - thin,
      };
    }
    case 'tip-diameter':
      if (proof && isTipInRoot(proof)) {
        return {
          by: 'backlash',
          value: proof.mean.backlashLeast,
          u: one.u,
          tightBelow: 0,
          looseAbove: undefined,
        };
      }
      // A ring's tips stand inside: more metal is a smaller circle.
      return isInternal
        ? byError(madeLimits.tallest.modules * module, madeLimits.shortest.modules * module, -1)
        : byError(madeLimits.tallest.modules * module, madeLimits.shortest.modules * module);
    case 'bore':
      if (shaft) {
        return {
          by: 'clearance',
          value: one.made - shaft.mm,
          u: Math.hypot(one.u, shaft.u),
          tightBelow: madeLimits.leastClearance.mm,
          looseAbove: madeLimits.mostClearance.mm,
        };
      }
      return {
        by: 'error',
        value: one.error,
        u: one.u,
        tightBelow: madeLimits.narrowest.mm,
        looseAbove: madeLimits.widest.mm,
      };
    case 'hub-diameter':
      // A hub has room about it; it is told, not judged.
      return byError(undefined, undefined);
  }
}

function isTipInRoot(proof: RollingProof | undefined): boolean {
  const found = proof?.mean.interference ?? [];
  return found.length > 0 && found.every(({ where }) => where !== 'both-flanks');
}

function listUnread(dimensions: readonly JudgedDimension[]): MadeJudgment['unread'] {
  const wants = { 'tooth-thickness': 'span', 'tip-diameter': 'outside', bore: 'bore' } as const;
  return dimensions.flatMap(({ of, isRead }) => (isRead || of === 'hub-diameter' ? [] : [wants[of]]));
}

/** More than the limit, and more than two deviations beyond the range that a round part's takings have. */
function judgeRound({ outOfRound, module }: MadeCase): { isWarped: boolean; chance: number } {
  if (!outOfRound) return { isWarped: false, chance: 1 };
  const limit = Math.max(madeLimits.outOfRound.mm, madeLimits.outOfRound.modules * module);
  const { mm, u } = outOfRound;
  return { isWarped: mm > Math.max(limit, 2 * u), chance: chanceBelow(mm, limit, u) };
}

/** Of a normal value lying below a limit, by the tail of Abramowitz & Stegun 26.2.17, right to 1e-7. */
function chanceBelow(limit: number, mean: number, u: number): number {
  if (u === 0) return mean < limit ? 1 : 0;
  const apart = (limit - mean) / u;
  const t = 1 / (1 + 0.2316419 * Math.abs(apart));
  const series =
    t * (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
  const tail = (Math.exp((-apart * apart) / 2) / Math.sqrt(2 * Math.PI)) * series;
  return apart < 0 ? tail : 1 - tail;
}
