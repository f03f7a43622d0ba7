/**
 * Where strength stops being enough, how a fault shows, and how far a number speaks for a cause. Judgments of ours
 * unless the source says otherwise; each with its reason.
 */
const judgment = 'common practice, no published source';
const memory = 'value from memory';

/** Allowable over stress that is asked for before a tooth is said to hold. */
export const wantedMargin = {
  running: {
    value: 2,
    reason: 'what guidelines for plastic gears ask of steady running; data of small parts scatter by half',
    source: memory,
  },
  stall: {
    value: 1.25,
    reason: 'a stall is rare, and its torque is known to a quarter at best',
    source: judgment,
  },
  flank: {
    value: 1.4,
    reason: 'flanks of small gears wear rather than break, and the pressure of soft teeth is an upper bound',
    source: judgment,
  },
} as const;

/** A tooth that bends both ways (an idler) bears this part of the one-way load. */
export const reversedBending = {
  part: 0.7,
  reason: 'AGMA practice for idlers and other reversed teeth',
  source: `AGMA 2001, as Shigley quotes it (${memory})`,
};

/** Pressure from which soft material begins to flow below the surface, times its yield. */
export const flowPressure = {
  timesYield: 1.67,
  reason: 'first yield under a line contact, by the greatest shear',
  source: 'Johnson, Contact Mechanics, 6.1 (value from memory)',
};

/** Flanks under pressure fade by this power of what roots fade by. */
export const flankFading = {
  power: 0.5,
  reason:
    'what is left at ten million of PA66: half of its flow pressure, a quarter to a half of its strength in bending',
  source: `the two formulas for PA66 beside each other (${memory})`,
};

/** How unsure the formulas for root and flank are, as parts of their value. */
export const formulaSpread = {
  low: 0.7,
  high: 1.3,
  reason: 'recalled and not confirmed; grades and test rigs differ by about that much',
  source: judgment,
};

/** A material that stretches this far before it yields evens out the fillet's peak under one stall. */
export const ductileStrain = {
  value: 0.03,
  reason: 'acetal and nylon flow in the fillet before they break; resins and PLA do not',
  source: judgment,
};

/** Number of cycles at which a strength begins to fade, and at which an endurance ratio is given. */
export const fatigueSpan = {
  from: 1e3,
  to: 1e7,
  reason: 'plastics are tested to ten million; the first thousand cost little',
  source: judgment,
};

export type DamageSeen = 'split' | 'teeth-missing' | 'worn' | 'crumbling' | 'swollen';

export interface BreakCause {
  readonly key: 'hub-split' | 'stall-shock' | 'fatigue' | 'wear' | 'heat' | 'breakdown' | 'swelling';
  readonly name: string;
  /** How often, of all broken small gears, before anything is seen */
  readonly weight: number;
  /** How often this cause shows that damage (several may show) */
  readonly shows: Readonly<Record<DamageSeen, number>>;
  /** What share of its weight is left on metal gears */
  readonly onMetal: number;
  readonly test: string;
  readonly source: string;
}

export const breakCauses: readonly BreakCause[] = [
  {
    key: 'hub-split',
    name: 'the hub split round its shaft: a press fit, creep, and shrinking',
    weight: 0.3,
    shows: { split: 0.9, 'teeth-missing': 0.08, worn: 0.05, crumbling: 0.02, swollen: 0.02 },
    onMetal: 0.02,
    test: 'Take it off the shaft: the crack closes when squeezed, and all teeth are there.',
    source: judgment,
  },
  {
    key: 'stall-shock',
    name: 'a stall or a shock broke teeth at once',
    weight: 0.25,
    shows: { split: 0.08, 'teeth-missing': 0.85, worn: 0.05, crumbling: 0.02, swollen: 0.01 },
    onMetal: 0.7,
    test: 'Look for the place it ran against, and at the clutch that should have slipped.',
    source: judgment,
  },
  {
    key: 'fatigue',
    name: 'teeth cracked slowly under the running load',
    weight: 0.1,
    shows: { split: 0.05, 'teeth-missing': 0.8, worn: 0.2, crumbling: 0.03, swollen: 0.01 },
    onMetal: 1,
    test: 'Look at the break with a lens: a smooth old part beside a rough new one.',
    source: judgment,
  },
  {
    key: 'wear',
    name: 'wear thinned the teeth',
    weight: 0.15,
    shows: { split: 0.02, 'teeth-missing': 0.1, worn: 0.95, crumbling: 0.03, swollen: 0.01 },
    onMetal: 1,
    test: 'Compare with an end of the tooth that never ran, or with the other flank.',
    source: judgment,
  },
  {
    key: 'heat',
    name: 'heat softened it or aged it brittle',
    weight: 0.07,
    shows: { split: 0.25, 'teeth-missing': 0.4, worn: 0.15, crumbling: 0.2, swollen: 0.1 },
    onMetal: 0.05,
    test: 'Look for what is warm beside it: a lamp, a fuser, a regulator; discolored, glazed, or it breaks at a tap.',
    source: judgment,
  },
  {
    key: 'breakdown',
    name: 'the plastic itself broke down with age',
    weight: 0.08,
    shows: { split: 0.1, 'teeth-missing': 0.25, worn: 0.03, crumbling: 0.9, swollen: 0.05 },
    onMetal: 0.01,
    test: 'Rub it: it powders or is sticky, while other gears in the machine are sound.',
    source: judgment,
  },
  {
    key: 'swelling',
    name: 'it grew with moisture and ran tight',
    weight: 0.05,
    shows: { split: 0.05, 'teeth-missing': 0.15, worn: 0.3, crumbling: 0.01, swollen: 0.9 },
    onMetal: 0.01,
    test: 'Measure across the tips; loosen one axis a little and turn it by hand.',
    source: judgment,
  },
];

/** How far a ratio speaks for its cause: limits in rising order, each with the factor below it. */
export interface Leaning {
  readonly below: number;
  readonly factor: number;
  readonly source: string;
}

/** Strain at the bore over the strain that lasts. */
export const strainLeaning: readonly Leaning[] = [
  { below: 0.25, factor: 0.3, source: judgment },
  { below: 0.5, factor: 1, source: judgment },
  { below: 1, factor: 1.5, source: judgment },
  { below: Number.POSITIVE_INFINITY, factor: 3, source: judgment },
];

/** Allowable over stress, of a stall or of running. */
export const marginLeaning: readonly Leaning[] = [
  { below: 1, factor: 4, source: judgment },
  { below: 2, factor: 1.5, source: judgment },
  { below: 4, factor: 1, source: judgment },
  { below: Number.POSITIVE_INFINITY, factor: 0.3, source: judgment },
];

/** Degrees that are left under the warm limit. */
export const heatLeaning: readonly Leaning[] = [
  { below: 0, factor: 4, source: judgment },
  { below: 15, factor: 1.5, source: judgment },
  { below: 30, factor: 0.7, source: judgment },
  { below: Number.POSITIVE_INFINITY, factor: 0.3, source: judgment },
];

/** Growth when soaked, percent. */
export const growthLeaning: readonly Leaning[] = [
  { below: 0.25, factor: 0.1, source: judgment },
  { below: 0.7, factor: 0.5, source: judgment },
  { below: Number.POSITIVE_INFINITY, factor: 2, source: judgment },
];

/** Words for a chance. */
export const likelihoodWords = [
  { atLeast: 0.85, words: 'very likely', source: judgment },
  { atLeast: 0.5, words: 'likely', source: judgment },
  { atLeast: 0.15, words: 'possible', source: judgment },
  { atLeast: 0, words: 'unlikely', source: judgment },
] as const;
