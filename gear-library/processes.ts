/**
 * Ways to make a small gear, as far as the size of its teeth and its bore decide. Figures are typical, not promises:
 * a person's own machine, measured, replaces them.
 */
export interface Process {
  readonly key: string;
  readonly name: string;
  /** Width of a line or pixel, mm; 0 where there is none */
  readonly lineMm: number;
  /** Finest module that is sensible, mm */
  readonly leastModuleMm: number;
  /** How much smaller than drawn a hole comes out, mm on the diameter: usual range; negative: larger */
  readonly holeErrorMm: readonly [number, number];
  /** How much larger than drawn an outside comes out, mm on the diameter: usual range; negative: smaller */
  readonly outsideErrorMm: readonly [number, number];
  /** Thinnest wall that is still a wall, mm */
  readonly leastWallMm: number;
  /** Whether parts are built of layers that part more easily than they tear; the ratio is the material's */
  readonly isLayered: boolean;
  /** Keys of materials.ts that it makes gears of */
  readonly materials: readonly string[];
  readonly reason: string;
  readonly source: string;
}

// The least module is our arithmetic from the line, for 17 teeth and more of 20 degrees without shift (a test does the
// sum again); a shifted pinion of 8 or 10 teeth has a far narrower tip.
const practice = 'common practice, no published source';
const holeFromMemory = 'line and least module: common practice, no published source; hole: value from memory';

export const processes: readonly Process[] = [
  {
    key: 'filament-0.4',
    name: 'filament printer, 0.4 mm nozzle',
    lineMm: 0.45,
    leastModuleMm: 0.7,
    holeErrorMm: [0.1, 0.2],
    outsideErrorMm: [0, 0.2],
    leastWallMm: 0.9,
    isLayered: true,
    materials: ['pla', 'petg', 'abs', 'asa', 'pc'],
    reason: 'a tip land of one line and a tooth of two at the pitch circle',
    source: practice,
  },
  {
    key: 'filament-0.25',
    name: 'filament printer, 0.25 mm nozzle',
    lineMm: 0.28,
    leastModuleMm: 0.45,
    holeErrorMm: [0.05, 0.1],
    outsideErrorMm: [0, 0.12],
    leastWallMm: 0.56,
    isLayered: true,
    materials: ['pla', 'petg', 'abs', 'asa', 'pc'],
    reason: 'a tip land of one line and a tooth of two at the pitch circle',
    source: holeFromMemory,
  },
  {
    key: 'filament-0.6',
    name: 'filament printer, 0.6 mm nozzle',
    lineMm: 0.65,
    leastModuleMm: 1,
    holeErrorMm: [0.1, 0.3],
    outsideErrorMm: [0, 0.3],
    leastWallMm: 1.3,
    isLayered: true,
    materials: ['pla', 'petg', 'abs', 'asa', 'pc'],
    reason: 'a tip land of one line and a tooth of two at the pitch circle',
    source: practice,
  },
  {
    key: 'resin',
    name: 'resin printer',
    lineMm: 0.05,
    leastModuleMm: 0.3,
    holeErrorMm: [0.05, 0.1],
    outsideErrorMm: [-0.1, 0.1],
    leastWallMm: 0.3,
    isLayered: true,
    materials: ['resin', 'resin-tough', 'resin-rigid'],
    reason: 'pixels are fine enough from 0.2 on; strength asks for 0.3',
    source: holeFromMemory,
  },
  {
    key: 'powder-bed',
    name: 'print service, nylon powder',
    lineMm: 0.4,
    leastModuleMm: 0.8,
    holeErrorMm: [-0.1, 0.3],
    outsideErrorMm: [-0.1, 0.2],
    leastWallMm: 0.8,
    isLayered: true,
    materials: ['pa12'],
    reason: 'grain and the spot of the laser round small teeth off',
    source: 'line: value from memory; least module and hole: common practice, no published source',
  },
  {
    key: 'machine-shop',
    name: 'machine shop, cut',
    lineMm: 0,
    leastModuleMm: 0.2,
    holeErrorMm: [0, 0.02],
    outsideErrorMm: [-0.03, 0.01],
    leastWallMm: 0.3,
    isLayered: false,
    materials: ['pom', 'pa6', 'pa66', 'pc', 'brass', 'steel'],
    reason: 'hobs are sold down to fine modules',
    source: practice,
  },
  {
    key: 'laser-cut',
    name: 'laser cutter, sheet',
    lineMm: 0.2,
    leastModuleMm: 0.8,
    holeErrorMm: [-0.25, 0.05],
    outsideErrorMm: [-0.25, 0.05],
    leastWallMm: 0.8,
    isLayered: false,
    materials: ['pom'],
    reason:
      'the beam takes a cut of 0.1 to 0.3 mm, rounds corners and leaves walls off the square; sheet to 5 mm',
    source: practice,
  },
];

/** The process a part is held against when nobody chose one. */
export const usualProcess = 'filament-0.4';
