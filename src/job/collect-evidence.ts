import { Fail } from '../fail.ts';
import type { Damage, Kit, Mate, Reading, WheelEvidence } from '../readings/wheel-evidence.ts';
import { findMissingValue, type JobReading } from './find-missing-value.ts';
import type { Job, Wheel } from './job-schema.ts';

/** Kinds of wheel that identification covers. */
const coveredKinds = ['external', 'internal', 'rack'] as const;
type CoveredKind = (typeof coveredKinds)[number];

/** Whether a wheel's kind is one that identification covers; no kind stands for an external wheel. */
export function isCovered(wheel: Wheel): boolean {
  return wheel.kind === undefined || coveredKinds.some((kind) => kind === wheel.kind);
}

/**
 * What a job says about one of its wheels: its readings with their indices kept, the kit, the machine, and the wheels
 * it meshes with whose teeth are counted. A reading that says nothing yet (an angle without degrees, a length
 * without mm) gives way to one of nothing in its place: it is not taken.
 */
export function collectEvidence(job: Job, wheel: Wheel): WheelEvidence {
  return {
    id: wheel.id,
    kind: kindOf(wheel),
    state: wheel.state,
    material: wheel.material,
    damage: (wheel.damage ?? []).filter((one): one is typeof one & Damage => one.kind !== undefined),
    readings: [...(wheel.readings ?? []).map((reading) => asReading(reading)), ...listPost(wheel)],
    kit: (job.kit ?? {}) satisfies Kit,
    machine: job.machine ?? {},
    mates: listMates(job, wheel),
  };
}

/** A lost wheel's post as the shaft that its bore is made for, where no reading says it. */
function listPost({ readings, postSize }: Wheel): readonly Reading[] {
  if (postSize?.diameterMm === undefined || readings?.some((one) => one.of === 'shaft')) return [];
  return [{ of: 'shaft', mm: postSize.diameterMm }];
}

/** The wheel that a person named, or the only one, or all. Throws Fail `no-such-wheel`. */
export function findWheels(job: Job, wheelId: string | undefined): readonly Wheel[] {
  const wheels = job.wheels ?? [];
  if (wheelId === undefined) return wheels;
  const wheel = wheels.find((one) => one.id === wheelId);
  if (wheel) return [wheel];
  throw new Fail(
    'no-such-wheel',
    'wheel',
    `the job has no wheel called "${wheelId}"`,
    wheels.length === 0 ? 'The job has no wheels yet.' : `It has: ${wheels.map((one) => one.id).join(', ')}.`,
    { wheelId },
  );
}

/** A wheel's kind as identification has it; what is not covered, or not said, stands for an external wheel. */
export function kindOf(wheel: Wheel): CoveredKind {
  return coveredKinds.find((kind) => kind === wheel.kind) ?? 'external';
}

/** Keeps the indices of the readings behind it. */
const noReading: Reading = { of: 'nothing' };

function asReading(reading: JobReading): Reading {
  if (reading.of === undefined || findMissingValue(reading) !== undefined) return noReading;
  if (reading.of === 'helix-angle')
    return reading.deg === undefined ? noReading : { ...reading, deg: reading.deg };
  if (reading.of === 'hand-roll') {
    return reading.felt === undefined
      ? noReading
      : { ...reading, spec: reading.spec ?? {}, felt: reading.felt };
  }
  return reading;
}

/** Wheels that a mesh or a shaft distance joins to this one and whose teeth are known. */
function listMates(job: Job, wheel: Wheel): Mate[] {
  const ids = new Set<string>();
  for (const mesh of job.meshes ?? []) {
    if (mesh.kind !== undefined && mesh.kind !== 'teeth') continue;
    if (mesh.driver === wheel.id && mesh.driven) ids.add(mesh.driven);
    if (mesh.driven === wheel.id && mesh.driver) ids.add(mesh.driver);
  }
  for (const reading of wheel.readings ?? []) {
    if (reading.of === 'center-distance' && reading.mate) ids.add(reading.mate);
  }
  return [...ids].flatMap((id): Mate[] => {
    const mate = job.wheels?.find((one) => one.id === id);
    const kind = mate && isCovered(mate) ? kindOf(mate) : undefined;
    const teeth = mate ? countOf(mate) : undefined;
    return kind && teeth ? [{ id, kind, teeth }] : [];
  });
}

function countOf(wheel: Wheel): number | undefined {
  for (const reading of wheel.readings ?? []) {
    if (reading.of === 'teeth' && reading.count !== undefined) return reading.count;
  }
  return wheel.spec?.teeth;
}
