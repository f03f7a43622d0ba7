import type { DriveMesh, DriveModel, DriveWheel } from './drive/drive-model.ts';
import type { DriveReport } from './drive/drive-report.ts';
import { placePosts } from './drive/place-posts.ts';
import { type PhasedWheel, settlePhases } from './drive/settle-phases.ts';
import { Fail } from './fail.ts';
import { findDiameters } from './involute/gear-diameters.ts';
import type { GearSpec } from './involute/gear-spec.ts';
import { rackBackDepth } from './involute/rack-outline.ts';
import { traceOutline } from './involute/trace-outline.ts';
import { collectDrive } from './job/collect-drive.ts';
import { collectEvidence } from './job/collect-evidence.ts';
import type { Job } from './job/job-schema.ts';
import { identifyWheel } from './readings/identify-wheel.ts';

/** The whole train from above, ready to draw. Lengths mm, y up, angles rad counter-clockwise. */
export interface TrainDrawing {
  readonly posts: readonly DrawnPost[];
  readonly wheels: readonly DrawnWheel[];
  readonly meshes: readonly DrawnMesh[];
  readonly box: {
    readonly left: number;
    readonly right: number;
    readonly bottom: number;
    readonly top: number;
  };
  /** What of the drawing no reading says, in words */
  readonly guesses: readonly string[];
  /** Distances of posts that can't all be true: drawn as near to them as can be */
  readonly troubles: DriveReport['troubles'];
}

export interface DrawnPost {
  readonly id: string;
  readonly x: number;
  readonly y: number;
  /** Its distance is measured, but in which direction it lies is not known */
  readonly isGuessed: boolean;
  readonly wheels: readonly string[];
}

export interface DrawnWheel {
  readonly id: string;
  readonly post: string;
  readonly x: number;
  readonly y: number;
  readonly form: 'round' | 'internal' | 'rack' | 'worm' | 'pulley';
  /** x0, y0, … about the wheel's own axis with tooth 0 on +x, closed; absent where no toothing is known */
  readonly outline?: Float64Array | undefined;
  readonly perTooth: number;
  readonly teeth: number | undefined;
  readonly moduleMm: number | undefined;
  /** Radii: tip (a ring's: its outer rim), pitch circle at which it runs, root */
  readonly reach: number;
  readonly pitchRadius: number;
  readonly rootRadius: number;
  /** The teeth are drawn from a spec or an answer; else the circle is a guess */
  readonly isKnown: boolean;
  /** How it stands, so that teeth stand in gaps; of a rack and a worm a length along `along` */
  readonly phase: number;
  /** A rack's and a worm's direction; a rack's teeth stand to the left of it */
  readonly along: number;
  /** Turns for one turn of the input, signed; null where nobody knows */
  readonly turns: number | null;
  readonly rpm: number | null;
  /** Of a rack: travel along `along` for one turn of the input, signed */
  readonly travel: number | null;
}

export interface DrawnMesh {
  readonly kind: DriveMesh['kind'];
  readonly driver: string;
  readonly driven: string;
  /** Where pitch circles touch */
  readonly x: number;
  readonly y: number;
  /** A belt's straight runs: x0, y0, x1, y1 for each */
  readonly belt: readonly (readonly [number, number, number, number])[];
}

/** Teeth of a rack, whose length nobody measured: odd, so that one stands in its middle. */
const shownRackTeeth = 13;
/** A wheel's radius where not even its teeth are counted, mm. */
const shownRadius = 6;
/** What a wheel of unknown size is drawn as: the commonest pitch of small machines (gear-library/priors). */
const shownModule = 0.5;

/**
 * The drive of a job from above: posts where the measured distances put them, every wheel's teeth standing in its
 * mates' gaps, and what each does for one turn of the input. What isn't known is drawn as a guess and said so in
 * `guesses`; a drive of one wheel, or of none, is drawn as it is.
 *
 * @param chordError greatest stray of a chord from the exact curve, mm
 * @param report what `checkDrive` said of this job: speeds are its
 */
