/** Who makes a part, and what they want to be handed. */
export interface Maker {
  readonly key: string;
  readonly name: string;
  /** Keys of the processes they have, the usual one first; empty where nothing is made */
  readonly processes: readonly string[];
  /** Keys of the part formats that they are given; pdf: the making sheet */
  readonly formats: readonly string[];
  /** Whether the message goes to someone else */
  readonly isOrdered: boolean;
  /** How many are worth having at once */
  readonly count: number;
  readonly whyCount: string;
  /** Give or take of what matters, mm */
  readonly toleranceMm: {
    readonly outside: number;
    readonly span: number;
    readonly bore: number;
    readonly width: number;
  };
  readonly facing: string;
  readonly source: string;
}

const practice = 'common practice, no published source';

export const makers: readonly Maker[] = [
  {
    key: 'my-filament',
    name: 'my filament printer',
    processes: ['filament-0.4', 'filament-0.25', 'filament-0.6'],
    formats: ['3mf', 'pdf'],
    isOrdered: false,
    count: 3,
    whyCount: 'one to measure, one to run, one to keep beside the machine',
    toleranceMm: { outside: 0.15, span: 0.08, bore: 0.1, width: 0.2 },
    facing: 'flat on the bed, axis upright, the plain face down',
    source: practice,
  },
  {
    key: 'my-resin',
    name: 'my resin printer',
    processes: ['resin'],
    formats: ['stl', 'pdf'],
    isOrdered: false,
    count: 3,
    whyCount: 'one to measure, one to run, one to keep beside the machine',
    toleranceMm: { outside: 0.08, span: 0.04, bore: 0.05, width: 0.15 },
    facing: 'axis upright or leaning a little, supports on the plain face and never on the teeth',
    source: practice,
  },
  {
    key: 'print-service',
    name: 'a print service',
    processes: ['powder-bed'],
    formats: ['stl', 'pdf'],
    isOrdered: true,
    count: 3,
    whyCount: 'postage costs more than the second and the third',
    toleranceMm: { outside: 0.2, span: 0.1, bore: 0.2, width: 0.2 },
    facing: 'axis upright',
    source: practice,
  },
  {
    key: 'machine-shop',
    name: 'a machine shop',
    processes: ['machine-shop'],
    formats: ['step', 'dxf', 'pdf'],
    isOrdered: true,
    count: 2,
    whyCount: 'setting up costs more than the second',
    toleranceMm: { outside: 0.03, span: 0.02, bore: 0.01, width: 0.05 },
    facing: 'either face',
    source: practice,
  },
  {
    key: 'laser-cutter',
    name: 'a laser cutter',
    processes: ['laser-cut'],
    formats: ['dxf', 'svg', 'pdf'],
    isOrdered: true,
    count: 4,
    whyCount: 'the cut is not quite square and not always the same: pick the best',
    toleranceMm: { outside: 0.1, span: 0.08, bore: 0.1, width: 0.2 },
    facing: 'either face',
    source: practice,
  },
  {
    key: 'buy-one',
    name: "I'll buy one",
    processes: [],
    formats: [],
    isOrdered: true,
    count: 2,
    whyCount: 'one to keep',
    toleranceMm: { outside: 0.1, span: 0.05, bore: 0.05, width: 0.2 },
    facing: '',
    source: practice,
  },
];
