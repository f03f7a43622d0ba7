import { Fail } from '../fail.ts';
import { findDiameters } from '../involute/gear-diameters.ts';
import type { GearSpec } from '../involute/gear-spec.ts';
import { rackBackDepth } from '../involute/rack-outline.ts';
import { traceOutline } from '../involute/trace-outline.ts';
import type { DriveModel, DriveWheel } from './drive-model.ts';

/** What a wheel of a drive looks like from above. Lengths mm. */
export interface WheelShape {
  readonly form: 'round' | 'internal' | 'rack' | 'worm' | 'pulley';
  /** x0, y0, … about the wheel's own axis with tooth 0 on +x, closed; absent where no toothing is known */
  readonly outline: Float64Array | undefined;
  readonly perTooth: number;
  readonly moduleMm: number | undefined;
  /** Radius of the tips, of a ring its outer rim; of a rack half its drawn length */
  readonly reach: number;
  /** Of the circle at which it runs */
  readonly pitchRadius: number;
  /** Of a rack how far it reaches below its datum line */
  readonly rootRadius: number;
  /** The teeth are drawn from a spec or an answer; else the circle is a guess */
  readonly isKnown: boolean;
}

/** Teeth of a rack, whose length nobody measured: odd, so that one stands in its middle. */
const shownRackTeeth = 13;
/** A wheel's radius where not even its teeth are counted, mm. */
export const shownRadius = 6;
/** What a wheel of unknown size is drawn as: the commonest pitch of small machines (gear-library/priors). */
export const shownModule = 0.5;

/**
 * A wheel's outline and circles, as far as anybody knows them; else a circle for it: what its mate leaves of the distance,
 * or its teeth at a usual pitch. A toothing that can't exist is its circles alone.
 *
 * @param chordError greatest stray of a chord from the exact curve, mm
 */
export function measureWheel(wheel: DriveWheel, model: DriveModel, chordError: number): WheelShape {
  if (wheel.kind === 'pulley') return measurePulley(wheel) ?? guessSize(wheel, model);
  if (wheel.kind === 'worm') return measureWorm(wheel, model);
  const { spec } = wheel;
  if (!spec) return guessSize(wheel, model);
  if (spec.kind === 'rack') return measureRack(spec, chordError);
  const drawn = tryTrace(spec, chordError);
  const { reference, tip, root, transverseModule } = findDiameters(spec);
  const isInternal = spec.kind === 'internal';
  return {
    form: isInternal ? 'internal' : 'round',
    outline: drawn?.points,
    perTooth: drawn?.perTooth ?? 0,
    moduleMm: transverseModule,
    // A ring's rim is not part of its toothing: so much metal is drawn behind its gaps.
    reach: isInternal ? root / 2 + 2.25 * spec.module : tip / 2,
    pitchRadius: workingRadius(wheel, model) ?? reference / 2,
    rootRadius: root / 2,
    isKnown: drawn !== undefined,
  };
}

function tryTrace(spec: GearSpec, chordError: number): ReturnType<typeof traceOutline> | undefined {
  try {
    return traceOutline(spec, chordError);
  } catch (error) {
    if (error instanceof Fail) return undefined;
    throw error;
  }
}

/** a z/(z1 + z2) of the first mesh whose distance is known; internal: a z/|z1 − z2|. */
function workingRadius({ id, kind, teeth }: DriveWheel, model: DriveModel): number | undefined {
  for (const mesh of model.meshes) {
    if (mesh.kind !== 'teeth' || !mesh.center || (mesh.driver !== id && mesh.driven !== id)) continue;
    const mate = model.wheels.find((one) => one.id === (mesh.driver === id ? mesh.driven : mesh.driver));
    if (teeth === undefined || mate?.teeth === undefined || mate.kind === 'rack') continue;
    const isInside = kind === 'internal' || mate.kind === 'internal';
    const sum = isInside ? Math.abs(teeth - mate.teeth) : teeth + mate.teeth;
    if (sum > 0) return (mesh.center.mm * teeth) / sum;
  }
  return undefined;
}

function measureRack(spec: GearSpec, chordError: number): WheelShape {
  const pitch = (Math.PI * spec.module) / Math.cos(spec.helixAngle);
  const drawn = tryTrace({ ...spec, teeth: shownRackTeeth }, chordError);
  return {
    form: 'rack',
    outline: drawn?.points,
    perTooth: drawn?.perTooth ?? 0,
    moduleMm: pitch / Math.PI,
    reach: (shownRackTeeth / 2) * pitch,
    pitchRadius: 0,
    rootRadius: (spec.dedendum + rackBackDepth) * spec.module,
    isKnown: drawn !== undefined,
  };
}

function measurePulley({ diameterMm, teeth, pitchMm }: DriveWheel): WheelShape | undefined {
  const diameter =
    diameterMm ?? (teeth !== undefined && pitchMm !== undefined ? (teeth * pitchMm) / Math.PI : 0);
  if (!(diameter > 0)) return undefined;
  const radius = diameter / 2;
  return { ...plain, form: 'pulley', reach: radius, pitchRadius: radius, rootRadius: radius, isKnown: true };
}

function measureWorm({ worm, spec, id }: DriveWheel, model: DriveModel): WheelShape {
  const mesh = model.meshes.find((one) => one.driver === id || one.driven === id);
  const mate = model.wheels.find((one) => one.id === (mesh?.driver === id ? mesh.driven : mesh?.driver));
  const moduleMm = worm?.moduleMm ?? spec?.module ?? mate?.spec?.module ?? shownModule;
  const diameter = worm?.referenceDiameterMm;
  const reach = diameter === undefined ? 6 * moduleMm : diameter / 2 + moduleMm;
  return {
    ...plain,
    form: 'worm',
    moduleMm,
    reach,
    pitchRadius: reach - moduleMm,
    rootRadius: reach - 2 * moduleMm,
    isKnown: diameter !== undefined,
  };
}

const plain = { outline: undefined, perTooth: 0, moduleMm: undefined };

/** A circle for what nobody knows the size of: what its mate leaves of the distance, else its teeth at a usual pitch. */
function guessSize(wheel: DriveWheel, model: DriveModel): WheelShape {
  const own = workingRadius(wheel, model) ?? ((wheel.teeth ?? 0) * shownModule) / 2;
  const radius = own > 0 ? own : shownRadius;
  if (wheel.kind === 'rack') {
    const pitch = Math.PI * shownModule;
    const reach = (shownRackTeeth / 2) * pitch;
    return {
      ...plain,
      form: 'rack',
      moduleMm: shownModule,
      reach,
      pitchRadius: 0,
      rootRadius: 2.75 * shownModule,
      isKnown: false,
    };
  }
  const form = wheel.kind === 'pulley' ? 'pulley' : wheel.kind === 'internal' ? 'internal' : 'round';
  return {
    ...plain,
    form,
    reach: radius + shownModule,
    pitchRadius: radius,
    rootRadius: radius - shownModule,
    isKnown: false,
  };
}
