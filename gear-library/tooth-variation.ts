/**
 * How real wheels differ from the bare system: profile shift, tips shortened or worn, teeth thinned for backlash,
 * moulding shrinkage. Shares and spreads of normal distributions, in modules unless said. Judgments of ours; each
 * says its reason.
 */
const judgment = 'common practice, no published source';

export interface ShiftShare {
  /** 'least' is the shift that just avoids undercut at this count and angle. */
  readonly center: number | 'least';
  readonly spread: number;
  readonly weight: number;
  readonly reason: string;
  readonly source: string;
}

/** Profile shift x of wheels that a rack can cut without undercut at x = 0. */
export const shiftOfWheels: readonly ShiftShare[] = [
  { center: 0, spread: 0.01, weight: 0.8, reason: 'most wheels are standard', source: judgment },
  {
    center: 0,
    spread: 0.12,
    weight: 0.08,
    reason: 'small corrections for a center distance',
    source: judgment,
  },
  {
    center: -0.3,
    spread: 0.12,
    weight: 0.05,
    reason: 'wheels reduced to suit an enlarged pinion',
    source: judgment,
  },
  { center: 0.3, spread: 0.12, weight: 0.07, reason: 'enlarged for strength', source: judgment },
];

/** Profile shift x of pinions that undercut at x = 0. */
export const shiftOfPinions: readonly ShiftShare[] = [
  {
    center: 0,
    spread: 0.01,
    weight: 0.42,
    reason: 'many moulded pinions are left standard',
    source: judgment,
  },
  {
    center: 'least',
    spread: 0.02,
    weight: 0.18,
    reason: 'shifted just enough to lose the undercut',
    source: judgment,
  },
  {
    center: 0.5,
    spread: 0.02,
    weight: 0.12,
    reason: 'old shop rule: outside diameter of one tooth more',
    source: judgment,
  },
  { center: 0.15, spread: 0.1, weight: 0.1, reason: 'moderate shifts', source: judgment },
  { center: 0.38, spread: 0.1, weight: 0.18, reason: 'enlarged pinions', source: judgment },
];

export interface TipShare {
  /** Tip loss in modules on the radius: mean and spread. */
  readonly mean: number;
  readonly spread: number;
  readonly weight: number;
  /** Weight where the job says the wheel is worn. */
  readonly weightWorn: number;
  readonly reason: string;
  readonly source: string;
}

/** What the tips have lost against d + 2 m (h_a + x): shortening at the maker's, rounding, wear. Never a gain. */
export const tipLoss: readonly TipShare[] = [
  { mean: 0, spread: 0.008, weight: 0.66, weightWorn: 0.1, reason: 'as drawn', source: judgment },
  {
    mean: 0.04,
    spread: 0.02,
    weight: 0.22,
    weightWorn: 0.3,
    reason: 'tips shortened for clearance (JIS practice), or lightly rounded',
    source: judgment,
  },
  { mean: 0.12, spread: 0.05, weight: 0.1, weightWorn: 0.4, reason: 'worn', source: judgment },
  { mean: 0.28, spread: 0.08, weight: 0.02, weightWorn: 0.2, reason: 'badly worn', source: judgment },
];

/** Arc taken off each tooth for backlash, modules. */
export const thinning = {
  mean: 0.03,
  spread: 0.025,
  meanWorn: 0.07,
  spreadWorn: 0.05,
  reason: 'backlash of 3 to 6 % of the module a pair, shared by two wheels',
  source: judgment,
};

/** Relative size error of the whole wheel, one standard deviation. */
export const sizeScale = {
  metal: { spread: 0.0003, reason: 'cut metal', source: judgment },
  plastic: {
    spread: 0.0015,
    reason: 'mould shrinkage allowed for to one or two parts in a thousand',
    source: judgment,
  },
  swollen: {
    spread: 0.012,
    reason: 'the job says swollen or shrunk: a per cent either way',
    source: judgment,
  },
};

/** Share of the tip land's width that the jaws still meet, rounding off the rest. */
export const tipLandKept = { mean: 0.75, spread: 0.2, reason: 'moulded tips are rounded', source: judgment };

/** How odd counts are measured when the reading does not say. */
export const jawHabits = [
  { jaws: 'rocked', weight: 0.5, reason: 'most people look for the largest reading', source: judgment },
  {
    jaws: 'settled',
    weight: 0.4,
    reason: 'a small wheel squeezed between flat jaws settles',
    source: judgment,
  },
  { jaws: 'true', weight: 0.1, reason: 'a diameter already corrected', source: judgment },
] as const;

/** Shift of a mate whose teeth are counted but which nobody has measured. */
export const mateShift = [
  { relation: 'own', center: 0, spread: 0.02, weight: 0.62, reason: 'standard mate', source: judgment },
  {
    relation: 'opposite',
    center: 0,
    spread: 0.02,
    weight: 0.2,
    reason: 'shifts that cancel keep the standard distance',
    source: judgment,
  },
  { relation: 'own', center: 0.1, spread: 0.3, weight: 0.18, reason: 'any other mate', source: judgment },
] as const;

/** Play built into a shaft distance beyond the backlash-free one, modules. */
export const distancePlay = {
  mean: 0.02,
  spread: 0.03,
  reason: 'distances are opened a little, never closed',
  source: judgment,
};
