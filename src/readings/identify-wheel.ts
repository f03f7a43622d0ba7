import { askewSpread, slipRates, wrongSpread, zeroSlipSpread } from '../../gear-library/slips.ts';
import { listRepairs } from '../evidence/list-repairs.ts';
import { createWeigher, type SlipPattern, type WeighedReading } from '../evidence/weigher.ts';
import { findDiameters } from '../involute/gear-diameters.ts';
import { toothThicknessAt } from '../involute/tooth-thickness.ts';
import { buildCandidates, type Candidate } from './build-candidates.ts';
import { chooseEnding, type Ending } from './choose-ending.ts';
import { weighHandRolls } from './hand-roll.ts';
import { buildSpace } from './hypothesis-space.ts';
import { fitsNothing, groupSameTeeth, judge, type PitchChance, sumPitches, type Verdict } from './judge.ts';
import { listMeasuredLengths, type MeasuredLength } from './measured-length.ts';
import { type NextReading, rankNextReadings } from './next-readings.ts';
import { listPossibleReadings } from './possible-readings.ts';
import { settleParts } from './settle-parts.ts';
import { weighSpace } from './weigh-space.ts';
import type { WheelEvidence } from './wheel-evidence.ts';

/** What one wheel is, how sure that is, what does not agree and what to measure next. */
export interface Identity {
  readonly id: string;
  readonly pitch: readonly PitchChance[];
  readonly candidates: readonly Candidate[];
  /** Probability of all that is not listed in `candidates`. */
  readonly restProbability: number;
  readonly verdict: Verdict;
  readonly angleVerdict: Verdict;
  /** Groups of candidates, by index, whose teeth are the same. */
  readonly sameTeeth: readonly (readonly number[])[];
  readonly suspect: readonly Suspect[];
  readonly next: readonly NextReading[];
  readonly ending?: Ending;
  readonly notes: readonly string[];
}

export interface Suspect {
  /** Index of the reading; −1 for the caliper's zero. */
  readonly reading: number;
  readonly of: string;
  readonly probability: number;
  readonly repair?: {
    readonly kind: SlipPattern['kind'] | 'count-off-by-one';
    readonly value?: number;
    readonly unit?: 'mm' | 'teeth';
  };
}

/**
 * Identifies a wheel from its readings: every size, angle, rack and count weighed by every reading with its
 * uncertainty, one slip among the readings allowed.
 *
 * Conditional on what is discrete, readings are linear in the unknowns (shift, tip loss, thinning, tip land, size
 * scale, helix, the caliper's zero), so those are integrated in closed form; slips are rank-one changes
 * (evidence/weigher). Probabilities are meant: of all answers given at 90 %, nine in ten are right, on wheels drawn
 * from the priors in gear-library.
 *
 * Without a tooth count nothing is weighed: the answer is undecided and the next reading is the count.
 */
export function identifyWheel(wheel: WheelEvidence): Identity {
  const lengths = listMeasuredLengths(wheel);
  const space = buildSpace(wheel);
  if (space.counts.length === 0) {
    const why = 'every other reading is understood through the tooth count';
    return { ...withoutAnswer(wheel.id), next: [{ of: 'teeth', gainBits: 0, why }] };
  }
  const weighed = lengths.map(toWeighed);
  const followers = weighed.filter((reading) => reading.zeroShare > 0).length;
  const weigher = createWeigher(
    weighed,
    followers > 1
      ? { logChance: Math.log(slipRates['zero-not-set'].chance), variance: zeroSlipSpread.uMm ** 2 }
      : undefined,
  );
  const { parts, patterns } = weighSpace(space, lengths, weigher, weighHandRolls(wheel.readings));
  const leading = leadingPattern(weigher.patterns, patterns);
  const settled = settleParts(space, lengths, weigher, parts, leading);
  const all = buildCandidates(space, lengths, settled);
  const suspect = listSuspects(wheel, lengths, weigher.patterns, patterns, all);
  const pitch = sumPitches(all);
  const angles = sumAngles(all);
  const candidates = all.filter((candidate) => candidate.probability >= listedFrom).slice(0, mostListed);
  const lead = candidates[0];
  const nothing = fitsNothing(
    pitch,
    lead,
    suspect.map((one) => one.reading),
  );
  const verdict = nothing ? 'nothing-fits' : judge(pitch[0].probability, suspect.length > 0);
  const next = lead ? rankNextReadings(space, settled, listPossibleReadings(wheel, { ...lead.spec })) : [];
  const withCount = addCountAgain(next, all);
  const sameTeeth = groupSameTeeth(candidates, candidates.map(baseThickness));
  const ending = verdict === 'certain' ? undefined : chooseEnding(candidates, sameTeeth, withCount, verdict);
  return {
    id: wheel.id,
    pitch: pitch.filter((chance) => chance.probability >= listedFrom),
    candidates,
    restProbability: Math.max(0, 1 - candidates.reduce((sum, candidate) => sum + candidate.probability, 0)),
    verdict,
    angleVerdict: nothing ? 'nothing-fits' : judge(angles, suspect.length > 0),
    sameTeeth,
    suspect,
    next: withCount,
    ...(ending ? { ending } : {}),
    notes: lengths.flatMap((length) =>
      length.farOff === undefined
        ? []
        : [
            `taking ${length.farOff + 1} of reading ${length.index + 1} lies far from the others: take it again`,
          ],
    ),
  };
}

