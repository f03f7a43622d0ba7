import { Fail } from '../fail.ts';
import type { KnownForm } from '../making/plan-part.ts';
import type { Bore } from '../solid/wheel-form.ts';
import type { SpecFields } from './spec-schema.ts';

/**
 * What a job's spec says of a part beside its teeth. A bore without its shape and a hub without all of its sizes say
 * nothing; any other feature that lacks a size is refused: Fail `bad-value`, naming the field.
 *
 * @param field where the spec stands, such as `wheels[0].spec`
 */
export function knownForm(spec: SpecFields | undefined, field: string): KnownForm {
  if (!spec) return {};
  const { web, holes, sector, crossHole, phaseMark, flanges, phaseDeg } = spec;
  return {
    faceWidth: spec.faceWidthMm,
    bore: spec.bore ? boreOf(spec.bore, `${field}.bore`) : undefined,
    hubs: spec.hubs?.flatMap((hub) =>
      hub.side && hub.diameterMm && hub.lengthMm
        ? [{ side: hub.side, diameter: hub.diameterMm, length: hub.lengthMm }]
        : [],
    ),
    chamfer: spec.chamferMm,
    rimDiameter: spec.rimDiameterMm,
    crossHole: crossHole && crossHoleOf(crossHole, `${field}.crossHole`),
    features: {
      ...(phaseDeg === undefined ? {} : { phase: (phaseDeg * Math.PI) / 180 }),
      ...(web ? { web: webOf(web, `${field}.web`) } : {}),
      ...(holes ? { holes: holesOf(holes, `${field}.holes`) } : {}),
      ...(sector ? { sector: sectorOf(sector, `${field}.sector`) } : {}),
      ...(phaseMark ? { phaseMark: markOf(phaseMark, `${field}.phaseMark`) } : {}),
      ...(flanges ? { flanges: flanges.map((one, k) => flangeOf(one, `${field}.flanges[${k}]`)) } : {}),
    },
  };
}

type Given<K extends keyof SpecFields> = NonNullable<SpecFields[K]>;

function boreOf(bore: Given<'bore'>, field: string): Bore | undefined {
  const { shape, diameterMm, flatMm, acrossFlatsMm, count, depthMm, widthMm } = bore;
  const what = `a ${shape} bore`;
  const needed = need(field, what, { diameterMm, flatMm, acrossFlatsMm, count, depthMm, widthMm });
  switch (shape) {
    case undefined:
      return undefined;
    case 'none':
      return { shape };
    case 'round':
      return { shape, diameter: needed('diameterMm') };
    case 'd':
    case 'double-d':
      return { shape, diameter: needed('diameterMm'), flat: needed('flatMm') };
    case 'hex':
    case 'square':
      return { shape, acrossFlats: needed('acrossFlatsMm') };
    case 'spline':
      return {
        shape,
        diameter: needed('diameterMm'),
        count: needed('count'),
        depth: needed('depthMm'),
        width: needed('widthMm'),
      };
    case 'knurl':
      return { shape, diameter: needed('diameterMm'), count: needed('count'), depth: needed('depthMm') };
  }
}

function webOf(web: Given<'web'>, field: string): NonNullable<KnownForm['features']>['web'] & object {
  const needed = need(field, 'a web', web);
  return {
    thickness: needed('thicknessMm'),
    hubDiameter: needed('hubDiameterMm'),
    rimDiameter: needed('rimDiameterMm'),
    ...(web.fromFaceMm === undefined ? {} : { fromFace: web.fromFaceMm }),
  };
}

function holesOf(holes: Given<'holes'>, field: string): NonNullable<KnownForm['features']>['holes'] & object {
  const needed = need(field, 'a row of holes', holes);
  return {
    count: needed('count'),
    diameter: needed('diameterMm'),
    circleDiameter: needed('circleDiameterMm'),
  };
}

function sectorOf(
  sector: Given<'sector'>,
  field: string,
): NonNullable<KnownForm['features']>['sector'] & object {
  return {
    teeth: need(field, 'a sector', sector)('teeth'),
    ...(sector.restDiameterMm === undefined ? {} : { restDiameter: sector.restDiameterMm }),
  };
}

function markOf(
  mark: Given<'phaseMark'>,
  field: string,
): NonNullable<KnownForm['features']>['phaseMark'] & object {
  const needed = need(field, 'a phase mark', { diameterMm: mark.diameterMm, depthMm: mark.depthMm });
  return { side: mark.side ?? 'top', diameter: needed('diameterMm'), depth: needed('depthMm') };
}

function flangeOf(
  flange: Given<'flanges'>[number],
  field: string,
): { side: 'top' | 'bottom'; diameter: number; thickness: number } {
  const { side, diameterMm, thicknessMm } = flange;
  const needed = need(field, 'a flange', { diameterMm, thicknessMm });
  if (side === undefined) throw missing(field, 'a flange', 'side');
  return { side, diameter: needed('diameterMm'), thickness: needed('thicknessMm') };
}

function crossHoleOf(hole: Given<'crossHole'>, field: string): KnownForm['crossHole'] & object {
  const { side, diameterMm, fromFaceMm, through } = hole;
  const needed = need(field, 'a cross hole', { diameterMm });
  return {
    side: side ?? 'top',
    diameter: needed('diameterMm'),
    ...(fromFaceMm === undefined ? {} : { fromFace: fromFaceMm }),
    ...(through === undefined ? {} : { isThrough: through }),
  };
}

/** Reads one size of a feature, or refuses the feature for want of it. */
function need<K extends string>(
  field: string,
  what: string,
  sizes: { readonly [key in K]?: number | undefined },
): (key: K) => number {
  return (key) => {
    const value = sizes[key];
    if (value !== undefined) return value;
    throw missing(field, what, key);
  };
}

function missing(field: string, what: string, key: string): Fail {
  const one = what.replace(/^an? /, '');
  return new Fail(
    'bad-value',
    `${field}.${key}`,
    `${what} needs ${key}`,
    `Add "${key}" to the ${one.endsWith('bore') ? 'bore' : one}.`,
  );
}
