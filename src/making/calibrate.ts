import { partMethods, scatterSpread } from '../../gear-library/print-errors.ts';
import type { Process } from '../../gear-library/processes.ts';
import { Fail } from '../fail.ts';
import { type LinearReading, type NormalPosterior, updateNormal } from '../numeric/update-normal.ts';
import { type ErrorPrior, errorOrder, findErrorPrior } from '../readings/error-prior.ts';
import { type PlainReading, readPlainLength } from '../readings/read-plain-length.ts';
import type { Kit } from '../readings/wheel-evidence.ts';
import type { Compensation, CompensationUncertainty } from './compensation.ts';
import { couponForm } from './coupon-form.ts';
import { measureCouponGap } from './measure-coupon-gap.ts';

/** One reading of a coupon; without a value it is not taken. */
export interface CouponReading extends PlainReading {
  /** `foot`: across a width at the first layers; `gap`: over a shank in the notch */
  readonly of: 'outside' | 'foot' | 'bore' | 'gap';
  /** As drawn: which width or hole it was */
  readonly nominalMm?: number | undefined;
  /** Of the gap: the shank's own diameter */
  readonly pinMm?: number | undefined;
}

/** What a machine's coupons say of it. */
export interface Calibration {
  readonly compensation: Compensation;
  readonly uncertainty: CompensationUncertainty;
  /** Coupons with a value; 0: the figures are what is usual for the process */
  readonly coupons: number;
  /** How much one print's sizes differ from the next one's, mm a side, standard deviation */
  readonly betweenPrintsMm: number;
  readonly readings: readonly JudgedReading[];
}

export interface JudgedReading {
  readonly coupon: number;
  readonly reading: number;
  readonly of: CouponReading['of'];
  readonly readMm: number;
  /** With the compensation found */
  readonly expectedMm: number;
  /** Read less expected, in standard deviations of the reading and of one print */
  readonly sigmas: number;
  /** So far from the others that it was not used */
  readonly isLeftOut: boolean;
}

/**
 * The compensation of a machine from caliper readings of its coupons: what is usual for the process, weighed against
 * the readings. All is linear and normal: made = (1 + s) drawn + 2 e for outsides, + 2 b more at the foot, − 2 h for
 * holes, and over a shank in the gap + e + (e + d)/sin α (`measureCouponGap`). Every coupon has errors of its own
 * (outsides, flanks, holes), all share the caliper's zero. How much coupons differ is itself unknown: eleven scatters
 * about the library's are weighed by how well they explain what was read.
 *
 * A reading more than 4.5 standard deviations from what the others say is left out, the worst first, three at most.
 * No value at all gives the process's usual figures. Throws Fail `bad-value` for a size that the coupon doesn't have
 * and a shank that doesn't rest on both flanks.
 */
export function calibrate(
  process: Process,
  coupons: readonly (readonly CouponReading[])[],
  kit: Kit = {},
): Calibration {
  const prior = findErrorPrior(process);
  const taken = coupons.flatMap((readings, coupon) =>
    readings.flatMap((reading, index) => prepare(reading, coupon, index, kit)),
  );
  const out = new Set<Prepared>();
  for (;;) {
    const used = taken.filter((one) => !out.has(one));
    const found = weigh(used, coupons.length, prior);
    const judged = taken.map((one) => judgeReading(one, found, out.has(one)));
    const worst = taken
      .filter((one) => !out.has(one))
      .sort((a, b) => Math.abs(sigmasOf(b, found)) - Math.abs(sigmasOf(a, found)))[0];
    if (worst && out.size < mostLeftOut && Math.abs(sigmasOf(worst, found)) > farOff) {
      out.add(worst);
      continue;
    }
    return {
      ...describe(found),
      coupons: new Set(used.map(({ coupon }) => coupon)).size,
      betweenPrintsMm: found.scatter,
      readings: judged,
    };
  }
}

/** Of a good reading it happens once in 150,000. */
const farOff = 4.5;
const mostLeftOut = 3;

