import { findDiameters } from '../../src/involute/gear-diameters.ts';
import type { Random } from '../../src/numeric/random.ts';
import type { Bore, Hub, WheelForm } from '../../src/solid/wheel-form.ts';
import { makeSpec, rad } from '../involute/make-spec.ts';

/** A random part that should be buildable: external, internal or rack, spur or helical, every bore, hubs, chamfers. */
export function drawForm(random: Random): WheelForm {
  const kind = (['external', 'external', 'external', 'internal', 'rack'] as const)[
    random.index([1, 1, 1, 1, 1])
  ];
  const module = 0.3 + 1.7 * random.uniform();
  const between = (low: number, high: number): number => low + (high - low) * random.uniform();
  const helixAngle = random.uniform() < 0.4 ? rad(between(-35, 35)) : 0;
  // Helices are kept short: their layers are most of the work.
  const faceWidth = between(1.5, helixAngle === 0 ? 12 : 3) * module;
  if (kind === 'rack') {
    const spec = makeSpec({
      kind,
      module,
      helixAngle,
      teeth: Math.round(between(3, 30)),
      rootRadius: random.uniform() < 0.3 ? 0 : between(0, 0.6),
      thinning: between(0, 0.1) * module,
    });
    return { spec, faceWidth, bore: { shape: 'none' }, hubs: [], chamfer: 0 };
  }
  const teeth =
    kind === 'internal'
      ? Math.round(30 * (80 / 30) ** random.uniform())
      : Math.round(9 * (100 / 9) ** random.uniform());
  const spec = makeSpec({
    kind,
    module,
    helixAngle,
    teeth,
    pressureAngle: rad(between(17, 25)),
    profileShift: teeth < 17 ? between(0.2, 0.4) : between(-0.2, 0.4),
    addendum: kind === 'internal' ? 0.8 : between(0.8, 1),
    rootRadius: between(0.05, 0.4),
    thinning: between(0, 0.08) * module,
  });
  const { root } = findDiameters(spec);
  const chamfer = random.uniform() < 0.5 ? between(0.05, 0.4) * module : 0;
  if (kind === 'internal') {
    return {
      spec,
      faceWidth,
      bore: { shape: 'none' },
      hubs: [],
      chamfer,
      rimDiameter: root + between(1, 8) * module,
    };
  }
  const size = root * between(0.2, 0.6);
  const bores: readonly Bore[] = [
    { shape: 'none' },
    { shape: 'round', diameter: size },
    { shape: 'd', diameter: size, flat: size * between(0.6, 0.95) },
    { shape: 'double-d', diameter: size, flat: size * between(0.3, 0.95) },
    { shape: 'hex', acrossFlats: size * 0.85 },
    { shape: 'square', acrossFlats: size * 0.7 },
  ];
  const bore = bores[random.index([1, 2, 1, 1, 1, 1])];
  const hubs: Hub[] = [];
  for (const side of ['top', 'bottom'] as const) {
    if (random.uniform() < 0.4)
      hubs.push({ side, diameter: root * between(0.75, 0.98), length: between(0.5, 5) });
  }
  return { spec, faceWidth, bore, hubs, chamfer };
}
