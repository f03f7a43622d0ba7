/**
 * What small gears are made of, or could be made of. Every figure is typical of its kind, between a low and a high
 * that makers' grades, moisture and printing spread over; none is a promise for the reel or the bar at hand. Printed
 * strengths are along the layers; `layerRatio` is what is left across them.
 */
export interface Figure {
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly source: string;
}

export interface Material {
  readonly key: string;
  readonly name: string;
  /** What else people write for it, in small letters */
  readonly alsoCalled: readonly string[];
  readonly family: 'semicrystalline' | 'amorphous' | 'resin' | 'metal';
  /** E at once, MPa, 23 °C, as a part on a bench has it (polyamides: conditioned by room air) */
  readonly modulusMpa: Figure;
  /** Creep modulus after 1,000 h under load, MPa, 23 °C */
  readonly modulusAfter1000hMpa: Figure;
  readonly poisson: Figure;
  /** Yield strength, or breaking strength where it breaks first, MPa, 23 °C */
  readonly strengthMpa: Figure;
  /** Strength across printed layers over strength along them; 1 where there are no layers */
  readonly layerRatio: Figure;
  /** Strain at the bore that lasts for years under a press fit, part of 1 */
  readonly lastingStrain: Figure;
  /** Strain that is survived once, at assembly, part of 1 */
  readonly onceStrain: Figure;
  /** Warmest that a loaded tooth should run for years, °C */
  readonly warmLimitC: Figure;
  /** Where stiffness and strength are gone, °C: glass transition, or deflection under a small load */
  readonly softeningC: Figure;
  /** Growth by moisture, percent of the length: dry to room air at half humidity, and to soaked */
  readonly growthRoomPercent: Figure;
  readonly growthSoakedPercent: Figure;
  /** Expansion, 10⁻⁶ a degree */
  readonly expansion: Figure;
  /** Dry friction on steel */
  readonly friction: Figure;
  /** Part of the strength that is left after ten million bendings; not used where `rootFatigue` names a formula */
  readonly enduranceRatio: Figure;
  /** The published shape of root strength over temperature and cycles, where there is one */
  readonly rootFatigue: 'pom' | 'pa66' | null;
  readonly cautions: readonly string[];
  readonly lubricants: { readonly suit: readonly string[]; readonly avoid: readonly string[] };
  readonly glue: { readonly holds: string; readonly fails: string };
}

const practice = 'common practice, no published source';
const memory = 'value from memory';
const acetalSheet = "a maker's data sheet of acetal copolymer for molding";
const compared = "a supplier's comparison table of plastics (typical values)";
const printed = 'additive.tools/materials: ranges of published data for printed parts';

function figure(value: number, low: number, high: number, source: string): Figure {
  return { value, low, high, source };
}

const solid = figure(1, 1, 1, 'no layers');
const noGrowth = figure(0, 0, 0, memory);
const dryPlastic = figure(0.2, 0.1, 0.35, practice);
const semicrystallineStrain = figure(0.01, 0.005, 0.015, memory);
const amorphousStrain = figure(0.005, 0.002, 0.008, memory);
const plasticEndurance = figure(0.3, 0.2, 0.4, practice);

const softGreases = ['silicone grease', 'PFPE grease', 'PAO (synthetic hydrocarbon) grease for plastics'];
const crackers = [
  'ester oils and greases',
  'polyglycol',
  'mineral oil where the part is under strain',
  'brake and contact cleaners',
];
const noAnaerobic =
  'Threadlockers and retaining compounds that cure without air crack it where it is strained.';