interface Prepared {
  readonly coupon: number;
  readonly index: number;
  readonly of: CouponReading['of'];
  readonly value: number;
  /** Drawn size, method's bias and shank: what it would read were every error 0 */
  readonly expected: number;
  /** By the machine's errors, in `errorOrder` */
  readonly slopes: readonly number[];
  /** By the caliper's zero, as a share of what it may be out */
  readonly zeroDeviation: number;
  readonly noise: number;
}

function prepare(reading: CouponReading, coupon: number, index: number, kit: Kit): Prepared[] {
  const field = `coupons[${coupon}].readings[${index}]`;
  const slopes = new Array<number>(errorOrder.count).fill(0);
  const at = (
    of: CouponReading['of'],
    drawn: number,
    method: { uMm: number; biasMm: number },
  ): Prepared[] => {
    const read = readPlainLength(reading, method, kit);
    return read ? [{ ...read, coupon, index, of, expected: drawn + read.bias, slopes }] : [];
  };
  if (reading.of === 'gap') {
    if (reading.mm === undefined || reading.pinMm === undefined) return [];
    checkPin(reading.pinMm, `${field}.pinMm`);
    const { ofCoupon, ofPin } = measureCouponGap(reading.pinMm);
    const byFlank = 1 / Math.sin((couponForm.gap.pressureAngleDeg * Math.PI) / 180);
    slopes[errorOrder.scale] = ofCoupon;
    slopes[errorOrder.outside] = 1 + byFlank;
    slopes[errorOrder.flanksApart] = byFlank;
    return at('gap', ofCoupon + ofPin, partMethods.gap);
  }
  const hasValue = reading.mm !== undefined || (reading.of === 'bore' && reading.goesMm !== undefined);
  if (!hasValue) return [];
  const sizes: readonly number[] = reading.of === 'bore' ? couponForm.bores : couponForm.widths;
  const drawn = checkNominal(reading.nominalMm, sizes, `${field}.nominalMm`);
  slopes[errorOrder.scale] = drawn;
  if (reading.of === 'bore') {
    checkShanks(reading, field);
    slopes[errorOrder.holes] = -2;
    return at('bore', drawn, partMethods.hole);
  }
  slopes[errorOrder.outside] = 2;
  if (reading.of === 'foot') slopes[errorOrder.firstLayer] = 2;
  return at(reading.of, drawn, partMethods.wall);
}

function checkPin(pin: number, field: string): void {
  const { leastPin, greatestPin } = couponForm.gap;
  if (pin >= leastPin && pin <= greatestPin) return;
  throw new Fail(
    'bad-value',
    field,
    `a shank of ${pin} mm does not rest on both flanks of the notch`,
    `Use one of ${leastPin} to ${greatestPin} mm.`,
    { pin },
  );
}

function checkShanks({ goesMm: goes, stopsMm: stops }: CouponReading, field: string): void {
  if (goes === undefined || stops === undefined || goes < stops) return;
  throw new Fail(
    'bad-value',
    `${field}.stopsMm`,
    `a shank of ${goes} mm goes in, so one of ${stops} mm can't stop`,
    'Give in goesMm the largest that goes in, in stopsMm the smallest that does not.',
    { goes, stops },
  );
}

function checkNominal(nominal: number | undefined, sizes: readonly number[], field: string): number {
  const found = sizes.find((size) => nominal !== undefined && Math.abs(size - nominal) < 1e-6);
  if (found !== undefined) return found;
  throw new Fail(
    'bad-value',
    field,
    nominal === undefined
      ? 'it does not say which size was measured'
      : `the coupon has no ${nominal} mm there`,
    `Use one of ${sizes.join(', ')}: the size as drawn.`,
    { nominal },
  );
}

interface Weighed {
  readonly mean: readonly number[];
  readonly covariance: readonly number[];
  readonly zero: number;
  readonly scatter: number;
}

