/**
 * What a part needs beyond the old wheel's shape so that it fits and lasts: fits, play, bonds, warm places, how long a
 * material is to be trusted. A person's own measured machine replaces these figures.
 */
const practice = 'common practice, no published source';
const memory = 'value from memory';

/** How much wider than its shaft a bore is made, mm on the diameter of the finished part. */
export interface ShaftFit {
  readonly process: string;
  /** Goes on by hand and is bonded */
  readonly slipMm: readonly [number, number];
  /** Turns on a fixed pin */
  readonly turnsMm: readonly [number, number];
  readonly source: string;
}

const fitFromMemory = `slip: ${memory}; turning: guides of print services and one maker's trial fits`;

export const shaftFits: readonly ShaftFit[] = [
  { process: 'filament-0.4', slipMm: [0.05, 0.15], turnsMm: [0.2, 0.4], source: fitFromMemory },
  { process: 'filament-0.25', slipMm: [0.04, 0.1], turnsMm: [0.15, 0.3], source: practice },
  { process: 'filament-0.6', slipMm: [0.1, 0.2], turnsMm: [0.3, 0.5], source: practice },
  { process: 'resin', slipMm: [0.03, 0.08], turnsMm: [0.1, 0.2], source: fitFromMemory },
  { process: 'powder-bed', slipMm: [0.1, 0.2], turnsMm: [0.3, 0.6], source: fitFromMemory },
  { process: 'machine-shop', slipMm: [0.005, 0.015], turnsMm: [0.02, 0.04], source: practice },
  { process: 'laser-cut', slipMm: [0.05, 0.15], turnsMm: [0.15, 0.3], source: practice },
];

/** How far a flank strays from its true curve, mm. */
export const flankErrors: readonly {
  readonly process: string;
  readonly mm: number;
  readonly source: string;
}[] = [
  {
    process: 'filament-0.4',
    mm: 0.067,
    source: 'a published study of printed gear profiles: mean 0.067 ± 0.02 mm',
  },
  { process: 'filament-0.25', mm: 0.045, source: practice },
  { process: 'filament-0.6', mm: 0.1, source: practice },
  { process: 'resin', mm: 0.02, source: practice },
  { process: 'powder-bed', mm: 0.07, source: practice },
  { process: 'machine-shop', mm: 0.005, source: practice },
  { process: 'laser-cut', mm: 0.05, source: practice },
];

/** Backlash that a pair of true wheels is given. */
export const trueBacklash = {
  modules: 0.045,
  source: 'a trade glossary of backlash: 3 to 6 % of the module',
  reason: 'the middle of what the trade gives; the strays of the flanks come on top',
} as const;

/** Glue in a slip fit, degreased and roughened. */
export const bond = {
  shearMpa: 3,
  /** Times the stall torque that a bond has to hold */
  margin: 2,
  source: practice,
  reason: 'glues are sold with 10 to 20 MPa on steel; on plastic, by hand, in a gap, a third is safer',
} as const;

/** No glue holds on these by itself. */
export const ungluable: readonly string[] = ['pom'];

/** A bush from stock tube. */
export const bush = {
  wallMm: 0.5,
  stepMm: 0.5,
  source: practice,
  reason: 'thin brass tube is sold with walls of about 0.45 mm in steps of half a millimeter',
} as const;

/** How deep a filed flat goes. */
export const filedFlat = {
  /** Flat to opposite wall, of the diameter */
  part: 0.85,
  source: practice,
  reason: 'shafts that are sold with a flat have 0.75 to 0.9 of their diameter left',
} as const;

/** A hub this many bores wide. */
export const goodHub = {
  bores: 2,
  source: 'a design guide for plastic gears; classic rule',
  reason: 'thicker adds grip and room for glue, but takes nothing off the stretch of a press fit',
} as const;

/** How far a turning mate stays from a hub, mm. */
export const hubGap = { mm: 0.3, source: practice } as const;

/** How warm teeth run where nobody measured. */
export const warmPlaces: readonly {
  readonly key: 'motor' | 'lamp';
  readonly name: string;
  readonly temperatureC: number;
  readonly source: string;
}[] = [
  { key: 'motor', name: 'beside a motor or on its shaft', temperatureC: 50, source: practice },
  { key: 'lamp', name: 'beside a lamp, heater or regulator', temperatureC: 80, source: practice },
];

/** A wheel that is meant to give way first carries this part of what its mates carry. */
export const weakLink = { part: 0.8, source: practice } as const;

/** When a part is to be looked at again, months after it was put in. */
export const lookAgain: readonly {
  readonly materials: readonly string[];
  readonly months: number;
  readonly isStopgap: boolean;
  readonly reason: string;
  readonly source: string;
}[] = [
  {
    materials: ['pla', 'resin'],
    months: 3,
    isStopgap: true,
    reason: 'it creeps or turns brittle within months',
    source: 'trade reports of printed gears: cracks after months, one PLA gear worn through after seven',
  },
  {
    materials: ['petg', 'abs', 'asa', 'resin-tough', 'resin-rigid', 'pc'],
    months: 6,
    isStopgap: false,
    reason: 'printed gears of it have cracked within months to years',
    source: 'trade reports of printed gears: cracks after months to years',
  },
  {
    materials: ['pa12', 'pa6', 'pa66'],
    months: 12,
    isStopgap: false,
    reason: 'it wears and grows slowly',
    source: practice,
  },
  {
    materials: ['pom', 'brass', 'steel'],
    months: 24,
    isStopgap: false,
    reason: 'what the trade makes such gears of',
    source: practice,
  },
];
