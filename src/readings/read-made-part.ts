import { partMethods } from '../../gear-library/print-errors.ts';
import { jawHabits, tipLandKept } from '../../gear-library/tooth-variation.ts';
import { findDiameters } from '../involute/gear-diameters.ts';
import type { GearSpec } from '../involute/gear-spec.ts';
import { growTeeth } from '../involute/grow-teeth.ts';
import { findTipLand, toothThicknessAt } from '../involute/tooth-thickness.ts';
import { type LinearReading, type NormalPosterior, updateNormal } from '../numeric/update-normal.ts';
import { type ErrorPrior, errorOrder } from './error-prior.ts';
import { expectReading } from './expected-reading.ts';
import { listMeasuredLengths, type MeasuredLength } from './measured-length.ts';
import { readPlainLength } from './read-plain-length.ts';
import type { LengthReading, WheelEvidence } from './wheel-evidence.ts';

/** What a part was meant to be. */
export interface MeantPart {
  readonly spec: GearSpec;
  /** Diameter of a round or flatted bore, mm; undefined for none and for other shapes */
  readonly bore: number | undefined;
  readonly hub: number | undefined;
}

/** What a made part is, as far as its readings say. Lengths mm. */
export interface MadePartReading {
  /** The toothing as made, at the mean */
  readonly spec: GearSpec;
  readonly dimensions: readonly MadeDimension[];
  /** How far the part is from what was meant, in `errorOrder`: posterior of this part */
  readonly errors: readonly number[];
  /** The same of the machine: one part tells only some of it */
  readonly machine: { readonly mean: readonly number[]; readonly deviation: readonly number[] };
  readonly readings: readonly MadeResidual[];
}

export interface MadeDimension {
  /** Tip diameter; arc thickness of a tooth at the meant reference circle, normal plane; bore; hub; percent of length */
  readonly of: 'tip-diameter' | 'tooth-thickness' | 'bore' | 'hub-diameter';
  readonly meant: number;
  readonly made: number;
  readonly error: number;
  readonly u: number;
  /** Whether a reading bears on it; else it is what the process usually does */
  readonly isRead: boolean;
}

export interface MadeResidual {
  /** Index in the part's readings */
  readonly index: number;
  readonly of: string;
  readonly read: number;
  /** Of the part as found */
  readonly expected: number;
  readonly sigmas: number;
  /** So far off that it can't be a reading of this part */
  readonly isLeftOut: boolean;
}

/**
 * What a made part is, from readings of it and what it was meant to be: how far its outsides, flanks and holes reach
 * beyond, and its scale, as in a compensation, what was used taken off. Linear and normal about the mean, taken anew
 * twice; the machine's mean error and this one part's own are told apart, as far as one part can.
 *
 * @param evidence readings of the made part with the kit; counts aside
 * @param prior the process's errors beyond what the compensation used took back
 */
export function readMadePart(evidence: WheelEvidence, meant: MeantPart, prior: ErrorPrior): MadePartReading {
  const taken = listRows(evidence, meant);
  const usual = prior.mean.slice(0, machineErrors);
  const rows = taken.filter((row) => !isFarOff(row, row.expectOn(usual)));
  const size = unknowns.count;
  const mean = new Float64Array(size);
  const deviation = new Float64Array(size);
  for (let k = 0; k < machineErrors; k++) {
    mean[k] = prior.mean[k];
    deviation[k] = prior.deviation[k];
  }
  deviation.fill(prior.betweenPrints, unknowns.own, unknowns.zero);
  deviation[unknowns.zero] = 1;
  let found: NormalPosterior = updateNormal({ mean, deviation }, []);
  for (let round = 0; round < rounds; round++) {
    found = updateNormal(
      { mean, deviation },
      rows.map((row) => linearize(row, found.mean)),
    );
  }
  const errors = partErrors(found.mean);
  return {
    spec: growPart(meant.spec, errors),
    dimensions: listDimensions(meant, found, rows),
    errors,
    machine: {
      mean: Array.from(found.mean.subarray(0, machineErrors)),
      deviation: Array.from({ length: machineErrors }, (_, k) =>
        Math.sqrt(Math.max(0, found.covariance[k * size + k])),
      ),
    },
    readings: taken.map((row) => {
      const expected = expect(row, found.mean);
      return {
        index: row.index,
        of: row.of,
        read: row.value,
        expected,
        sigmas: (row.value - expected) / row.noise,
        isLeftOut: !rows.includes(row),
      };
    }),
  };
}