export const materials: readonly Material[] = [
  {
    key: 'pom',
    name: 'POM (acetal), molded or cut from bar',
    alsoCalled: ['acetal', 'polyacetal', 'polyoxymethylene', 'pom-c', 'pom-h'],
    family: 'semicrystalline',
    modulusMpa: figure(2850, 2600, 3600, `${acetalSheet}; high: homopolymer`),
    modulusAfter1000hMpa: figure(1300, 1100, 1600, acetalSheet),
    poisson: figure(0.35, 0.33, 0.4, memory),
    strengthMpa: figure(64, 58, 78, `${acetalSheet}; high: homopolymer, from a table of its maker`),
    layerRatio: solid,
    lastingStrain: semicrystallineStrain,
    onceStrain: figure(
      0.06,
      0.045,
      0.065,
      `70 % of a yield strain of 9 % (${acetalSheet}); rule from memory`,
    ),
    warmLimitC: figure(80, 70, 100, memory),
    softeningC: figure(155, 145, 160, memory),
    growthRoomPercent: figure(0.1, 0.05, 0.2, memory),
    growthSoakedPercent: figure(0.3, 0.2, 0.5, memory),
    expansion: figure(110, 90, 120, acetalSheet),
    friction: dryPlastic,
    enduranceRatio: plasticEndurance,
    rootFatigue: 'pom',
    cautions: [
      'Acids and chlorine (bleach) break it down.',
      'Fumes of hot or burning acetal irritate and poison: air the room.',
    ],
    lubricants: { suit: [...softGreases, 'mineral grease'], avoid: ['acid cleaners', 'bleach'] },
    glue: {
      holds:
        'None holds by itself: a flat, a knurl, a pin or a metal bush; cyanoacrylate with its primer at most',
      fails: 'epoxy, cyanoacrylate without primer, solvent cement',
    },
  },
  {
    key: 'pa6',
    name: 'PA6 (nylon 6), molded or cast',
    alsoCalled: ['nylon 6', 'polyamide 6', 'cast nylon'],
    family: 'semicrystalline',
    modulusMpa: figure(1200, 900, 2800, `${memory}: conditioned by room air; high: dry`),
    modulusAfter1000hMpa: figure(600, 400, 900, memory),
    poisson: figure(0.39, 0.35, 0.42, memory),
    strengthMpa: figure(45, 38, 80, `${memory}: conditioned; high: dry`),
    layerRatio: solid,
    lastingStrain: semicrystallineStrain,
    onceStrain: figure(0.05, 0.03, 0.1, memory),
    warmLimitC: figure(80, 70, 100, memory),
    softeningC: figure(165, 150, 180, memory),
    growthRoomPercent: figure(0.7, 0.4, 1, practice),
    growthSoakedPercent: figure(
      2.7,
      2,
      3.5,
      'a trade article on moisture in plastics (it may swap 6 and 66)',
    ),
    expansion: figure(90, 80, 100, memory),
    friction: figure(0.25, 0.15, 0.4, practice),
    enduranceRatio: plasticEndurance,
    rootFatigue: null,
    cautions: ['It grows with moisture: leave backlash for it.', 'Acids attack it.'],
    lubricants: { suit: [...softGreases, 'mineral grease'], avoid: ['acid cleaners', 'zinc chloride flux'] },
    glue: {
      holds: 'cyanoacrylate or two-part polyurethane on a roughened face',
      fails: 'plain epoxy, hot glue',
    },
  },
  {
    key: 'pa66',
    name: 'PA66 (nylon 6.6), molded or cut from bar',
    alsoCalled: ['nylon', 'nylon 6.6', 'nylon 66', 'polyamide', 'polyamide 66', 'pa', 'pa 66'],
    family: 'semicrystalline',
    modulusMpa: figure(1600, 1200, 2800, `dry: ${compared}; conditioned: ${memory}`),
    modulusAfter1000hMpa: figure(800, 550, 1100, memory),
    poisson: figure(0.39, 0.35, 0.42, memory),
    strengthMpa: figure(55, 45, 83, `dry: ${compared}; conditioned: ${memory}`),
    layerRatio: solid,
    lastingStrain: semicrystallineStrain,
    onceStrain: figure(0.05, 0.03, 0.1, memory),
    warmLimitC: figure(90, 80, 110, memory),
    softeningC: figure(190, 170, 220, memory),
    growthRoomPercent: figure(0.6, 0.3, 0.9, practice),
    growthSoakedPercent: figure(
      2.5,
      2,
      3.5,
      'a trade article on moisture in plastics (it may swap 6 and 66)',
    ),
    expansion: figure(80, 70, 90, memory),
    friction: figure(0.25, 0.15, 0.4, practice),
    enduranceRatio: plasticEndurance,
    rootFatigue: 'pa66',
    cautions: ['It grows with moisture: leave backlash for it.', 'Acids attack it.'],
    lubricants: { suit: [...softGreases, 'mineral grease'], avoid: ['acid cleaners', 'zinc chloride flux'] },
    glue: {
      holds: 'cyanoacrylate or two-part polyurethane on a roughened face',
      fails: 'plain epoxy, hot glue',
    },
  },
  {
    key: 'pa12',
    name: 'PA12 (nylon 12), sintered powder',
    alsoCalled: ['nylon 12', 'polyamide 12', 'nylon powder'],
    family: 'semicrystalline',
    modulusMpa: figure(1700, 1500, 2000, printed),
    modulusAfter1000hMpa: figure(800, 550, 1100, memory),
    poisson: figure(0.39, 0.35, 0.42, memory),
    strengthMpa: figure(46, 42, 52, printed),
    layerRatio: figure(0.85, 0.7, 0.95, practice),
    lastingStrain: semicrystallineStrain,
    onceStrain: figure(0.05, 0.03, 0.08, memory),
    warmLimitC: figure(80, 70, 100, memory),
    softeningC: figure(160, 150, 175, memory),
    growthRoomPercent: figure(0.1, 0.05, 0.15, practice),
    growthSoakedPercent: figure(0.2, 0.15, 0.3, 'a trade article on moisture in plastics, cast PA12'),
    expansion: figure(100, 90, 120, memory),
    friction: figure(0.25, 0.15, 0.4, practice),
    enduranceRatio: figure(0.25, 0.15, 0.35, practice),
    rootFatigue: null,
    cautions: [
      'It is porous: oil soaks in, and thin oil made such gears run worse at low load (published test).',
    ],
    lubricants: {
      suit: [...softGreases, 'a sealed surface with little grease'],
      avoid: ['thin oil', 'acid cleaners'],
    },
    glue: { holds: 'cyanoacrylate or two-part polyurethane; it grips the grain', fails: 'hot glue' },
  },
  {
    key: 'abs',
    name: 'ABS, printed filament',
    alsoCalled: [],
    family: 'amorphous',
    modulusMpa: figure(2100, 1700, 2300, compared),
    modulusAfter1000hMpa: figure(1200, 900, 1500, memory),
    poisson: figure(0.37, 0.35, 0.4, memory),
    strengthMpa: figure(36, 28, 45, `bar: ${compared}; printed: ${practice}`),
    layerRatio: figure(0.55, 0.4, 0.7, practice),
    lastingStrain: amorphousStrain,
    onceStrain: figure(0.015, 0.01, 0.02, memory),
    warmLimitC: figure(70, 60, 80, memory),
    softeningC: figure(98, 90, 105, memory),
    growthRoomPercent: figure(0.1, 0.05, 0.2, practice),
    growthSoakedPercent: figure(0.2, 0.1, 0.3, practice),
    expansion: figure(95, 80, 130, compared),
    friction: figure(0.3, 0.2, 0.5, practice),
    enduranceRatio: figure(0.25, 0.15, 0.35, practice),
    rootFatigue: null,
    cautions: [
      noAnaerobic,
      'Ester grease has dissolved whole gear trains of it.',
      'It smells when printed: air the room.',
    ],
    lubricants: { suit: softGreases, avoid: crackers },
    glue: { holds: 'solvent cement for ABS, cyanoacrylate, epoxy', fails: 'anaerobic retaining compound' },
  },
  {
    key: 'asa',
    name: 'ASA, printed filament',
    alsoCalled: [],
    family: 'amorphous',
    modulusMpa: figure(2200, 1800, 2500, `${compared}, converted`),
    modulusAfter1000hMpa: figure(1250, 900, 1600, memory),
    poisson: figure(0.37, 0.35, 0.4, memory),
    strengthMpa: figure(40, 30, 48, `bar: ${compared}; printed: ${practice}`),
    layerRatio: figure(0.55, 0.4, 0.7, practice),
    lastingStrain: amorphousStrain,
    onceStrain: figure(0.015, 0.01, 0.02, memory),
    warmLimitC: figure(75, 65, 85, memory),
    softeningC: figure(100, 92, 108, memory),
    growthRoomPercent: figure(0.1, 0.05, 0.2, practice),
    growthSoakedPercent: figure(0.2, 0.1, 0.3, practice),
    expansion: figure(90, 60, 100, memory),
    friction: figure(0.3, 0.2, 0.5, practice),
    enduranceRatio: figure(0.25, 0.15, 0.35, practice),
    rootFatigue: null,
    cautions: [noAnaerobic, 'It smells when printed: air the room.'],
    lubricants: { suit: softGreases, avoid: crackers },
    glue: { holds: 'solvent cement, cyanoacrylate, epoxy', fails: 'anaerobic retaining compound' },
  },
  {
    key: 'pc',
    name: 'PC (polycarbonate), molded or printed filament',
    alsoCalled: ['polycarbonate'],
    family: 'amorphous',
    modulusMpa: figure(2300, 1900, 2400, compared),
    modulusAfter1000hMpa: figure(
      1580,
      1300,
      1800,
      "a maker's article on stress relaxation: 30 MPa left at 1.9 % strain",
    ),
    poisson: figure(0.38, 0.36, 0.4, memory),
    strengthMpa: figure(58, 45, 68, `${compared}; low: printed, ${practice}`),
    layerRatio: figure(0.6, 0.4, 0.8, practice),
    lastingStrain: amorphousStrain,
    onceStrain: figure(0.02, 0.015, 0.035, memory),
    warmLimitC: figure(105, 90, 115, memory),
    softeningC: figure(138, 130, 147, memory),
    growthRoomPercent: figure(0.05, 0.02, 0.1, practice),
    growthSoakedPercent: figure(0.1, 0.05, 0.2, practice),
    expansion: figure(66, 60, 75, compared),
    friction: figure(0.35, 0.25, 0.5, practice),
    enduranceRatio: figure(0.15, 0.1, 0.25, practice),
    rootFatigue: null,
    cautions: [noAnaerobic, 'It cracks from notches and solvents: a poor hub for a press fit.'],
    lubricants: { suit: ['silicone grease', 'PFPE grease'], avoid: crackers },
    glue: {
      holds: 'two-part epoxy or polyurethane',
      fails: 'anaerobic retaining compound, solvents under strain',
    },
  },
  {
    key: 'pla',
    name: 'PLA, printed filament',
    alsoCalled: [],
    family: 'amorphous',
    modulusMpa: figure(3000, 2000, 3500, printed),
    modulusAfter1000hMpa: figure(1500, 800, 2200, practice),
    poisson: figure(0.36, 0.33, 0.4, memory),
    strengthMpa: figure(48, 25, 62, `${printed}; low: a maker's sheet of a filled blend`),
    layerRatio: figure(
      0.54,
      0.3,
      0.7,
      "two makers' sheets 0.53 and 0.54, a study of interlayer strength 0.52; low: blends",
    ),
    lastingStrain: figure(0.003, 0.001, 0.006, practice),
    onceStrain: figure(0.012, 0.008, 0.018, practice),
    warmLimitC: figure(45, 40, 50, memory),
    softeningC: figure(56, 52, 62, "makers' sheets: deflection 52 to 58 °C"),
    growthRoomPercent: figure(0.05, 0.02, 0.1, practice),
    growthSoakedPercent: figure(0.1, 0.05, 0.3, practice),
    expansion: figure(101, 70, 120, "a sheet supplier's data"),
    friction: figure(0.35, 0.25, 0.5, practice),
    enduranceRatio: figure(0.2, 0.1, 0.3, practice),
    rootFatigue: null,
    cautions: ['It creeps under steady load even at room temperature: a stopgap, with a date to look again.'],
    lubricants: { suit: softGreases, avoid: crackers },
    glue: {
      holds: 'cyanoacrylate, two-part epoxy on a roughened face',
      fails: 'anaerobic retaining compound',
    },
  },
  {
    key: 'petg',
    name: 'PETG, printed filament',
    alsoCalled: ['pet-g'],
    family: 'amorphous',
    modulusMpa: figure(2100, 1900, 2800, printed),
    modulusAfter1000hMpa: figure(1200, 800, 1500, practice),
    poisson: figure(0.38, 0.35, 0.4, memory),
    strengthMpa: figure(48, 42, 56, printed),
    layerRatio: figure(0.62, 0.45, 0.8, `${printed}: 25 to 38 over 44 to 56 MPa`),
    lastingStrain: amorphousStrain,
    onceStrain: figure(0.02, 0.015, 0.03, practice),
    warmLimitC: figure(55, 50, 65, memory),
    softeningC: figure(72, 68, 80, `${printed}; glass transition 71 to 85 °C`),
    growthRoomPercent: figure(0.05, 0.02, 0.1, practice),
    growthSoakedPercent: figure(0.1, 0.05, 0.2, practice),
    expansion: figure(65, 60, 80, memory),
    friction: figure(0.3, 0.2, 0.45, practice),
    enduranceRatio: figure(0.25, 0.15, 0.35, practice),
    rootFatigue: null,
    cautions: [noAnaerobic],
    lubricants: { suit: softGreases, avoid: crackers },
    glue: {
      holds: 'cyanoacrylate, two-part epoxy on a roughened face',
      fails: 'anaerobic retaining compound',
    },
  },
  {
    key: 'resin',
    name: 'standard resin, cured',
    alsoCalled: ['standard resin'],
    family: 'resin',
    modulusMpa: figure(2200, 1500, 2800, practice),
    modulusAfter1000hMpa: figure(900, 500, 1400, practice),
    poisson: figure(0.4, 0.35, 0.43, memory),
    strengthMpa: figure(
      45,
      30,
      60,
      'best of one published comparison of tested resins: 53 MPa; range: common practice',
    ),
    layerRatio: figure(0.9, 0.75, 1, practice),
    lastingStrain: figure(0.003, 0.001, 0.005, practice),
    onceStrain: figure(0.01, 0.005, 0.02, practice),
    warmLimitC: figure(40, 35, 50, practice),
    softeningC: figure(55, 45, 70, practice),
    growthRoomPercent: figure(0.1, 0.05, 0.3, practice),
    growthSoakedPercent: figure(0.4, 0.2, 1, practice),
    expansion: figure(100, 70, 145, practice),
    friction: figure(0.35, 0.25, 0.5, practice),
    enduranceRatio: figure(0.15, 0.08, 0.25, practice),
    rootFatigue: null,
    cautions: [
      'Uncured resin harms skin and lungs: gloves, and air the room.',
      'It goes on shrinking and turns brittle with light and age.',
    ],
    lubricants: {
      suit: ['silicone grease', 'PFPE grease'],
      avoid: ['alcohol and solvent cleaners', 'ester oils and greases'],
    },
    glue: { holds: 'cyanoacrylate, two-part epoxy', fails: 'anaerobic retaining compound' },
  },
  {
    key: 'resin-tough',
    name: 'tough resin, cured',
    alsoCalled: ['tough resin', 'durable resin'],
    family: 'resin',
    modulusMpa: figure(
      1800,
      1260,
      2200,
      "a maker's sheet of a durable resin 1,260 MPa; tough kinds: value from memory",
    ),
    modulusAfter1000hMpa: figure(600, 350, 1000, practice),
    poisson: figure(0.4, 0.37, 0.43, memory),
    strengthMpa: figure(
      40,
      31,
      48,
      "a maker's sheet of a durable resin 31.8 MPa; tough kinds: value from memory",
    ),
    layerRatio: figure(0.9, 0.75, 1, practice),
    lastingStrain: figure(0.006, 0.003, 0.01, practice),
    onceStrain: figure(0.025, 0.015, 0.05, practice),
    warmLimitC: figure(40, 35, 50, practice),
    softeningC: figure(
      55,
      43,
      63,
      "a maker's sheet of a durable resin 43 °C; tough kinds: value from memory",
    ),
    growthRoomPercent: figure(0.1, 0.05, 0.3, practice),
    growthSoakedPercent: figure(0.5, 0.2, 1, practice),
    expansion: figure(130, 100, 150, "a maker's sheet of a durable resin 145"),
    friction: figure(0.3, 0.2, 0.45, practice),
    enduranceRatio: figure(0.2, 0.1, 0.3, practice),
    rootFatigue: null,
    cautions: [
      'Uncured resin harms skin and lungs: gloves, and air the room.',
      'It goes soft when warm; too much curing makes it brittle.',
    ],
    lubricants: {
      suit: ['silicone grease', 'PFPE grease'],
      avoid: ['alcohol and solvent cleaners', 'ester oils and greases'],
    },
    glue: { holds: 'cyanoacrylate, two-part epoxy', fails: 'anaerobic retaining compound' },
  },
  {
    key: 'resin-rigid',
    name: 'rigid filled resin, cured',
    alsoCalled: ['rigid resin', 'filled resin'],
    family: 'resin',
    modulusMpa: figure(6000, 4000, 10000, memory),
    modulusAfter1000hMpa: figure(3500, 2000, 6000, practice),
    poisson: figure(0.33, 0.3, 0.37, memory),
    strengthMpa: figure(72, 60, 88, memory),
    layerRatio: figure(0.9, 0.75, 1, practice),
    lastingStrain: figure(0.002, 0.0005, 0.004, practice),
    onceStrain: figure(0.006, 0.003, 0.012, practice),
    warmLimitC: figure(60, 50, 80, practice),
    softeningC: figure(85, 60, 110, memory),
    growthRoomPercent: figure(0.05, 0.02, 0.2, practice),
    growthSoakedPercent: figure(0.2, 0.1, 0.5, practice),
    expansion: figure(60, 40, 90, practice),
    friction: figure(0.35, 0.25, 0.5, practice),
    enduranceRatio: figure(0.15, 0.08, 0.25, practice),
    rootFatigue: null,
    cautions: [
      'Uncured resin harms skin and lungs: gloves, and air the room.',
      'Brittle: it breaks at a knock, and never take a press fit on it.',
    ],
    lubricants: { suit: ['silicone grease', 'PFPE grease'], avoid: ['alcohol and solvent cleaners'] },
    glue: { holds: 'cyanoacrylate, two-part epoxy', fails: 'anaerobic retaining compound' },
  },
  {
    key: 'brass',
    name: 'brass, free-cutting',
    alsoCalled: [],
    family: 'metal',
    modulusMpa: figure(97000, 95000, 105000, memory),
    modulusAfter1000hMpa: figure(97000, 95000, 105000, memory),
    poisson: figure(0.34, 0.33, 0.35, memory),
    strengthMpa: figure(200, 140, 300, 'value from memory: yield; it breaks at about 400'),
    layerRatio: solid,
    lastingStrain: figure(0.001, 0.0007, 0.0015, practice),
    onceStrain: figure(0.002, 0.0014, 0.003, practice),
    warmLimitC: figure(150, 120, 200, practice),
    softeningC: figure(400, 300, 500, practice),
    growthRoomPercent: noGrowth,
    growthSoakedPercent: noGrowth,
    expansion: figure(20, 19, 21, memory),
    friction: figure(0.15, 0.1, 0.25, practice),
    enduranceRatio: figure(0.5, 0.35, 0.6, practice),
    rootFatigue: null,
    cautions: ['Ammonia cracks it under strain.', 'Leaded brass is not for food.'],
    lubricants: { suit: ['mineral oil or grease', 'PAO grease', 'clock oil'], avoid: ['ammonia cleaners'] },
    glue: { holds: 'anaerobic retaining compound, epoxy, solder', fails: 'hot glue, PVA' },
  },
  {
    key: 'steel',
    name: 'steel, plain carbon',
    alsoCalled: ['carbon steel', 'mild steel'],
    family: 'metal',
    modulusMpa: figure(206000, 200000, 212000, memory),
    modulusAfter1000hMpa: figure(206000, 200000, 212000, memory),
    poisson: figure(0.3, 0.28, 0.3, memory),
    strengthMpa: figure(350, 250, 550, 'value from memory: yield of medium carbon steel, not hardened'),
    layerRatio: solid,
    lastingStrain: figure(0.001, 0.0008, 0.0015, practice),
    onceStrain: figure(0.0015, 0.001, 0.0025, practice),
    warmLimitC: figure(200, 150, 250, practice),
    softeningC: figure(500, 450, 550, practice),
    growthRoomPercent: noGrowth,
    growthSoakedPercent: noGrowth,
    expansion: figure(12, 11, 12.5, memory),
    friction: figure(0.15, 0.1, 0.25, practice),
    enduranceRatio: figure(0.6, 0.45, 0.75, practice),
    rootFatigue: null,
    cautions: ['It rusts: keep it oiled.'],
    lubricants: { suit: ['mineral oil or grease', 'PAO grease'], avoid: ['acid cleaners'] },
    glue: { holds: 'anaerobic retaining compound, epoxy, solder', fails: 'hot glue, PVA' },
  },
];