export function drawTrain(job: Job, report: DriveReport, chordError: number): TrainDrawing {
  const model = collectDrive(job, (wheel) => identifyWheel(collectEvidence(job, wheel)));
  const placed = placePosts(model);
  const at = new Map(placed.posts.map((post) => [post.id, post]));
  const postOf = ({ shaft }: DriveWheel): string => placed.postOfShaft.get(shaft) ?? shaft;
  const sizes = new Map(model.wheels.map((wheel) => [wheel.id, measureWheel(wheel, model, chordError)]));
  const seats = model.wheels.map((wheel) => seatOf(wheel, model, (one) => at.get(postOf(one)), sizes));
  const seatById = new Map(seats.map((seat) => [seat.id, seat]));
  const phases = settlePhases(
    seats,
    model.meshes.filter((mesh) => mesh.kind === 'teeth'),
  );
  const turnsOf = new Map(report.shafts.map((shaft) => [shaft.id, shaft]));
  const wheels = model.wheels.map((wheel): DrawnWheel => {
    const size = sizes.get(wheel.id) ?? guessSize(wheel, model);
    const seat = seatById.get(wheel.id);
    const turning = turnsOf.get(wheel.shaft);
    return {
      id: wheel.id,
      post: postOf(wheel),
      x: seat?.x ?? 0,
      y: seat?.y ?? 0,
      ...size,
      teeth: wheel.teeth,
      phase: phases.get(wheel.id) ?? 0,
      along: seat?.along ?? 0,
      turns: turning?.turns?.value ?? null,
      rpm: turning?.rpm ?? null,
      travel: wheel.kind === 'rack' ? travelOf(wheel, model, sizes, turnsOf) : null,
    };
  });
  return {
    posts: placed.posts.map(({ id, x, y, isGuessed }) => ({
      id,
      x,
      y,
      isGuessed,
      wheels: model.wheels.filter((wheel) => postOf(wheel) === id).map((wheel) => wheel.id),
    })),
    wheels,
    meshes: model.meshes.map((mesh) => drawMesh(mesh, wheels)),
    box: boxOf(wheels),
    guesses: listGuesses(model, placed, wheels),
    troubles: placed.troubles,
  };
}

type Size = Pick<
  DrawnWheel,
  'form' | 'outline' | 'perTooth' | 'moduleMm' | 'reach' | 'pitchRadius' | 'rootRadius' | 'isKnown'
>;

