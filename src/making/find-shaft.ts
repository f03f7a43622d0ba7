import type { LengthReading, WheelEvidence } from '../readings/wheel-evidence.ts';

/**
 * The shaft's diameter, mm: as read, the caliper's zero taken off; else the bore of a wheel that did not split, which
 * sat on it. Undefined where neither was read.
 */
export function findShaft(evidence: WheelEvidence): number | undefined {
  const isSplit = evidence.damage.some(({ kind }) => kind === 'split');
  return findMeanReading(evidence, 'shaft') ?? (isSplit ? undefined : findMeanReading(evidence, 'bore'));
}

/** The mean of what was read first, the caliper's zero taken off. */
export function findMeanReading(evidence: WheelEvidence, of: 'shaft' | 'bore'): number | undefined {
  const found = evidence.readings.find(
    (one): one is LengthReading => one.of === of && (one as LengthReading).mm !== undefined,
  );
  if (found?.mm === undefined) return undefined;
  const takings = typeof found.mm === 'number' ? [found.mm] : found.mm;
  return takings.reduce((sum, value) => sum + value, 0) / takings.length - (evidence.kit.zeroMm ?? 0);
}
