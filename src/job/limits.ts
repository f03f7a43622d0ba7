/**
 * How small and how large a number of the job file may be, each with its reason. A limit is there to catch a slip or
 * a broken file, never to say that a gear is unusual; every limit is inclusive.
 */
export interface Limit {
  /** What the number is, as a person would say it. */
  readonly what: string;
  readonly unit: string;
  readonly least: number;
  readonly greatest: number;
  readonly whole: boolean;
  readonly reason: string;
}

export type LimitKey = keyof typeof limits;

const whole = { unit: '', whole: true } as const;
const number = { unit: '', whole: false } as const;
const mm = { unit: 'mm', whole: false } as const;
const deg = { unit: 'degrees', whole: false } as const;

/** Lengths that can't be zero start here: a tenth of a micrometer, finer than any tool at a bench reads. */
const leastLength = 0.0001;

export const limits = {
  length: {
    ...mm,
    what: 'a length',
    least: leastLength,
    greatest: 10_000,
    reason: 'no wheel of a small machine is wider than ten meters',
  },
  distance: {
    ...mm,
    what: 'a distance between two shafts',
    least: leastLength,
    greatest: 10_000,
    reason: 'two shafts that mesh stand apart, and by less than ten meters',
  },
  signedLength: {
    ...mm,
    what: 'a length, either way',
    least: -10_000,
    greatest: 10_000,
    reason: 'no wheel of a small machine is wider than ten meters',
  },
  lengthOrNone: {
    ...mm,
    what: 'a length, 0 for none',
    least: 0,
    greatest: 10_000,
    reason: 'no wheel of a small machine is wider than ten meters',
  },
  chance: {
    what: 'how likely a count is right, 0.05 to 0.999',
    unit: 'of 1',
    whole: false,
    least: 0.05,
    greatest: 0.999,
    reason: 'nobody counts teeth surer than that, and below it the count says nothing',
  },
  uncertainty: {
    ...mm,
    what: 'a give or take',
    least: 0.0001,
    greatest: 100,
    reason: 'no reading is exact, and one that may be 100 mm out says nothing',
  },
  zero: {
    ...mm,
    what: "the caliper's zero error",
    least: -50,
    greatest: 50,
    reason: 'a caliper that is further out than that is broken',
  },
  zeroUncertainty: {
    ...mm,
    what: 'a give or take of the zero',
    least: 0,
    greatest: 10,
    reason: 'a zero that may be further out than that was not set',
  },
  teeth: {
    ...whole,
    what: 'a tooth count',
    least: 4,
    greatest: 1000,
    reason:
      'no involute wheel of fewer than 4 teeth turns evenly, and beyond 1000 the teeth are finer than a caliper sees',
  },
  starts: {
    ...whole,
    what: 'a count of teeth or starts',
    least: 1,
    greatest: 1000,
    reason: 'a worm may have one start; beyond 1000 the teeth are finer than a caliper sees',
  },
  someTeeth: {
    ...whole,
    what: 'a number of teeth',
    least: 0,
    greatest: 1000,
    reason: 'no wheel here has more than 1000',
  },
  spanned: {
    ...whole,
    what: 'a number of teeth',
    least: 1,
    greatest: 1000,
    reason: 'no wheel here has more than 1000',
  },
  turn: {
    ...deg,
    what: 'an angle round the wheel',
    least: 0.01,
    greatest: 360,
    reason: 'a full turn is 360 degrees',
  },
  angleUncertainty: {
    ...deg,
    what: 'a give or take of an angle',
    least: 0.001,
    greatest: 90,
    reason: 'no angle is exact, and one that may be 90 degrees out says nothing',
  },
  phase: {
    ...deg,
    what: 'an angle of a tooth round its part, either way',
    least: -360,
    greatest: 360,
    reason: 'a full turn is 360 degrees',
  },
  features: {
    ...whole,
    what: 'a number of holes or grooves',
    least: 1,
    greatest: 120,
    reason: 'no small part has more holes, and no knurled shaft more grooves',
  },
  helixAngle: {
    ...deg,
    what: 'a helix angle, right hand positive',
    least: -80,
    greatest: 80,
    reason: 'beyond 80 degrees a wheel is a screw',
  },
  pressureAngle: {
    ...deg,
    what: 'a pressure angle',
    least: 5,
    greatest: 45,
    reason: 'teeth in use have 14.5 to 30; outside 5 to 45 none can be cut',
  },
  module: {
    ...mm,
    what: 'a module',
    least: 0.02,
    greatest: 100,
    reason: 'the finest listed module is 0.05 and the coarsest 50',
  },
  profileShift: {
    ...number,
    what: 'a profile shift',
    least: -5,
    greatest: 5,
    reason: 'teeth shifted by more than five modules lie off their involute',
  },
  toothPart: {
    ...number,
    what: 'an addendum or dedendum, times the module',
    least: 0.1,
    greatest: 5,
    reason: 'teeth in use have 0.8 to 1.5',
  },
  rootRadius: {
    ...number,
    what: 'a root radius, times the module',
    least: 0,
    greatest: 2,
    reason: 'no rack holds more than about 0.5',
  },
  thinning: {
    ...mm,
    what: 'a thinning',
    least: -50,
    greatest: 50,
    reason: 'half of the tooth of the coarsest module is less than that',
  },
  year: {
    ...whole,
    what: 'a year',
    least: 1700,
    greatest: 2200,
    reason: 'machines with cut gears are not older',
  },
  speed: {
    ...number,
    unit: 'turns a minute',
    what: 'a speed',
    least: 0,
    greatest: 1_000_000,
    reason: 'nothing at a bench turns faster',
  },
  rate: {
    ...number,
    unit: 'a minute',
    what: 'how often it happens',
    least: 0,
    greatest: 1_000_000,
    reason: 'nobody hears more clicks than that apart',
  },
  temperature: {
    ...number,
    unit: '°C',
    what: 'how warm the teeth run',
    least: -60,
    greatest: 500,
    reason: 'no gear here runs colder, and none of these materials is solid warmer',
  },
  torque: {
    ...number,
    unit: 'N·mm',
    what: 'a torque',
    least: 0,
    greatest: 1_000_000_000,
    reason: 'no small motor pulls more',
  },
  rows: {
    ...whole,
    what: 'rows of teeth on one gear',
    least: 1,
    greatest: 6,
    reason: 'one row is a plain gear, two a compound one; nobody stacks more than six',
  },
  seconds: {
    unit: 's',
    whole: false,
    what: 'how long it takes',
    least: 0.001,
    greatest: 10_000_000,
    reason: 'a stroke may take a third of a year in a recorder, and a thousandth of a second at the fastest',
  },
  ratio: {
    ...number,
    what: 'a ratio',
    least: 0.000_001,
    greatest: 1_000_000,
    reason: 'input speed over output speed, positive; direction is said apart',
  },
  percent: {
    ...number,
    unit: 'percent',
    what: 'a part',
    least: 0,
    greatest: 100,
    reason: '100 is all of it',
  },
  offset: {
    ...mm,
    what: 'an offset a side, either way',
    least: -5,
    greatest: 5,
    reason: 'no machine lays its line further off than that',
  },
  stretch: {
    ...number,
    unit: 'percent',
    what: 'a scale, either way',
    least: -20,
    greatest: 20,
    reason: 'no material shrinks more',
  },
  travel: {
    ...mm,
    what: 'travel for a turn',
    least: leastLength,
    greatest: 10_000,
    reason: 'a bar moves its pinion’s circumference in a turn',
  },
} as const satisfies Record<string, Limit>;

/**
 * How many of a kind a job may hold. Every reading is weighed with every other for thousands of possible wheels, so
 * a list without end would never answer; takings of one length are one reading.
 */
export const counts = {
  wheels: {
    greatest: 4000,
    what: 'wheels',
    reason: 'a job is one machine, and no machine at a bench has more',
  },
  meshes: { greatest: 8000, what: 'meshes', reason: 'two for each wheel are more than any train has' },
  readings: { greatest: 64, what: 'readings', reason: 'put repeated takings of one length into one reading' },
  takings: { greatest: 100, what: 'takings', reason: 'after a few, more takings tell nothing new' },
  links: { greatest: 500, what: 'entries', reason: 'a job is one machine' },
  idLength: { greatest: 100, what: 'characters', reason: 'an id also names files' },
} as const;