function measureWheel(wheel: DriveWheel, model: DriveModel, chordError: number): Size {
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

/** A toothing that can't exist is drawn as its circles. */
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

function measureRack(spec: GearSpec, chordError: number): Size {
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

function measurePulley({ diameterMm, teeth, pitchMm }: DriveWheel): Size | undefined {
  const diameter =
    diameterMm ?? (teeth !== undefined && pitchMm !== undefined ? (teeth * pitchMm) / Math.PI : 0);
  if (!(diameter > 0)) return undefined;
  const radius = diameter / 2;
  return { ...plain, form: 'pulley', reach: radius, pitchRadius: radius, rootRadius: radius, isKnown: true };
}

function measureWorm({ worm, spec, id }: DriveWheel, model: DriveModel): Size {
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
function guessSize(wheel: DriveWheel, model: DriveModel): Size {
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

type FindPost = (wheel: DriveWheel) => { readonly x: number; readonly y: number } | undefined;

/** Where a wheel stands, and which way a bar or a screw lies: square to the line from its mate. */
function seatOf(
  wheel: DriveWheel,
  model: DriveModel,
  at: FindPost,
  sizes: ReadonlyMap<string, Size>,
): PhasedWheel & { readonly along: number } {
  const mate = mateOf(wheel, model);
  const from = mate && at(mate);
  const spot = wheel.kind === 'rack' ? besidePinion(wheel, mate, model, at, sizes) : at(wheel);
  const { x, y } = spot ?? { x: 0, y: 0 };
  const isStraight = wheel.kind === 'rack' || wheel.kind === 'worm';
  const along = isStraight && from ? Math.atan2(from.y - y, from.x - x) - Math.PI / 2 : 0;
  return {
    id: wheel.id,
    x,
    y,
    teeth: wheel.teeth,
    isInternal: wheel.kind === 'internal',
    rack:
      wheel.kind === 'rack'
        ? { along, pitch: Math.PI * (sizes.get(wheel.id)?.moduleMm ?? shownModule) }
        : undefined,
    along,
  };
}

/**
 * A bar has no post: its datum line lies at the distance from its pinion's, to the right, left, above or below, whichever
 * leads away from the other posts. Nothing measured says which.
 */
function besidePinion(
  rack: DriveWheel,
  pinion: DriveWheel | undefined,
  model: DriveModel,
  at: FindPost,
  sizes: ReadonlyMap<string, Size>,
): { readonly x: number; readonly y: number } | undefined {
  const from = pinion && at(pinion);
  if (!from) return undefined;
  const mesh = model.meshes.find((one) => one.driver === rack.id || one.driven === rack.id);
  const distance = mesh?.center?.mm ?? sizes.get(pinion.id)?.pitchRadius ?? shownRadius;
  const others = model.wheels.flatMap((wheel) => at(wheel) ?? []);
  const mean = (of: (spot: { x: number; y: number }) => number): number =>
    others.reduce((sum, spot) => sum + of(spot), 0) / others.length;
  const away = { x: from.x - mean((spot) => spot.x), y: from.y - mean((spot) => spot.y) };
  const [x, y] = Math.abs(away.x) > Math.abs(away.y) ? [Math.sign(away.x), 0] : [0, away.y > 0 ? 1 : -1];
  return { x: from.x + x * distance, y: from.y + y * distance };
}

function mateOf({ id }: DriveWheel, model: DriveModel): DriveWheel | undefined {
  const mesh = model.meshes.find((one) => one.driver === id || one.driven === id);
  if (!mesh) return undefined;
  const other = mesh.driver === id ? mesh.driven : mesh.driver;
  return model.wheels.find((one) => one.id === other);
}

/** π m z of the pinion for each of its turns; counter-clockwise pushes a bar along its direction. */
function travelOf(
  wheel: DriveWheel,
  model: DriveModel,
  sizes: ReadonlyMap<string, Size>,
  turnsOf: ReadonlyMap<string, DriveReport['shafts'][number]>,
): number | null {
  const pinion = mateOf(wheel, model);
  const turns = pinion && turnsOf.get(pinion.shaft)?.turns?.value;
  if (turns === undefined || pinion?.teeth === undefined) return null;
  return turns * pinion.teeth * Math.PI * (sizes.get(wheel.id)?.moduleMm ?? shownModule);
}

function drawMesh(mesh: DriveMesh, wheels: readonly DrawnWheel[]): DrawnMesh {
  const { kind, driver, driven } = mesh;
  const from = wheels.find((wheel) => wheel.id === driver);
  const to = wheels.find((wheel) => wheel.id === driven);
  if (!from || !to) throw new Error(`mesh of ${driver} and ${driven} without wheels`);
  const line = Math.atan2(to.y - from.y, to.x - from.x);
  // Inside a ring the pinion touches on the far side from the ring's axis.
  const side = to.form === 'internal' ? line + Math.PI : line;
  return {
    kind,
    driver,
    driven,
    x: from.x + from.pitchRadius * Math.cos(side),
    y: from.y + from.pitchRadius * Math.sin(side),
    belt: kind === 'belt' ? runsOf(from, to, mesh.isCrossed) : [],
  };
}

/** The straight runs of a belt: common tangents of two circles, outer ones, or inner ones where it is crossed. */
function runsOf(a: DrawnWheel, b: DrawnWheel, isCrossed: boolean): [number, number, number, number][] {
  const distance = Math.hypot(b.x - a.x, b.y - a.y);
  const rise = (a.pitchRadius + (isCrossed ? b.pitchRadius : -b.pitchRadius)) / distance;
  if (!(Math.abs(rise) < 1)) return [];
  const line = Math.atan2(b.y - a.y, b.x - a.x);
  return [1, -1].map((side) => {
    const angle = line + side * Math.acos(rise);
    const other = isCrossed ? angle + Math.PI : angle;
    return [
      a.x + a.pitchRadius * Math.cos(angle),
      a.y + a.pitchRadius * Math.sin(angle),
      b.x + b.pitchRadius * Math.cos(other),
      b.y + b.pitchRadius * Math.sin(other),
    ];
  });
}

function boxOf(wheels: readonly DrawnWheel[]): TrainDrawing['box'] {
  let [left, right, bottom, top] = [0, 0, 0, 0];
  wheels.forEach(({ x, y, reach }, i) => {
    left = i === 0 ? x - reach : Math.min(left, x - reach);
    right = i === 0 ? x + reach : Math.max(right, x + reach);
    bottom = i === 0 ? y - reach : Math.min(bottom, y - reach);
    top = i === 0 ? y + reach : Math.max(top, y + reach);
  });
  return { left, right, bottom, top };
}

function listGuesses(
  model: DriveModel,
  placed: ReturnType<typeof placePosts>,
  wheels: readonly DrawnWheel[],
): string[] {
  const guesses: string[] = [];
  if (placed.posts.some((post) => post.isGuessed) || model.wheels.some((wheel) => wheel.kind === 'rack'))
    guesses.push('in which direction some posts lie was not measured: they are drawn where there is room');
  if (placed.distances.some((one) => one.isGuessed))
    guesses.push('some distances of posts were not measured: they are drawn as the teeth would have them');
  const unknown = wheels.filter((wheel) => !wheel.isKnown);
  if (unknown.length > 0) {
    const names = unknown.map(({ id }) => model.wheels.find((one) => one.id === id)?.name ?? id);
    guesses.push(`not known well enough to draw their teeth: ${names.join(', ')}`);
  }
  return guesses;
}
