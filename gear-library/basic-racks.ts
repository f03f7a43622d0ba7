/**
 * Basic racks: the tooth that a straight bar of the same system has. Coefficients are times the module; an inch
 * rack may also hold an absolute extra depth, which is why depth alone never gives the pitch.
 */
export interface BasicRack {
  readonly key: string;
  readonly name: string;
  /** h_a */
  readonly addendum: number;
  /** h_f, without the absolute part */
  readonly dedendum: number;
  /** mm added to the dedendum whatever the module */
  readonly extraDedendum: number;
  /** ρ_f, coefficient */
  readonly rootRadius: number;
  readonly source: string;
}

export const basicRacks = {
  full: {
    key: 'full',
    name: 'full depth',
    addendum: 1,
    dedendum: 1.25,
    extraDedendum: 0,
    rootRadius: 0.38,
    source: 'ISO 53:1998 profile A',
  },
  deep: {
    key: 'deep',
    name: 'full depth, deep root',
    addendum: 1,
    dedendum: 1.4,
    extraDedendum: 0,
    rootRadius: 0.39,
    source: 'ISO 53:1998 profile D (value from memory)',
  },
  stub: {
    key: 'stub',
    name: 'stub',
    addendum: 0.8,
    dedendum: 1,
    extraDedendum: 0,
    rootRadius: 0.3,
    source:
      '20° stub tooth, 0.8 and 1.0 over the diametral pitch, as gear handbooks list it (value from memory)',
  },
  tall: {
    key: 'tall',
    name: 'tall fine-mechanics tooth',
    addendum: 1.1,
    dedendum: 1.5,
    extraDedendum: 0,
    rootRadius: 0.2,
    source:
      'fine mechanics practice after DIN 58400: unverified (value from memory), so a hypothesis, not a fact',
  },
  fineInch: {
    key: 'fineInch',
    name: 'fine-pitch inch',
    addendum: 1,
    dedendum: 1.2,
    extraDedendum: 0.002 * 25.4,
    rootRadius: 0.2,
    source:
      'Fine-pitch inch rack, 1.2/P + 0.002 in, as gear handbooks list it (AGMA 207; value from memory); root radius: common practice, no published source',
  },
  oldFull: {
    key: 'oldFull',
    name: 'old full depth',
    addendum: 1,
    dedendum: 1.157,
    extraDedendum: 0,
    rootRadius: 0.209,
    source: '14.5° full depth, 1.157 over the diametral pitch, as gear handbooks list it (value from memory)',
  },
} as const satisfies Record<string, BasicRack>;

export type RackKey = keyof typeof basicRacks;
