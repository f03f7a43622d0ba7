import type { DriveModel, DriveWheel } from './drive/drive-model.ts';
import type { GearSpec } from './involute/gear-spec.ts';
import { traceOutline } from './involute/trace-outline.ts';
import { collectDrive } from './job/collect-drive.ts';
import type { Job } from './job/job-schema.ts';
import { openIdentities } from './job/open-identities.ts';
import { specOfFields } from './job/spec-fields.ts';
import type { SpecFields } from './job/spec-schema.ts';
import { rollPair } from './rolling/roll-pair.ts';
import type { RolledWheel } from './rolling/rolled-wheel.ts';
import type { RolledAt, RollingProof } from './rolling/rolling-proof.ts';

/**
 * A pair as it was rolled, ready to draw: at its tightest spot, with its play over the cycle. Lengths mm, angles rad. The
 * driver's axis is the origin, the driven wheel's lies at (a, 0).
 */
export interface PairDrawing {
  readonly driver: PairSide;
  readonly driven: PairSide;
  readonly centerMm: number;
  readonly uMm: number;
  readonly verdict: RollingProof['verdict'];
  readonly reasons: RollingProof['reasons'];
  readonly freeFromMm: number | undefined;
  readonly smoothFromMm: number | undefined;
  /** The play over the cycle: where the driven wheel is free, mm at its working circle from where it should stand */
  readonly play: {
    /** In pitches of the driver */
    readonly at: Float64Array;
    readonly low: Float64Array;
    readonly high: Float64Array;
    readonly pitches: number;
    readonly tightestAt: number;
  };
  readonly figures: Pick<
    RolledAt,
    'backlashLeast' | 'backlashGreatest' | 'transmissionError' | 'contactRatio'
  >;
  /** Where the outlines press into each other, or nearly do: the middle of the enlarged picture */
  readonly spot: { readonly x: number; readonly y: number };
  /** Where they overlap; undefined where they are free */
  readonly binds:
    | { readonly x: number; readonly y: number; readonly where: string; readonly depthMm: number }
    | undefined;
  /** The same pair at other distances, within the measurement's uncertainty */
  readonly range: readonly { readonly mm: number; readonly isFree: boolean }[];
}

export interface PairSide {
  readonly wheelId: string;
  readonly x: number;
  /** About its own axis, tooth 0 on +x, closed; a rack along x with its teeth up, to be turned by `turned` first */
  readonly outline: Float64Array;
  readonly turned: number;
  /** Of a rack: moved along its own direction by so much */
  readonly moved: number;
  readonly isRack: boolean;
  readonly pitchRadius: number;
}

/**
 * How a wheel runs against one of its mates, rolled at the distance of their posts and drawn where it is tightest; with
 * `spec` as if the wheel were another one. Undefined where nothing can be rolled: a toothing or the distance is unknown,
 * or the two are no pair of gears.
 *
 * Throws Fail as `rollPair` does, for a toothing that can't exist.
 *
 * @param chordError greatest stray of a drawn chord from the exact curve, mm
 */
export function drawPair(
  job: Job,
  pair: { readonly wheelId: string; readonly mateId: string; readonly spec?: SpecFields | undefined },
  chordError: number,
): PairDrawing | undefined {
  const model = collectDrive(job, openIdentities(job));
  const found = findPair(model, pair);
  if (!found) return undefined;
  const { driver, driven, mm, u } = found;
  const proof = rollPair(driver.rolled, driven.rolled, { mm, u });
  // What is drawn is what stands on the bench: the measured distance.
  const at = proof.mean;
  return {
    ...drawSides(driver, driven, at, chordError),
    centerMm: at.centerDistance,
    uMm: u,
    verdict: proof.verdict,
    reasons: proof.reasons,
    freeFromMm: proof.freeFrom,
    smoothFromMm: proof.smoothFrom,
    play: playOf(at, driver.rolled.spec, driven.rolled.spec, proof.cycle.meetings),
    figures: at,
    binds: bindsOf(at),
    range: proof.range.map((one) => ({ mm: one.centerDistance, isFree: one.isFree })),
  };
}

interface Rolled {
  readonly id: string;
  readonly rolled: RolledWheel;
}

function findPair(
  model: DriveModel,
  {
    wheelId,
    mateId,
    spec,
  }: { readonly wheelId: string; readonly mateId: string; readonly spec?: SpecFields | undefined },
): { readonly driver: Rolled; readonly driven: Rolled; readonly mm: number; readonly u: number } | undefined {
  const mesh = model.meshes.find(
    (one) =>
      one.kind === 'teeth' &&
      ((one.driver === wheelId && one.driven === mateId) ||
        (one.driver === mateId && one.driven === wheelId)),
  );
  const wheel = model.wheels.find((one) => one.id === wheelId);
  const mate = model.wheels.find((one) => one.id === mateId);
  if (!mesh?.center || !wheel || !mate?.spec) return undefined;
  const own = spec ? fresh(wheel, spec) : asItIs(wheel);
  const other = asItIs(mate);
  if (!own || !other) return undefined;
  const [driver, driven] = mesh.driver === wheelId ? [own, other] : [other, own];
  return { driver, driven, mm: mesh.center.mm, u: mesh.center.uMm };
}

