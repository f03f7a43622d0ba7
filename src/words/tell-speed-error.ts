/**
 * How far an output is off in words that sound right: percent, and what it loses or gains in an hour, a day or a year,
 * whichever gives a figure that a person can hold. A positive error is a slow output.
 *
 * @param errorRelative found ratio over wanted, less 1
 * @example tellSpeedError(0.0000113906) = 'slow by 0.0011 %, which is 0.041 seconds an hour'
 */
export function tellSpeedError(errorRelative: number): string {
  if (errorRelative === 0) return 'exact';
  const percent = Math.abs(100 * errorRelative);
  const way = errorRelative > 0 ? 'slow' : 'fast';
  // Percent of a ratio and percent of a speed part ways here, so the speed is told.
  if (percent >= 10) {
    const factor = errorRelative > 0 ? 1 + errorRelative : 1 / (1 + errorRelative);
    return `${roundFigure(factor)} times too ${way}`;
  }
  const seconds = Math.abs((3600 * errorRelative) / (1 + errorRelative));
  const [hours, unit] = spans.find(([span]) => seconds * span >= leastSeconds) ?? [0, ''];
  const size = percent < leastPercent ? `by less than ${leastPercent} %` : `by ${roundFigure(percent)} %`;
  if (hours === 0) return `${way} ${size}, less than a thousandth of a second a year`;
  const time = seconds * hours;
  return `${way} ${size}, which is ${roundFigure(time)} ${time === 1 ? 'second' : 'seconds'} ${unit}`;
}

const spans: readonly (readonly [number, string])[] = [
  [1, 'an hour'],
  [24, 'a day'],
  // The Julian year has 8766 hours.
  [8766, 'a year'],
];

const leastSeconds = 0.001;

// More zeros than this nobody reads.
const leastPercent = 0.0001;

/** Two figures, without an exponent. */
function roundFigure(value: number): string {
  const decimals = Math.max(0, 1 - Math.floor(Math.log10(value)));
  return String(Number(value.toFixed(Math.min(decimals, 12))));
}
