import { findDiameters } from '../../src/involute/gear-diameters.ts';
import { traceOutline } from '../../src/involute/trace-outline.ts';
import type { Random } from '../../src/numeric/random.ts';
import { signedArea } from '../../src/plane/polygon.ts';
import type { Bore, PlacedSection, ToothedSection, WheelForm } from '../../src/solid/wheel-form.ts';
import { findBoreRadius, findInnerBoreRadius } from '../../src/solid/wheel-form.ts';
import { makeSpec, rad } from '../involute/make-spec.ts';
import { areaOfBore, exactVolume } from './exact-volume.ts';

/** A compound part that should be buildable, what its definition says it holds, and how many holes go through. */
export interface DrawnCompound {
  readonly form: WheelForm;
  readonly genus: number;
  readonly exactVolume: (fine: number) => number;
  readonly features: readonly string[];
}

/**
 * A wheel with a pinion over it on a neck as wide as its hub, by chance with a web, lightening holes, a flange over the
 * pinion, sectors, phase marks and a cross hole in a hub below.
 */
export function drawCompound(random: Random): DrawnCompound {
  const between = (low: number, high: number): number => low + (high - low) * random.uniform();
  const by = (chance: number): boolean => random.uniform() < chance;
  const features: string[] = [];
  const note = (feature: string, isThere: boolean): boolean => {
    if (isThere) features.push(feature);
    return isThere;
  };
  const module = between(0.4, 1.2);
  const helixAngle = note('helix', by(0.3)) ? rad(between(-25, 25)) : 0;
  const teeth = Math.round(between(36, 70));
  const spec = makeSpec({ teeth, module, helixAngle, profileShift: between(-0.1, 0.2) });
  const { root } = findDiameters(spec);
  const small = makeSpec({
    teeth: Math.round(between(12, 17)),
    module: between(0.6, 1) * module,
    profileShift: 0.35,
    helixAngle: by(0.3) ? rad(between(-20, 20)) : 0,
  });
  const pinion = findDiameters(small);
  const neck = pinion.root * between(0.8, 0.97);
  const size = neck * between(0.35, 0.55);
  const bores: readonly Bore[] = [
    { shape: 'none' },
    { shape: 'round', diameter: size },
    { shape: 'd', diameter: size, flat: size * between(0.7, 0.95) },
    { shape: 'double-d', diameter: size, flat: size * between(0.5, 0.9) },
    { shape: 'hex', acrossFlats: size * 0.85 },
    { shape: 'square', acrossFlats: size * 0.7 },
    { shape: 'spline', diameter: size, count: 6, depth: size * 0.1, width: size * 0.18 },
    { shape: 'knurl', diameter: size, count: 18, depth: size * 0.06 },
  ];
  const bore = bores[random.index([1, 2, 1, 1, 1, 1, 1, 1])];
  note(bore.shape, true);
  const faceWidth = between(4, 8);
  const neckLength = between(0.5, 3);
  const pinionWidth = between(3, 9);
  const hasWeb = note('web', by(0.5));
  const rimDiameter = root * between(0.86, 0.93);
  const webHub = pinion.tip * between(1.05, 1.2);
  const thickness = faceWidth * between(0.3, 0.6);
  const canHole = webHub < rimDiameter - 4;
  const hasHoles = note('holes', canHole && by(0.5));
  const holeRoom = (rimDiameter - webHub) / 2;
  const holes = {
    count: Math.round(between(3, 6)),
    diameter: holeRoom * between(0.3, 0.7),
    circleDiameter: (rimDiameter + webHub) / 2,
  };
  const flange = note('flange', by(0.4))
    ? { diameter: pinion.tip + between(0.1, 2), thickness: between(0.4, 1.5) }
    : undefined;
  const hasMark = note('mark', by(0.4));
  const mark = { side: 'bottom', diameter: Math.min(0.8, root * 0.03), depth: faceWidth * 0.1 } as const;
  const isSector = note('sector', by(0.25));
  const sector = {
    teeth: Math.round(teeth * between(0.3, 0.7)),
    ...(by(0.5) ? { restDiameter: root * between(0.97, 1.03) } : {}),
  };
  const isSmallSector = note('small sector', by(0.2));
  const flatBores = ['round', 'd', 'double-d', 'hex', 'square'];
  const hasCross = note('cross', flatBores.includes(bore.shape) && by(0.6));
  const crossDiameter = findInnerBoreRadius(bore) * between(0.3, 0.7);
  const isThrough = by(0.5);
  const below = {
    side: 'bottom',
    diameter: neck * between(0.9, 1),
    length: crossDiameter + between(1, 4),
  } as const;
  const first: ToothedSection = {
    spec,
    faceWidth,
    chamfer: by(0.5) ? 0.2 * module : 0,
    hubs: [{ side: 'top', diameter: neck, length: neckLength }, ...(hasCross ? [below] : [])],
    phase: between(0, 6),
    ...(hasWeb ? { web: { thickness, hubDiameter: webHub, rimDiameter } } : {}),
    ...(hasHoles ? { holes } : {}),
    ...(hasMark ? { phaseMark: mark } : {}),
    ...(isSector
      ? {
          sector: {
            ...sector,
            ...(sector.restDiameter !== undefined && sector.restDiameter < rimDiameter + 0.5
              ? { restDiameter: rimDiameter + 0.5 }
              : {}),
          },
        }
      : {}),
  };
  const second: PlacedSection = {
    spec: small,
    faceWidth: pinionWidth,
    chamfer: 0,
    offset: faceWidth + neckLength,
    hubs: [],
    phase: between(-3, 3),
    ...(flange ? { flanges: [{ side: 'top', ...flange }] } : {}),
    ...(isSmallSector ? { sector: { teeth: Math.round(small.teeth / 2) } } : {}),
  };
  const form: WheelForm = {
    ...first,
    bore,
    others: [second],
    ...(hasCross ? { crossHole: { side: 'bottom', diameter: crossDiameter, isThrough } } : {}),
  };
  const hasBore = bore.shape !== 'none';
  return {
    form,
    features,
    genus: (hasBore ? 1 : 0) + (hasHoles ? holes.count : 0) + (hasCross ? (isThrough ? 2 : 1) : 0),
    exactVolume: (fine) => {
      const disk = (diameter: number, length: number): number => (Math.PI * diameter ** 2 * length) / 4;
      const plain = { bore: { shape: 'none' }, hubs: [], chamfer: 0 } as const;
      const length =
        faceWidth + neckLength + pinionWidth + (flange?.thickness ?? 0) + (hasCross ? below.length : 0);
      let volume = exactVolume({ ...plain, spec, faceWidth, chamfer: first.chamfer }, fine);
      volume -= missingTeeth(first, fine) * faceWidth;
      if (first.sector) volume += chamferOfMissing(first, fine);
      volume += exactVolume({ ...plain, spec: small, faceWidth: pinionWidth }, fine);
      volume -= missingTeeth(second, fine) * pinionWidth;
      volume += disk(neck, neckLength) + (hasCross ? disk(below.diameter, below.length) : 0);
      if (flange) volume += disk(flange.diameter, flange.thickness);
      if (hasWeb) volume -= disk(rimDiameter, faceWidth - thickness) - disk(webHub, faceWidth - thickness);
      if (hasHoles) volume -= holes.count * disk(holes.diameter, hasWeb ? thickness : faceWidth);
      if (hasMark) volume -= disk(mark.diameter, mark.depth);
      volume -= areaOfBore(bore) * length;
      if (hasCross) volume -= crossVolume(bore, below.diameter / 2, crossDiameter / 2, isThrough);
      return volume;
    },
  };
}

