import type { PitchSystem } from './pitch-series.ts';

/**
 * Series of small spur gears as the trade sells them, in general terms: which counts, bores, widths and materials one
 * can expect to find by searching for these words. No seller's list is copied and nothing here is an offer: a row says
 * what is usual, and the caliper says what arrived.
 */
export interface StockRange {
  readonly key: string;
  /** What to call it when asking for it */
  readonly name: string;
  readonly system: PitchSystem;
  readonly size: number;
  readonly pressureAngleDeg: number;
  /** Counts that are usual */
  readonly teeth: readonly number[];
  /** Counts up to this are met both plain and with the shift given; 0: none */
  readonly shiftedUpTo: number;
  readonly profileShift: number;
  /** Bores as named, mm; moulded ones are usually a tenth under the rod they are pressed on */
  readonly boresMm: readonly number[];
  readonly faceWidthMm: number;
  readonly material: string;
  /** How many come in a bag */
  readonly pack: number;
  readonly reason: string;
  readonly source: string;
}

const source = 'common practice, no published source';

/** Whole numbers from `from` to `to`, `step` apart. */
function counts(from: number, to: number, step: number): number[] {
  return Array.from({ length: Math.floor((to - from) / step) + 1 }, (_, i) => from + i * step);
}

export const stockRanges: readonly StockRange[] = [
  {
    key: 'hobby-0.5',
    name: 'assorted hobby gears',
    system: 'module',
    size: 0.5,
    pressureAngleDeg: 20,
    teeth: [
      8, 9, 10, 11, 12, 14, 15, 16, 18, 20, 22, 24, 26, 28, 30, 32, 34, 36, 38, 40, 42, 44, 48, 50, 52, 54,
      56, 60,
    ],
    shiftedUpTo: 12,
    profileShift: 0.5,
    boresMm: [1.9, 2.9],
    faceWidthMm: 5,
    material: 'POM',
    pack: 10,
    reason:
      'bags of assorted gears for 2 mm and 3 mm rods: bores a tenth under the rod, small pinions often fat',
    source,
  },
  {
    key: 'acetal-0.4',
    name: 'fine-pitch acetal gears',
    system: 'module',
    size: 0.4,
    pressureAngleDeg: 20,
    teeth: [10, 12, 14, 15, 16, 18, 20, 22, 24, 25, 28, 30, 32, 35, 36, 40, 45, 48, 50, 56, 60],
    shiftedUpTo: 12,
    profileShift: 0.5,
    boresMm: [1.5, 2],
    faceWidthMm: 3,
    material: 'POM',
    pack: 5,
    reason: 'model and instrument gears for thin shafts',
    source,
  },
  {
    key: 'acetal-0.5',
    name: 'fine-pitch acetal gears',
    system: 'module',
    size: 0.5,
    pressureAngleDeg: 20,
    teeth: [
      12, 14, 15, 16, 18, 20, 22, 24, 25, 28, 30, 32, 35, 36, 40, 42, 45, 48, 50, 52, 54, 55, 56, 58, 60, 64,
      70, 72, 75, 80, 90, 100, 120,
    ],
    shiftedUpTo: 0,
    profileShift: 0,
    boresMm: [2, 3, 4],
    faceWidthMm: 3,
    material: 'POM',
    pack: 1,
    reason: 'cut or moulded instrument gears sold singly by module',
    source,
  },
  {
    key: 'brass-0.5',
    name: 'fine-pitch brass gears',
    system: 'module',
    size: 0.5,
    pressureAngleDeg: 20,
    teeth: [
      10, 12, 14, 15, 16, 18, 20, 22, 24, 25, 28, 30, 32, 35, 36, 40, 45, 48, 50, 56, 60, 64, 70, 72, 75, 80,
      90, 100, 120,
    ],
    shiftedUpTo: 0,
    profileShift: 0,
    boresMm: [2, 3, 4],
    faceWidthMm: 4,
    material: 'brass',
    pack: 1,
    reason: 'instrument gears with a hub, sold singly by module',
    source,
  },
  {
    key: 'brass-0.3',
    name: 'fine-pitch brass gears',
    system: 'module',
    size: 0.3,
    pressureAngleDeg: 20,
    teeth: [8, 9, 10, 12, 14, 15, 16, 18, 20, 24, 25, 30, 32, 36, 40, 45, 48, 50, 60],
    shiftedUpTo: 10,
    profileShift: 0.4,
    boresMm: [1, 1.5, 2],
    faceWidthMm: 2,
    material: 'brass',
    pack: 1,
    reason: 'pinions and wheels of small gearmotors and models',
    source,
  },
  {
    key: 'acetal-0.6',
    name: 'acetal gears',
    system: 'module',
    size: 0.6,
    pressureAngleDeg: 20,
    teeth: [...counts(12, 30, 2), 32, 36, 40, 45, 48, 50, 56, 60, 72, 80],
    shiftedUpTo: 0,
    profileShift: 0,
    boresMm: [2, 3],
    faceWidthMm: 5,
    material: 'POM',
    pack: 1,
    reason: 'model car gears; sold as metric 48 pitch too, since 42.33 teeth an inch is exactly 0.6',
    source,
  },
  {
    key: 'acetal-0.8',
    name: 'acetal gears',
    system: 'module',
    size: 0.8,
    pressureAngleDeg: 20,
    teeth: [12, 14, 15, 16, 18, 20, 24, 25, 28, 30, 32, 36, 40, 45, 48, 50, 60],
    shiftedUpTo: 0,
    profileShift: 0,
    boresMm: [3, 4, 5],
    faceWidthMm: 6,
    material: 'POM',
    pack: 1,
    reason: 'small machine gears sold singly by module',
    source,
  },
  {
    key: 'acetal-1',
    name: 'acetal gears',
    system: 'module',
    size: 1,
    pressureAngleDeg: 20,
    teeth: [12, 14, 15, 16, 18, 20, 24, 25, 28, 30, 32, 36, 40, 45, 48, 50, 60, 70, 80, 100],
    shiftedUpTo: 0,
    profileShift: 0,
    boresMm: [4, 5, 6],
    faceWidthMm: 9,
    material: 'POM',
    pack: 1,
    reason: 'the size that every gear seller has',
    source,
  },
  {
    key: 'steel-1',
    name: 'steel gears',
    system: 'module',
    size: 1,
    pressureAngleDeg: 20,
    teeth: [12, 13, 14, 15, 16, 17, 18, 19, 20, 24, 25, 28, 30, 32, 36, 40, 45, 48, 50, 60],
    shiftedUpTo: 0,
    profileShift: 0,
    boresMm: [5, 6, 8],
    faceWidthMm: 10,
    material: 'steel',
    pack: 1,
    reason: 'the size that every gear seller has',
    source,
  },
  {
    key: 'inch-48',
    name: '48 pitch model gears',
    system: 'diametral-pitch',
    size: 48,
    pressureAngleDeg: 20,
    teeth: [12, ...counts(14, 36, 1), 40, 42, 45, 48, 50, 54, 60, 64, 66, 70, 72, 75, 78, 81, 84, 87, 90],
    shiftedUpTo: 0,
    profileShift: 0,
    boresMm: [2, 3.175],
    faceWidthMm: 5,
    material: 'steel or acetal',
    pack: 1,
    reason: 'model car pinions for motors with 1/8 in and 2 mm shafts, and their large wheels',
    source,
  },
  {
    key: 'inch-64',
    name: '64 pitch model gears',
    system: 'diametral-pitch',
    size: 64,
    pressureAngleDeg: 20,
    teeth: [12, ...counts(14, 56, 1), 60, 64, 72, 78, 80, 84, 88, 90, 96, 100, 112, 116, 120],
    shiftedUpTo: 0,
    profileShift: 0,
    boresMm: [2, 3.175],
    faceWidthMm: 4,
    material: 'aluminum or acetal',
    pack: 1,
    reason: 'model car and slot car gears',
    source,
  },
  {
    key: 'inch-32',
    name: '32 pitch gears',
    system: 'diametral-pitch',
    size: 32,
    pressureAngleDeg: 20,
    teeth: [...counts(10, 24, 1), 28, 30, 32, 36, 40, 48, 50, 56, 60, 64, 72, 80],
    shiftedUpTo: 0,
    profileShift: 0,
    boresMm: [3.175, 5, 6.35],
    faceWidthMm: 6,
    material: 'steel or acetal',
    pack: 1,
    reason: 'model car, robot and small machine gears of inch lands',
    source,
  },
  {
    key: 'inch-24',
    name: '24 pitch gears',
    system: 'diametral-pitch',
    size: 24,
    pressureAngleDeg: 20,
    teeth: [12, 14, 15, 16, 18, 20, 21, 24, 27, 28, 30, 32, 36, 40, 42, 48, 54, 60, 72],
    shiftedUpTo: 0,
    profileShift: 0,
    boresMm: [6.35, 7.94],
    faceWidthMm: 6.35,
    material: 'brass or steel',
    pack: 1,
    reason: 'stock gears of inch lands',
    source,
  },
];
