import type { DriveMesh, DriveModel, DriveWheel } from './drive/drive-model.ts';
import type { DriveReport } from './drive/drive-report.ts';
import { measureWheel, shownModule, shownRadius, type WheelShape } from './drive/measure-wheel.ts';
import { placePosts } from './drive/place-posts.ts';
import { type PhasedWheel, settlePhases } from './drive/settle-phases.ts';
import { collectDrive } from './job/collect-drive.ts';
import type { Job } from './job/job-schema.ts';
import { openIdentities } from './job/open-identities.ts';

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

export interface DrawnWheel extends WheelShape {
  readonly id: string;
  readonly post: string;
  readonly x: number;
  readonly y: number;
  readonly teeth: number | undefined;
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

/**
 * The drive of a job from above: posts where the measured distances put them, every wheel's teeth standing in its
 * mates' gaps, and what each does for one turn of the input. What isn't known is drawn as a guess and said so in
 * `guesses`; a drive of one wheel, or of none, is drawn as it is.
 *
 * @param chordError greatest stray of a chord from the exact curve, mm
 * @param report what `checkDrive` said of this job: speeds are its
 */
export function drawTrain(job: Job, report: DriveReport, chordError: number): TrainDrawing {
  const model = collectDrive(job, openIdentities(job));
  const placed = placePosts(model);
  const at = new Map(placed.posts.map((post) => [post.id, post]));
  const postOf = ({ shaft }: DriveWheel): string => placed.postOfShaft.get(shaft) ?? shaft;
  const shapes = model.wheels.map((wheel) => measureWheel(wheel, model, chordError));
  const sizes = new Map(model.wheels.map((wheel, i) => [wheel.id, shapes[i]]));
  const seats = model.wheels.map((wheel) => seatOf(wheel, model, (one) => at.get(postOf(one)), sizes));
  const phases = settlePhases(
    seats,
    model.meshes.filter((mesh) => mesh.kind === 'teeth'),
  );
  const turnsOf = new Map(report.shafts.map((shaft) => [shaft.id, shaft]));
  const wheels = model.wheels.map((wheel, i): DrawnWheel => {
    const turning = turnsOf.get(wheel.shaft);
    return {
      id: wheel.id,
      post: postOf(wheel),
      x: seats[i].x,
      y: seats[i].y,
      ...shapes[i],
      teeth: wheel.teeth,
      phase: phases.get(wheel.id) ?? 0,
      along: seats[i].along,
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

type FindPost = (wheel: DriveWheel) => { readonly x: number; readonly y: number } | undefined;

/** Where a wheel stands, and which way a bar or a screw lies: square to the line from its mate. */
function seatOf(
  wheel: DriveWheel,
  model: DriveModel,
  at: FindPost,
  sizes: ReadonlyMap<string, WheelShape>,
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
  sizes: ReadonlyMap<string, WheelShape>,
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
  sizes: ReadonlyMap<string, WheelShape>,
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