const listedFrom = 0.0005;
const mostListed = 16;
const suspectFrom = 0.1;

function toWeighed(length: MeasuredLength): WeighedReading {
  const isDiameter = length.of === 'outside' || length.of === 'root';
  const rates = {
    'inch-for-mm': slipRates['inch-for-mm'].chance,
    'radius-for-diameter': slipRates['radius-for-diameter'].chance,
    'swapped-digits': slipRates['swapped-digits'].chance,
    'lost-decimal': slipRates['lost-decimal'].chance,
  };
  return {
    value: length.value,
    repairs: length.value > 0 ? listRepairs(length.value, rates, isDiameter) : [],
    wrong: [
      {
        logChance: Math.log(slipRates.wrong.chance),
        variance: Math.max(wrongSpread.least, wrongSpread.part * length.value) ** 2,
      },
      { logChance: Math.log(slipRates.askew.chance), variance: askewSpread.uMm ** 2 },
    ],
    zeroShare: length.zeroDeviation > 0 ? 1 : 0,
  };
}

/** The slip pattern to go on with: no slip unless one is more likely than not. */
function leadingPattern(patterns: readonly SlipPattern[], weights: Float64Array): SlipPattern {
  let best = 0;
  for (let k = 1; k < weights.length; k++) if (weights[k] > weights[best]) best = k;
  return patterns[best].kind === 'zero-not-set' ? patterns[0] : patterns[best];
}

function listSuspects(
  wheel: WheelEvidence,
  lengths: readonly MeasuredLength[],
  patterns: readonly SlipPattern[],
  weights: Float64Array,
  candidates: readonly Candidate[],
): Suspect[] {
  const suspects: Suspect[] = lengths.map((length, i): Suspect => {
    let probability = 0;
    let best = -1;
    patterns.forEach((pattern, k) => {
      if (pattern.reading !== i) return;
      probability += weights[k];
      if (best < 0 || weights[k] > weights[best]) best = k;
    });
    const kindest = patterns[best];
    return {
      reading: length.index,
      of: length.of,
      probability,
      ...(kindest.kind === 'wrong'
        ? {}
        : { repair: { kind: kindest.kind, value: kindest.repairedValue, unit: 'mm' as const } }),
    };
  });
  patterns.forEach((pattern, k) => {
    if (pattern.kind === 'zero-not-set') {
      suspects.push({ reading: -1, of: 'zero', probability: weights[k], repair: { kind: 'zero-not-set' } });
    }
  });
  const counted = wheel.readings.findIndex(
    (reading) => reading.of === 'teeth' && reading.count !== undefined,
  );
  if (counted >= 0) {
    const reading = wheel.readings[counted];
    const count = reading.of === 'teeth' ? reading.count : undefined;
    const off = candidates.filter((candidate) => candidate.teeth !== count);
    const probability = off.reduce((sum, candidate) => sum + candidate.probability, 0);
    if (off.length > 0) {
      suspects.push({
        reading: counted,
        of: 'teeth',
        probability,
        repair: { kind: 'count-off-by-one', value: off[0].teeth, unit: 'teeth' },
      });
    }
  }
  return suspects
    .filter((one) => one.probability >= suspectFrom)
    .sort((a, b) => b.probability - a.probability);
}

/** Probability of the leading pressure angle, sizes summed out. */
function sumAngles(candidates: readonly Candidate[]): number {
  const sums = new Map<number, number>();
  for (const { pressureAngleDeg, probability } of candidates) {
    sums.set(pressureAngleDeg, (sums.get(pressureAngleDeg) ?? 0) + probability);
  }
  return Math.max(0, ...sums.values());
}

function baseThickness(candidate: Candidate): number {
  const { spec } = candidate;
  return spec.kind === 'rack'
    ? candidate.derived.toothThicknessMm
    : toothThicknessAt(spec, findDiameters(spec).base);
}

/** An uncertain count is a question of its own: its gain is the entropy of the count. */
function addCountAgain(next: readonly NextReading[], candidates: readonly Candidate[]): NextReading[] {
  const sums = new Map<number, number>();
  let total = 0;
  for (const { teeth, probability } of candidates) {
    sums.set(teeth, (sums.get(teeth) ?? 0) + probability);
    total += probability;
  }
  let gainBits = 0;
  for (const sum of sums.values()) if (sum > 0) gainBits -= (sum / total) * Math.log2(sum / total);
  if (gainBits < 0.05) return [...next];
  return [
    ...next,
    {
      of: 'teeth' as const,
      gainBits,
      why: 'the count is not settled: an angle over a row of whole teeth, from a picture, settles it',
    },
  ].sort((a, b) => b.gainBits - a.gainBits);
}

/** An identity that says nothing: no candidates, no next reading. */
export function withoutAnswer(id: string): Identity {
  return {
    id,
    pitch: [],
    candidates: [],
    restProbability: 1,
    verdict: 'undecided',
    angleVerdict: 'undecided',
    sameTeeth: [],
    suspect: [],
    next: [],
    notes: [],
  };
}