/** No process is off by so much: another part was measured, or a digit is wrong. It is left out, and said. */
function isFarOff(row: Row, expected: number): boolean {
  return !(Math.abs(row.value - expected) <= farOff.mm + farOff.part * Math.abs(expected));
}

const farOff = { mm: 0.6, part: 0.04 } as const;

/** Spans and tips are all but linear in errors of a tenth of a millimeter. */
const rounds = 3;

/** Scale, outsides, flanks beyond outsides, holes: the first layers are no dimension of a part. */
const machineErrors = errorOrder.firstLayer;
const unknowns = { own: machineErrors, zero: machineErrors + 3, count: machineErrors + 4 } as const;

/** The part's errors: the machine's and its own. */
function partErrors(at: ArrayLike<number>): number[] {
  const { scale, outside, flanksApart, holes } = errorOrder;
  const errors = [0, 0, 0, 0];
  errors[scale] = at[scale];
  errors[outside] = at[outside] + at[unknowns.own];
  errors[flanksApart] = at[flanksApart] + at[unknowns.own + 1];
  errors[holes] = at[holes] + at[unknowns.own + 2];
  return errors;
}

function growPart(spec: GearSpec, errors: readonly number[]): GearSpec {
  const outside = errors[errorOrder.outside];
  return growTeeth(spec, {
    flanks: outside + errors[errorOrder.flanksApart],
    tips: outside,
    scale: 1 + errors[errorOrder.scale],
  });
}

interface Row {
  readonly index: number;
  readonly of: string;
  readonly value: number;
  readonly noise: number;
  readonly zeroDeviation: number;
  /** What it would read on a part with these errors, the zero apart */
  readonly expectOn: (errors: readonly number[]) => number;
}

function listRows(evidence: WheelEvidence, meant: MeantPart): Row[] {
  const rows: Row[] = [];
  for (const length of listMeasuredLengths(evidence)) {
    const nominal = expectLength(meant.spec, length);
    if (nominal === undefined) continue;
    rows.push({
      index: length.index,
      of: length.of,
      value: length.value,
      noise: Math.hypot(Math.sqrt(length.noise), nominal.spread),
      zeroDeviation: length.zeroDeviation,
      expectOn: (errors) =>
        (expectLength(growPart(meant.spec, errors), length)?.value ?? nominal.value) + length.offset,
    });
  }
  evidence.readings.forEach((reading, index) => {
    const isBore = reading.of === 'bore';
    const drawn = isBore ? meant.bore : reading.of === 'hub-diameter' ? meant.hub : undefined;
    if (drawn === undefined) return;
    const read = readPlainLength(
      reading as LengthReading,
      isBore ? partMethods.hole : partMethods.wall,
      evidence.kit,
    );
    if (!read) return;
    const { value, bias, noise, zeroDeviation } = read;
    const { scale, outside, holes } = errorOrder;
    rows.push({
      index,
      of: reading.of,
      value,
      noise,
      zeroDeviation,
      expectOn: (errors) =>
        drawn * (1 + errors[scale]) + 2 * (isBore ? -errors[holes] : errors[outside]) + bias,
    });
  });
  return rows;
}

/** On odd counts jaws read in several ways; where the reading doesn't say which, their middle, as unsure as they differ. */
function expectLength(
  spec: GearSpec,
  length: MeasuredLength,
): { readonly value: number; readonly spread: number } | undefined {
  if (length.of === 'center-distance') return undefined;
  if (length.of !== 'outside' || spec.kind === 'rack' || spec.teeth % 2 === 0) {
    const value = expectReading(spec, {
      of: length.of,
      teeth: length.teeth,
      pinMm: length.pin,
      pitches: length.pitches,
    });
    return value === undefined ? undefined : { value, spread: 0 };
  }
  const { tip } = findDiameters(spec);
  const quarter = Math.PI / (2 * spec.teeth);
  if (spec.kind === 'internal') return { value: tip * Math.cos(quarter), spread: 0 };
  const half = (tipLandKept.mean * Math.max(0, findTipLand(spec))) / tip;
  const byJaws = {
    rocked: tip * Math.cos(Math.max(0, quarter - half)),
    settled: (tip / 2) * (1 + Math.cos(Math.max(0, 2 * quarter - half))),
    true: tip,
  };
  if (length.jaws) return { value: byJaws[length.jaws], spread: 0 };
  let value = 0;
  for (const { jaws, weight } of jawHabits) value += weight * byJaws[jaws];
  let variance = 0;
  for (const { jaws, weight } of jawHabits) variance += weight * (byJaws[jaws] - value) ** 2;
  return { value, spread: Math.sqrt(variance) };
}

