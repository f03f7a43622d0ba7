import type { SlipPattern } from '../evidence/weigher.ts';
import { findDiameters } from '../involute/gear-diameters.ts';
import { toothThicknessAt } from '../involute/tooth-thickness.ts';
import { buildCandidates, type Candidate, type Residual } from './build-candidates.ts';
import { chooseEnding, type Ending } from './choose-ending.ts';
import { fitsNothing, groupSameTeeth, judge, type PitchChance, sumPitches, type Verdict } from './judge.ts';
import { listSuspects, type Suspect } from './list-suspects.ts';
import { type NextReading, rankNextReadings } from './next-readings.ts';
import { listPossibleReadings } from './possible-readings.ts';
import { nameCandidate, settleParts } from './settle-parts.ts';
import type { WeighedWheel } from './weigh-wheel.ts';

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
  /** The count is worked out too, so the verdict is about size and count together */
  readonly countInferred?: true;
  readonly notes: readonly string[];
}

/** What the rest of the drive adds to one wheel's answer, once the settled parts are known. */
export interface FromTheDrive {
  /** Probability of all that the parts do not hold. */
  readonly rest: number;
  /** Whether the count is inferred too: the verdict is then about size and count. */
  readonly isCountInferred: boolean;
  /** Whether the wheel is not there to be measured. */
  readonly isLost: boolean;
  readonly suspects: readonly Suspect[];
  /** Readings of shaft distances, by the key of a candidate (settle-parts). */
  residualsOf(key: string): readonly Residual[];
  readonly notes: readonly string[];
  /** More to measure; where the size is certain already, not on other wheels. */
  listNext(isCertain: boolean): readonly NextReading[];
}

/** The answer about one wheel from its weighed hypotheses, alone or with what the drive says besides. */
export function concludeIdentity(weighed: WeighedWheel, drive: FromTheDrive = alone): Identity {
  const { wheel, space, lengths, weigher, parts, patterns } = weighed;
  const leading = leadingPattern(weigher.patterns, patterns);
  const settled = settleParts(space, lengths, weigher, parts, leading);
  const all = buildCandidates(space, lengths, settled).map((candidate) => withDrive(candidate, drive));
  const suspect = [...listSuspects(wheel, lengths, weigher.patterns, patterns, all), ...drive.suspects].sort(
    (a, b) => b.probability - a.probability,
  );
  const pitch = sumPitches(all);
  const angles = sumAngles(all);
  const candidates = all.filter((candidate) => candidate.probability >= listedFrom).slice(0, mostListed);
  const lead = candidates[0];
  const nothing = fitsNothing(
    pitch,
    lead,
    suspect.map((one) => one.reading),
  );
  const sure = drive.isCountInferred ? sumSizeAndCount(all) : (pitch[0]?.probability ?? 0);
  const verdict = nothing ? 'nothing-fits' : judge(sure, suspect.length > 0);
  // Of a wheel that is not there nothing can be measured: the drive says what to look for, in its order.
  const next = drive.isLost
    ? drive.listNext(verdict === 'certain')
    : addCountAgain(
        mergeNext(
          lead ? rankNextReadings(space, settled, listPossibleReadings(wheel, { ...lead.spec })) : [],
          drive.listNext(verdict === 'certain'),
        ),
        all,
      );
  const sameTeeth = groupSameTeeth(candidates, candidates.map(baseThickness));
  const ending = verdict === 'certain' ? undefined : chooseEnding(candidates, sameTeeth, next, verdict);
  return {
    id: wheel.id,
    pitch: pitch.filter((chance) => chance.probability >= listedFrom),
    candidates,
    restProbability: Math.max(0, 1 - candidates.reduce((sum, candidate) => sum + candidate.probability, 0)),
    verdict,
    angleVerdict: nothing ? 'nothing-fits' : judge(angles, suspect.length > 0),
    sameTeeth,
    suspect,
    next,
    ...(ending ? { ending } : {}),
    ...(drive.isCountInferred ? { countInferred: true as const } : {}),
    notes: [
      ...lengths.flatMap((length) =>
        length.farOff === undefined
          ? []
          : [
              `taking ${length.farOff + 1} of reading ${length.index + 1} lies far from the others: take it again`,
            ],
      ),
      ...drive.notes,
    ],
  };
}

const alone: FromTheDrive = {
  rest: 0,
  isCountInferred: false,
  isLost: false,
  suspects: [],
  residualsOf: () => [],
  notes: [],
  listNext: () => [],
};

const listedFrom = 0.0005;
const mostListed = 16;

function withDrive(candidate: Candidate, drive: FromTheDrive): Candidate {
  const residuals = drive.residualsOf(nameCandidate(candidate));
  if (drive.rest === 0 && residuals.length === 0) return candidate;
  return {
    ...candidate,
    probability: candidate.probability * (1 - drive.rest),
    residuals: [...candidate.residuals, ...residuals].sort((a, b) => a.reading - b.reading),
  };
}

function mergeNext(own: readonly NextReading[], others: readonly NextReading[]): readonly NextReading[] {
  return others.length === 0 ? own : [...own, ...others].sort((a, b) => b.gainBits - a.gainBits);
}

/** The slip pattern to go on with: no slip unless one is more likely than not. */
function leadingPattern(patterns: readonly SlipPattern[], weights: Float64Array): SlipPattern {
  let best = 0;
  for (let k = 1; k < weights.length; k++) if (weights[k] > weights[best]) best = k;
  return patterns[best].kind === 'zero-not-set' ? patterns[0] : patterns[best];
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

/** Probability of the leading size and count, angles summed out. */
function sumSizeAndCount(candidates: readonly Candidate[]): number {
  const sums = new Map<string, number>();
  for (const { system, size, teeth, probability } of candidates) {
    const key = `${system} ${system === 'free' ? '' : size} ${teeth}`;
    sums.set(key, (sums.get(key) ?? 0) + probability);
  }
  return Math.max(0, ...sums.values());
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