/** A new wheel: not worn, nothing missing. */
function fresh({ id, kind }: DriveWheel, spec: SpecFields): Rolled {
  const of = kind === 'internal' || kind === 'rack' ? kind : 'external';
  return { id, rolled: { spec: specOfFields(spec, of, 'spec') } };
}

function asItIs({ id, spec, tipWearMm, missing, runoutMm }: DriveWheel): Rolled | undefined {
  return spec && { id, rolled: { spec, tipWear: tipWearMm, missing, runout: runoutMm } };
}

function drawSides(
  driver: Rolled,
  driven: Rolled,
  at: RolledAt,
  chordError: number,
): Pick<PairDrawing, 'driver' | 'driven' | 'spot'> {
  const [one, two] = [driver.rolled.spec, driven.rolled.spec];
  const a = at.centerDistance;
  const teeth = one.teeth + two.teeth * (one.kind === 'internal' || two.kind === 'internal' ? -1 : 1);
  const radiusOf = (spec: GearSpec, mate: GearSpec): number =>
    spec.kind === 'rack'
      ? 0
      : mate.kind === 'rack'
        ? (spec.module * spec.teeth) / (2 * Math.cos(spec.helixAngle))
        : Math.abs((a * spec.teeth) / teeth);
  // The driver's tooth 0 stands beyond the line of centers by `tightestAt`, the driven wheel's half a pitch further on,
  // in the middle of what is left to it. At the contact both move along +y (rollPair says so).
  const ahead = drivenAhead(at, one, two);
  const contact = two.kind === 'internal' ? Math.PI : 0;
  const side = (
    spec: GearSpec,
    id: string,
    x: number,
    turned: number,
    moved: number,
    radius: number,
  ): PairSide => ({
    wheelId: id,
    x,
    outline: traceOutline(spec.kind === 'rack' ? { ...spec, teeth: shownTeeth } : spec, chordError).points,
    turned,
    // Its row of teeth is laid about the middle.
    moved: spec.kind === 'rack' ? (moved % pitchOf(spec)) - ((shownTeeth - 1) / 2) * pitchOf(spec) : 0,
    isRack: spec.kind === 'rack',
    pitchRadius: radius,
  });
  const r1 = radiusOf(one, two);
  const r2 = radiusOf(two, one);
  return {
    driver:
      one.kind === 'rack'
        ? side(one, driver.id, 0, -Math.PI / 2, -at.tightestAt, r1)
        : side(one, driver.id, 0, contact === 0 ? at.tightestAt : contact - at.tightestAt, 0, r1),
    driven:
      two.kind === 'rack'
        ? side(two, driven.id, a, Math.PI / 2, ahead, r2)
        : side(two, driven.id, a, one.kind === 'internal' ? ahead : Math.PI - ahead, 0, r2),
    spot: at.interference[0] ?? { x: one.kind === 'rack' ? 0 : contact === 0 ? r1 : -r1, y: 0 },
  };
}

/** How far the driven wheel's tooth 0 stands beyond the line of centers, in the way it is driven. */
function drivenAhead(at: RolledAt, one: GearSpec, two: GearSpec): number {
  const { curve, tightestAt } = at;
  let k = 0;
  for (let i = 1; i < curve.driverAngle.length; i++) {
    if (Math.abs(curve.driverAngle[i] - tightestAt) < Math.abs(curve.driverAngle[k] - tightestAt)) k = i;
  }
  const middle = (curve.low[k] + curve.high[k]) / 2;
  const pitches = tightestAt / pitchOf(one);
  return (pitches + 0.5) * pitchOf(two) + (Number.isFinite(middle) ? middle : 0);
}

/** rad; of a rack mm */
function pitchOf(spec: GearSpec): number {
  return spec.kind === 'rack'
    ? (Math.PI * spec.module) / Math.cos(spec.helixAngle)
    : (2 * Math.PI) / spec.teeth;
}

/** A rack's length is shown as far as the picture reaches; odd, so that one tooth stands in its middle. */
const shownTeeth = 13;

function playOf(at: RolledAt, one: GearSpec, two: GearSpec, pitches: number): PairDrawing['play'] {
  // As rollPair has the driven wheel's working circle.
  const teeth =
    one.kind === 'internal' || two.kind === 'internal'
      ? Math.abs(two.teeth - one.teeth)
      : one.teeth + two.teeth;
  const radius =
    two.kind === 'rack'
      ? 1
      : one.kind === 'rack'
        ? (pitchOf(one) * two.teeth) / (2 * Math.PI)
        : (at.centerDistance * two.teeth) / teeth;
  const pitch = pitchOf(one);
  return {
    at: at.curve.driverAngle.map((angle) => angle / pitch),
    low: at.curve.low.map((angle) => angle * radius),
    high: at.curve.high.map((angle) => angle * radius),
    pitches,
    tightestAt: at.tightestAt / pitch,
  };
}

function bindsOf({ isFree, interference }: RolledAt): PairDrawing['binds'] {
  const [first] = interference;
  return isFree || !first ? undefined : { x: first.x, y: first.y, where: first.where, depthMm: first.depth };
}