function expect(row: Row, at: ArrayLike<number>): number {
  return row.expectOn(partErrors(at)) + row.zeroDeviation * at[unknowns.zero];
}

/** About the point `at`, by central differences of a micrometer (of the scale: as much of one). */
function linearize(row: Row, at: ArrayLike<number>): LinearReading {
  const errors = partErrors(at);
  const slopes = new Float64Array(unknowns.count);
  for (let k = 0; k < machineErrors; k++) slopes[k] = slopeBy(row.expectOn, errors, k);
  slopes[unknowns.own] = slopes[errorOrder.outside];
  slopes[unknowns.own + 1] = slopes[errorOrder.flanksApart];
  slopes[unknowns.own + 2] = slopes[errorOrder.holes];
  slopes[unknowns.zero] = row.zeroDeviation;
  let there = 0;
  for (let k = 0; k < slopes.length; k++) there += slopes[k] * at[k];
  return { slopes, value: row.value - expect(row, at) + there, noise: row.noise };
}

function slopeBy(
  valueOn: (errors: readonly number[]) => number,
  errors: readonly number[],
  k: number,
): number {
  const moved = (by: number): number => valueOn(errors.map((one, i) => (i === k ? one + by : one)));
  return (moved(step) - moved(-step)) / (2 * step);
}

const step = 1e-3;

function listDimensions(meant: MeantPart, found: NormalPosterior, rows: readonly Row[]): MadeDimension[] {
  const { scale, outside, holes } = errorOrder;
  const dimensions: MadeDimension[] = [];
  const add = (
    of: MadeDimension['of'],
    by: readonly string[],
    valueOn: (errors: readonly number[]) => number,
  ) => {
    const errors = partErrors(found.mean);
    const none = errors.map(() => 0);
    const made = valueOn(errors);
    const isRead = rows.some((row) => by.includes(row.of));
    dimensions.push({
      of,
      meant: valueOn(none),
      made,
      error: made - valueOn(none),
      u: findDeviation(valueOn, errors, found.covariance),
      isRead,
    });
  };
  const { spec } = meant;
  if (spec.kind !== 'rack') {
    add('tip-diameter', ['outside', 'tooth-depth'], (errors) => findDiameters(growPart(spec, errors)).tip);
  }
  const thicknessOn = findThickness(spec);
  add('tooth-thickness', ['span', 'over-pins'], (errors) => thicknessOn(growPart(spec, errors)));
  const { bore, hub } = meant;
  if (bore !== undefined) add('bore', ['bore'], (errors) => bore * (1 + errors[scale]) - 2 * errors[holes]);
  if (hub !== undefined) {
    add('hub-diameter', ['hub-diameter'], (errors) => hub * (1 + errors[scale]) + 2 * errors[outside]);
  }
  return dimensions;
}

/** At the circle (a rack: the line) that was the reference when it was drawn, normal plane. */
function findThickness(meant: GearSpec): (made: GearSpec) => number {
  if (meant.kind === 'rack') return (made) => (Math.PI * made.module) / 2 - made.thinning;
  const { reference } = findDiameters(meant);
  // A part that is far too large has its base circle beyond: there its flanks begin.
  return (made) =>
    toothThicknessAt(made, Math.max(reference, findDiameters(made).base)) * Math.cos(made.helixAngle);
}

function findDeviation(
  valueOn: (errors: readonly number[]) => number,
  errors: readonly number[],
  covariance: Float64Array,
): number {
  const size = unknowns.count;
  const slopes = new Float64Array(size);
  for (let k = 0; k < machineErrors; k++) slopes[k] = slopeBy(valueOn, errors, k);
  for (let k = 0; k < 3; k++) slopes[unknowns.own + k] = slopes[errorOrder.outside + k];
  let variance = 0;
  for (let i = 0; i < size; i++)
    for (let j = 0; j < size; j++) variance += slopes[i] * slopes[j] * covariance[i * size + j];
  return Math.sqrt(Math.max(0, variance));
}