/** Unknowns: the machine's errors, the zero, then of every coupon its own error of outsides, flanks and holes. */
function weigh(taken: readonly Prepared[], couponCount: number, prior: ErrorPrior): Weighed {
  const size = errorOrder.count;
  const perCoupon = 3;
  const total = size + 1 + perCoupon * couponCount;
  const rows: LinearReading[] = taken.map(({ slopes, zeroDeviation, coupon, value, expected, noise }) => {
    const row = new Float64Array(total);
    row.set(slopes);
    row[size] = zeroDeviation;
    const own = size + 1 + perCoupon * coupon;
    row[own] = slopes[errorOrder.outside];
    row[own + 1] = slopes[errorOrder.flanksApart];
    row[own + 2] = slopes[errorOrder.holes];
    return { slopes: row, value: value - expected, noise };
  });
  const tries: { readonly scatter: number; readonly weight: number; readonly found: NormalPosterior }[] = [];
  for (let k = -5; k <= 5; k++) {
    const scatter = prior.betweenPrints * Math.exp((k / 2) * scatterSpread.ofLogarithm);
    const mean = new Float64Array(total);
    mean.set(prior.mean);
    const deviation = new Float64Array(total).fill(scatter);
    deviation.set(prior.deviation);
    deviation[size] = 1;
    const found = updateNormal({ mean, deviation }, rows);
    tries.push({ scatter, weight: found.logEvidence - 0.5 * (k / 2) ** 2, found });
  }
  const greatest = Math.max(...tries.map(({ weight }) => weight));
  const weights = tries.map(({ weight }) => Math.exp(weight - greatest));
  const sum = weights.reduce((a, b) => a + b, 0);
  const mixed = (of: (one: (typeof tries)[number]) => number): number =>
    tries.reduce((all, one, k) => all + (weights[k] / sum) * of(one), 0);
  const mean = Array.from({ length: size }, (_, i) => mixed(({ found }) => found.mean[i]));
  // The mixture's covariance: the mean of the parts' and the spread of their means.
  const covariance = Array.from({ length: size * size }, (_, at) => {
    const i = Math.floor(at / size);
    const j = at % size;
    return mixed(
      ({ found }) => found.covariance[i * total + j] + (found.mean[i] - mean[i]) * (found.mean[j] - mean[j]),
    );
  });
  return {
    mean,
    covariance,
    zero: mixed(({ found }) => found.mean[size]),
    scatter: mixed(({ scatter }) => scatter),
  };
}

function expectReading(one: Prepared, found: Weighed): number {
  return one.slopes.reduce(
    (sum, slope, k) => sum + slope * found.mean[k],
    one.expected + one.zeroDeviation * found.zero,
  );
}

function sigmasOf(one: Prepared, found: Weighed): number {
  const { outside, flanksApart, holes } = errorOrder;
  const own = found.scatter * Math.hypot(one.slopes[outside], one.slopes[flanksApart], one.slopes[holes]);
  return (one.value - expectReading(one, found)) / Math.hypot(one.noise, own);
}

function judgeReading(one: Prepared, found: Weighed, isLeftOut: boolean): JudgedReading {
  return {
    coupon: one.coupon,
    reading: one.index,
    of: one.of,
    readMm: one.value,
    expectedMm: expectReading(one, found),
    sigmas: sigmasOf(one, found),
    isLeftOut,
  };
}

function describe({ mean, covariance }: Weighed): Pick<Calibration, 'compensation' | 'uncertainty'> {
  const size = errorOrder.count;
  const { scale, outside, flanksApart, holes, firstLayer } = errorOrder;
  const variance = (i: number, j: number = i): number => covariance[i * size + j];
  const root = (value: number): number => Math.sqrt(Math.max(0, value));
  return {
    compensation: {
      scalePercent: 100 * mean[scale],
      outsidePerSideMm: mean[outside],
      teethPerSideMm: mean[outside] + mean[flanksApart],
      holesPerSideMm: mean[holes],
      // Layers can't draw back from those above.
      firstLayerPerSideMm: Math.max(0, mean[firstLayer]),
    },
    uncertainty: {
      scalePercent: 100 * root(variance(scale)),
      outsidePerSideMm: root(variance(outside)),
      teethPerSideMm: root(variance(outside) + variance(flanksApart) + 2 * variance(outside, flanksApart)),
      holesPerSideMm: root(variance(holes)),
      firstLayerPerSideMm: root(variance(firstLayer)),
    },
  };
}
