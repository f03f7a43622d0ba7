import type { DriveMesh, DriveModel, DriveWheel } from '../drive/drive-model.ts';
import { Fail } from '../fail.ts';
import type { GearSpec } from '../involute/gear-spec.ts';
import { findWorkingPair } from '../involute/working-pair.ts';
import type { Need, NeedMate, NeedPlace } from './need.ts';
import { findShiftForDistance } from './shift-for-distance.ts';
import { findShiftRange } from './shift-range.ts';
import { speedWith } from './speed-with.ts';

/**
 * One wheel of a drive as a need: its toothing, what it meshes with at which distance, and what another count would do to
 * the drive. A mate counts where its toothing is known; where their distance was not measured, it is what the two would
 * have by their numbers.
 *
 * Mates are taken as they are worn, with all their teeth and without runout: a mate that lacks teeth must be replaced
 * too, and a part is not to be judged by it.
 */
export function needOfDrive(
  model: DriveModel,
  wheelId: string,
  spec: GearSpec,
  isSure: boolean,
  place: NeedPlace,
): Need {
  const notes: string[] = [];
  const mates: NeedMate[] = [];
  for (const mesh of model.meshes) {
    const isDriven = mesh.driven === wheelId;
    if (!isDriven && mesh.driver !== wheelId) continue;
    const mate = model.wheels.find(({ id }) => id === (isDriven ? mesh.driver : mesh.driven));
    if (!mate) continue;
    if (mesh.kind !== 'teeth') {
      notes.push(
        `it also runs with "${mate.id}" by a ${mesh.kind === 'belt' ? 'belt' : 'worm'}, which is not rolled`,
      );
      continue;
    }
    const found = mateOf(mesh, mate, isDriven, spec, notes);
    if (found) mates.push(found);
  }
  return { wheelId, spec, isSure, mates, ...place, notes, speedWith: speedWith(model, wheelId, spec.teeth) };
}

function mateOf(
  mesh: DriveMesh,
  mate: DriveWheel,
  isDriver: boolean,
  spec: GearSpec,
  notes: string[],
): NeedMate | undefined {
  const mateSpec = mate.spec ?? assumeMate(mesh, mate, spec, notes);
  if (!mateSpec) {
    notes.push(`nothing is rolled against "${mate.id}": its toothing is not known well enough yet`);
    return undefined;
  }
  const distance = mesh.center ?? findNominal(spec, mateSpec);
  if (!distance) {
    notes.push(`nothing is rolled against "${mate.id}": by their numbers the two do not go together`);
    return undefined;
  }
  if (!mesh.center)
    notes.push(
      `the distance to "${mate.id}" was not measured: ${distance.mm.toFixed(2)} mm follows from the numbers`,
    );
  if (mate.missing.length > 0)
    notes.push(`"${mate.id}" is rolled as if no tooth were missing: it must be replaced too`);
  if (mate.runoutMm > 0) notes.push(`"${mate.id}" is rolled as if it ran true`);
  return {
    id: mate.id,
    wheel: { spec: mateSpec, ...(mate.tipWearMm > 0 ? { tipWear: mate.tipWearMm } : {}) },
    isDriver,
    centerDistance: distance.mm,
    uncertainty: distance.uMm,
    isMeasured: mesh.center !== undefined,
  };
}

/**
 * A mate whose teeth were only counted, as what ran with the wheel must have been: its pitch, and the shift that the
 * measured distance speaks for. Undefined where such a wheel could not be made, so that something is read wrong.
 */
function assumeMate(
  mesh: DriveMesh,
  mate: DriveWheel,
  spec: GearSpec,
  notes: string[],
): GearSpec | undefined {
  if (mate.teeth === undefined || mate.kind !== 'external' || spec.kind !== 'external') return undefined;
  const plain: GearSpec = {
    ...spec,
    teeth: mate.teeth,
    helixAngle: -spec.helixAngle,
    profileShift: 0,
    thinning: 0,
    tipDiameter: null,
  };
  const shift = mesh.center
    ? findShiftForDistance(plain, { wheel: { spec }, centerDistance: mesh.center.mm, uncertainty: 0 })
    : 0;
  const range = findShiftRange(plain);
  if (shift === undefined || !range || shift < range.least - slack || shift > range.greatest + slack)
    return undefined;
  notes.push(
    `"${mate.id}" was only counted: it is taken to have the wheel's own size${mesh.center ? ', with the shift that their distance speaks for' : ''}; measure across its tips to be sure`,
  );
  return { ...plain, profileShift: Math.abs(shift) < plainShift ? 0 : Math.round(shift * 1000) / 1000 };
}

/** Modules: what the distance's own error may put a shift off by. */
const slack = 0.15;
/** Below this a shift is nothing but the play that pairs have. */
const plainShift = 0.12;

/** The distance at which the two run without play, and the little more that pairs are built with. */
function findNominal(
  spec: GearSpec,
  mate: GearSpec,
): { readonly mm: number; readonly uMm: number } | undefined {
  try {
    const { centerDistance } =
      spec.kind === 'external' ? findWorkingPair(spec, mate) : findWorkingPair(mate, spec);
    const side = spec.kind === 'internal' || mate.kind === 'internal' ? -1 : 1;
    return { mm: centerDistance + side * usualPlay * spec.module, uMm: 0 };
  } catch (error) {
    if (error instanceof Fail) return undefined;
    throw error;
  }
}

/** Modules on the distance: 0.06 modules of backlash at 20°. Common practice, no published source. */
const usualPlay = 0.08;
