/**
 * Sizes that shafts and bores of small machines usually have. A measured shaft near one of them was probably made to
 * it; a measured size that is near none is as good as any other, and nothing is ever rounded to this list unasked.
 */
export interface UsualSize {
  /** Where the size belongs: what a person would look for in a drawer or a shop */
  readonly system: 'metric' | 'inch';
  /** The size as it is named: mm, or a fraction of an inch */
  readonly name: string;
  /** Nominal diameter, mm */
  readonly diameterMm: number;
  /** Where such shafts are met */
  readonly where: string;
  readonly source: string;
}

const practice = 'common practice, no published source';

/** Exact, ISO 80000-3. */
const inch = 25.4;

function metric(diameterMm: number, where: string): UsualSize {
  return { system: 'metric', name: `${diameterMm} mm`, diameterMm, where, source: practice };
}

function fraction(over: number, under: number, where: string): UsualSize {
  // Six decimals of a mm: every 64th of an inch is exact in them.
  const diameterMm = Number(((over / under) * inch).toFixed(6));
  return { system: 'inch', name: `${over}/${under} in`, diameterMm, where, source: practice };
}

/** Round shafts and the bores that go on them, thinnest first in each system. */
export const usualSizes: readonly UsualSize[] = [
  metric(0.8, 'smallest motors, pins of meters'),
  metric(1, 'small motors, gear pins of recorders'),
  metric(1.2, 'small motors'),
  metric(1.5, 'small motors, gear pins'),
  metric(2, 'motors and gear pins of recorders, toys, printers'),
  metric(2.3, 'motors of 20 to 30 mm'),
  metric(2.5, 'gear pins, motors'),
  metric(3, 'gear pins and spindles'),
  metric(3.17, 'motors of inch origin in metric machines, 1/8 in rounded'),
  metric(3.5, 'spindles'),
  metric(4, 'spindles, gearmotors'),
  metric(5, 'stepping motors, spindles'),
  metric(6, 'rollers, knobs, gearmotors'),
  metric(8, 'rollers, lead screws'),
  metric(10, 'drums, kitchen machines'),
  metric(12, 'drums'),
  fraction(1, 32, 'pins of meters and clocks'),
  fraction(3, 64, 'pins'),
  fraction(1, 16, 'gear pins'),
  fraction(5, 64, 'gear pins'),
  fraction(3, 32, 'gear pins, small spindles'),
  fraction(1, 8, 'motors, spindles'),
  fraction(5, 32, 'spindles'),
  fraction(3, 16, 'spindles, motors'),
  fraction(1, 4, 'rollers, knobs, fan motors'),
  fraction(5, 16, 'rollers, motors'),
  fraction(3, 8, 'drums, motors'),
  fraction(1, 2, 'drums, motors'),
];
