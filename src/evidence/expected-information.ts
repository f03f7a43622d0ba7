/**
 * How many bits a reading still to be taken is expected to say about which class is true: the mutual information of
 * the class and the reading, where the reading is a mixture of Gaussians, each belonging to one class.
 *
 * Computed by summing Σ_c ∫ p(c, y) log₂ [p(c | y)/p(c)] dy on an even grid no wider than the least spread (Cover &
 * Thomas, Elements of Information Theory, 2.4); an even grid is spectrally exact for Gaussians. Returns 0 for one
 * class.
 *
 * @param weights of the parts, summing to 1
 * @param classes class of each part, 0 … classCount − 1, parts of one class need not be neighbors
 * @param means, deviations of each part's reading (mm); deviations > 0
 */
export function findExpectedInformation(
  weights: ArrayLike<number>,
  classes: ArrayLike<number>,
  classCount: number,
  means: ArrayLike<number>,
  deviations: ArrayLike<number>,
): number {
  const n = weights.length;
  let least = Number.POSITIVE_INFINITY;
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < n; i++) {
    least = Math.min(least, deviations[i]);
    low = Math.min(low, means[i] - reach * deviations[i]);
    high = Math.max(high, means[i] + reach * deviations[i]);
  }
  // Parts far apart (another unit, another count) would need a long grid; their tails say nothing new.
  const step = Math.max(least * 0.9, (high - low) / longestGrid);
  const columns = Math.ceil((high - low) / step) + 1;
  const density = new Float64Array(columns * classCount);
  const classWeight = new Float64Array(classCount);
  for (let i = 0; i < n; i++) {
    classWeight[classes[i]] += weights[i];
    const deviation = Math.max(deviations[i], 0.7 * step);
    const first = Math.max(0, Math.ceil((means[i] - reach * deviation - low) / step));
    const last = Math.min(columns - 1, Math.floor((means[i] + reach * deviation - low) / step));
    addGaussian(density, classes[i] * columns, low, step, first, last, means[i], deviation, weights[i]);
  }
  let nats = 0;
  for (let k = 0; k < columns; k++) {
    let total = 0;
    for (let c = 0; c < classCount; c++) total += density[c * columns + k];
    if (total <= 0) continue;
    for (let c = 0; c < classCount; c++) {
      const joint = density[c * columns + k];
      if (joint > 0) nats += joint * Math.log(joint / (total * classWeight[c]));
    }
  }
  return Math.max(0, (nats * step) / Math.LN2);
}

const reach = 4.5;
const longestGrid = 1200;

/** Adds weight · N(y; mean, deviation²) to a row of the grid, by a recurrence that needs two exponentials only. */
function addGaussian(
  density: Float64Array,
  row: number,
  low: number,
  step: number,
  first: number,
  last: number,
  mean: number,
  deviation: number,
  weight: number,
): void {
  const h = step / deviation;
  const u = (low + first * step - mean) / deviation;
  let value = ((weight / deviation) * Math.exp(-0.5 * u * u)) / Math.sqrt(2 * Math.PI);
  let ratio = Math.exp(-u * h - 0.5 * h * h);
  const fall = Math.exp(-h * h);
  for (let k = first; k <= last; k++) {
    density[row + k] += value;
    value *= ratio;
    ratio *= fall;
  }
}
