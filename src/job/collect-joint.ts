import type { WantedCounts } from '../drive/count-by-ratio.ts';
import type { MeasuredDistance } from '../drive/distance-ways.ts';
import type { JointDrive, JointWheel } from '../drive/joint-identity.ts';
import type { Join } from '../drive/mesh-tree.ts';
import { type MeasuredLength, measureLength, takingsOf } from '../readings/measured-length.ts';
import type { LengthReading, WheelEvidence } from '../readings/wheel-evidence.ts';
import { collectEvidence, isCovered } from './collect-evidence.ts';
import { collectWanted } from './collect-wanted.ts';
import type { Job, Wheel } from './job-schema.ts';

/**
 * What a job says of wheels that run against each other: one join a pair, from meshes of teeth, readings of a shaft
 * distance and tracks on neighbors. A mesh's own distance counts only where no reading gives that pair's, and a
 * distance written at both of its wheels counts once.
 */
export function collectJoint(job: Job): JointDrive {
  const wheels = (job.wheels ?? []).filter(isCovered);
  const evidence = new Map(wheels.map((wheel) => [wheel.id, { ...collectEvidence(job, wheel), mates: [] }]));
  const joins = listJoins(job, wheels, evidence);
  const wanted = collectWanted(job);
  return {
    machine: job.machine ?? {},
    joins,
    wanted,
    wheels: wheels.map((wheel) => collectWheel(job, wheel, evidence, wanted)),
  };
}

function collectWheel(
  job: Job,
  wheel: Wheel,
  evidence: ReadonlyMap<string, WheelEvidence>,
  wanted: WantedCounts | undefined,
): JointWheel {
  const own = evidence.get(wheel.id);
  if (!own) throw new Error(`no evidence of ${wheel.id}`);
  const { spec } = wheel;
  const isLost = wheel.state === 'lost';
  const isIdler = isLost && isIdle(job, wheel);
  const has = (of: string): boolean => own.readings.some((reading) => reading.of === of);
  const notes: string[] = [];
  if (isIdler) {
    notes.push("it is an idler: its count doesn't change the speed, so the speed wanted can't tell it");
  }
  if (isLost && (wheel.rows ?? 1) > 1) {
    notes.push(
      `it had ${wheel.rows} rows of teeth: put each row into the job as a gear of its own, all with one "part"`,
    );
  }
  if (wheel.timed) {
    notes.push(
      "the train is timed: how its teeth stood to the others can't be known from the parts; look for marks, or set it by trial",
    );
  }
  return {
    evidence: own,
    ...(spec?.teeth !== undefined && spec.moduleMm !== undefined
      ? {
          spec: {
            teeth: spec.teeth,
            module: spec.moduleMm,
            pressureAngle: ((spec.pressureAngleDeg ?? 20) * Math.PI) / 180,
            profileShift: spec.profileShift ?? 0,
          },
        }
      : {}),
    isLost,
    notes,
    answers: {
      noCrumbs: (wheel.leftOut ?? []).includes('crumbs'),
      hasPost: has('shaft') || has('bore') || wheel.postSize?.diameterMm !== undefined,
      hasRows: wheel.rows !== undefined,
      hasSpeed: wanted !== undefined || job.wanted?.unknown === true,
      isIdler,
    },
  };
}

/** A wheel alone on its shaft between two meshes or more, where neither the motor nor the wanted output sits. */
function isIdle(job: Job, wheel: Wheel): boolean {
  const meshes = (job.meshes ?? []).filter(
    ({ driver, driven }) => driver === wheel.id || driven === wheel.id,
  );
  if (meshes.length < 2 || meshes.some((mesh) => mesh.carrier !== undefined)) return false;
  const ends = [job.motor?.shaft, job.wanted?.from, job.wanted?.to];
  if (wheel.shaft !== undefined && ends.includes(wheel.shaft)) return false;
  return !(job.wheels ?? []).some((other) => other.id !== wheel.id && turnTogether(wheel, other));
}

function turnTogether(a: Wheel, b: Wheel): boolean {
  return (a.shaft !== undefined && a.shaft === b.shaft) || (a.part !== undefined && a.part === b.part);
}

function listJoins(job: Job, wheels: readonly Wheel[], evidence: ReadonlyMap<string, WheelEvidence>): Join[] {
  const joins = new Map<string, { wheels: readonly [string, string]; distances: MeasuredDistance[] }>();
  const joinOf = (a: string | undefined, b: string | undefined) => {
    if (a === undefined || b === undefined || a === b || !evidence.has(a) || !evidence.has(b))
      return undefined;
    const key = JSON.stringify([a, b].sort());
    const known = joins.get(key) ?? { wheels: [a, b] as const, distances: [] };
    joins.set(key, known);
    return known;
  };
  for (const { kind, driver, driven } of job.meshes ?? []) {
    if (kind === undefined || kind === 'teeth') joinOf(driver, driven);
  }
  for (const wheel of wheels) {
    for (const { wheel: other } of wheel.touched ?? []) joinOf(wheel.id, other);
    const own = evidence.get(wheel.id);
    own?.readings.forEach((reading, index) => {
      if (reading.of !== 'center-distance') return;
      const join = joinOf(wheel.id, reading.mate);
      const length = join && readDistance(own, reading, index);
      if (!length) return;
      const isThere = join.distances.some(
        (one) =>
          one.wheel !== wheel.id && one.length.value === length.value && one.length.noise === length.noise,
      );
      if (!isThere) join.distances.push({ length, wheel: wheel.id });
    });
  }
  for (const { kind, driver, driven, centerMm, uMm } of job.meshes ?? []) {
    if (centerMm === undefined || (kind !== undefined && kind !== 'teeth')) continue;
    const join = joinOf(driver, driven);
    if (!join || join.distances.length > 0) continue;
    const own = evidence.get(join.wheels[0]);
    const length = own && readDistance(own, { of: 'center-distance', mm: centerMm, uMm }, -1);
    if (length) join.distances.push({ length, wheel: undefined });
  }
  return [...joins.values()];
}

/** A distance as a length: as it stands, or from what was measured at the two posts. */
function readDistance(
  wheel: WheelEvidence,
  reading: LengthReading,
  index: number,
): MeasuredLength | undefined {
  const mm = takingsOf(reading);
  return mm === undefined ? undefined : measureLength(wheel, reading, index, mm, undefined);
}
