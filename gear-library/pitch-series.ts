/**
 * The sizes that gears are made in. A module is in mm, a diametral pitch in teeth an inch of reference diameter,
 * a circular pitch in inches along the reference circle; `module` is the normal module in mm that each stands for.
 */
export type PitchSystem = 'module' | 'diametral-pitch' | 'circular-pitch';

export interface PitchSize {
  readonly system: PitchSystem;
  readonly size: number;
  readonly module: number;
  readonly source: string;
}

/** The size as module, mm: m = 25.4 / P for a diametral pitch, 25.4 p / π for a circular pitch of p inches. */
export function toModule(system: PitchSystem, size: number): number {
  if (system === 'module') return size;
  return system === 'diametral-pitch' ? 25.4 / size : (25.4 * size) / Math.PI;
}

const series: readonly { system: PitchSystem; source: string; sizes: readonly number[] }[] = [
  {
    system: 'module',
    source: 'ISO 54:1996 series I (value from memory)',
    sizes: [1, 1.25, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10],
  },
  {
    system: 'module',
    source: 'ISO 54:1996 series II (value from memory)',
    sizes: [1.125, 1.375, 1.75, 2.25, 2.75, 3.5, 4.5, 5.5, 6.5, 7, 9],
  },
  {
    system: 'module',
    source: 'DIN 780-1 series I below 1 (value from memory)',
    sizes: [0.1, 0.12, 0.16, 0.2, 0.25, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9],
  },
  {
    system: 'module',
    source: 'DIN 780-1 series II below 1 (value from memory)',
    sizes: [0.11, 0.14, 0.18, 0.22, 0.28, 0.35, 0.45, 0.55, 0.65, 0.75, 0.85, 0.95],
  },
  {
    system: 'module',
    source: 'JIS B 1701-2 series II below 1, where DIN 780-1 has no such size (value from memory)',
    sizes: [0.15],
  },
  {
    system: 'diametral-pitch',
    source: 'Diametral pitch series, coarse, as gear handbooks list it (value from memory)',
    sizes: [3, 4, 6, 8, 10, 12, 16],
  },
  {
    system: 'diametral-pitch',
    source: 'Diametral pitch series, fine, as gear handbooks list it (value from memory)',
    sizes: [20, 24, 32, 40, 48, 64, 72, 80, 96, 120, 150, 200],
  },
  {
    system: 'diametral-pitch',
    source: 'Diametral pitches of old stock: common practice, no published source',
    sizes: [14, 18, 22, 26, 28, 30, 36, 44, 50, 56, 60, 100],
  },
  {
    system: 'circular-pitch',
    source: 'Circular pitches by sixteenths of an inch: common practice, no published source',
    sizes: [1 / 16, 1 / 8, 3 / 16, 1 / 4, 5 / 16, 3 / 8, 1 / 2],
  },
];

/** Every listed size, smallest module first. */
export const pitchSizes: readonly PitchSize[] = series
  .flatMap(({ system, source, sizes }) =>
    sizes.map((size) => ({ system, size, module: toModule(system, size), source })),
  )
  .sort((a, b) => a.module - b.module);