/** Section area that a sector lacks against the whole wheel: the missing teeth, less what the cylinder gives back. */
function missingTeeth({ spec, sector }: ToothedSection, fine: number): number {
  if (!sector) return 0;
  const root = findDiameters(spec).root / 2;
  const { points } = traceOutline(spec, fine);
  const toothed = signedArea(points) / spec.teeth - (Math.PI * root * root) / spec.teeth;
  const missing = spec.teeth - sector.teeth;
  const rest = (sector.restDiameter ?? 2 * root) / 2;
  const turn = ((missing - 1) * 2 * Math.PI) / spec.teeth;
  return missing * toothed - (turn / 2) * (rest * rest - root * root);
}

/** What `exactVolume` took off as chamfers of teeth that are missing; a cylinder within the tips has none. */
function chamferOfMissing(section: ToothedSection, fine: number): number {
  const { spec, sector, chamfer, faceWidth } = section;
  if (!sector || chamfer === 0) return 0;
  const plain = { bore: { shape: 'none' }, hubs: [] } as const;
  const whole = exactVolume({ ...plain, spec, faceWidth, chamfer: 0 }, fine);
  const cut = exactVolume({ ...plain, spec, faceWidth, chamfer }, fine);
  return ((whole - cut) * (spec.teeth - sector.teeth)) / spec.teeth;
}

/** A round hole of radius ρ along x from the hub's wall to the bore's: ∫ (x_hub − x_bore) over its circle. */
function crossVolume(bore: Bore, hub: number, radius: number, isThrough: boolean): number {
  const most = findBoreRadius(bore);
  const inner = findInnerBoreRadius(bore);
  const isFlat = (side: number): boolean => bore.shape !== 'round' && !(bore.shape === 'd' && side < 0);
  const oneSide = (side: number): number => {
    let sum = 0;
    const steps = 4000;
    for (let k = 0; k < steps; k++) {
      const angle = ((k + 0.5) * Math.PI) / steps;
      const y = radius * Math.cos(angle);
      const x = isFlat(side) ? inner : Math.sqrt(most * most - y * y);
      sum += (Math.sqrt(hub * hub - y * y) - x) * 2 * (radius * Math.sin(angle)) ** 2 * (Math.PI / steps);
    }
    return sum;
  };
  return oneSide(1) + (isThrough ? oneSide(-1) : 0);
}
