import { methods } from '../../gear-library/reading-uncertainty.ts';
import type { DriveMesh, DriveModel, DriveWheel, DriveWheelKind } from '../drive/drive-model.ts';
import type { GearSpec } from '../involute/gear-spec.ts';
import type { Identity } from '../readings/conclude-identity.ts';
import { findInstrumentUncertainty, measureLength, takingsOf } from '../readings/measured-length.ts';
import { collectEvidence, isCovered, kindOf } from './collect-evidence.ts';
import { findWantedRatio } from './find-wanted-ratio.ts';
import type { Job, Wheel } from './job-schema.ts';
import { specOfFields } from './spec-fields.ts';

/**
 * A job's drive: every wheel with what is known of its toothing, every mesh with its distance.
 *
 * A wheel's toothing is its spec where that says teeth and module; else the leading answer of `identityOf`, which is
 * asked only about wheels that mesh and whose teeth were counted or that are lost, where it is certain or likely; else
 * nobody knows it.
 * A wheel without a shaft sits on that of its part, else on one of its own. Shafts may be named by a wheel on them.
 */
export function collectDrive(job: Job, identityOf: (wheel: Wheel) => Identity): DriveModel {
  const wheels = job.wheels ?? [];
  const notes: string[] = [];
  const shafts = nameShafts(wheels);
  const shaftNames = new Set(shafts.values());
  const meshing = new Set((job.meshes ?? []).flatMap(({ driver, driven }) => [driver, driven]));
  const resolve = (name: string | undefined): string | undefined =>
    name === undefined || shaftNames.has(name) ? name : (shafts.get(name) ?? name);
  const byId = new Map(wheels.map((wheel) => [wheel.id, wheel]));
  const meshes = (job.meshes ?? []).flatMap((mesh, index): DriveMesh[] => {
    const driver = byId.get(mesh.driver ?? '');
    const driven = byId.get(mesh.driven ?? '');
    if (driver && driven) return [collectMesh(job, mesh, driver, driven, resolve(mesh.carrier))];
    notes.push(`meshes[${index}] doesn't say which wheels mesh: left aside`);
    return [];
  });
  const carriers = new Set(meshes.map((mesh) => mesh.carrier));
  const fixed = (job.fixed ?? []).flatMap((name): string[] => {
    const shaft = resolve(name) ?? name;
    if (shaftNames.has(shaft) || carriers.has(shaft)) return [shaft];
    notes.push(`"${name}" is held still, but no wheel sits on it and it carries none: left aside`);
    return [];
  });
  const racks = new Set(wheels.flatMap((wheel) => (wheel.kind === 'rack' ? [shafts.get(wheel.id)] : [])));
  if (fixed.some((shaft) => racks.has(shaft)))
    notes.push('a bar that is held still is reckoned as if it moved: the wheel on it travels instead');
  const { motor, wanted } = job;
  const rackIds = new Set(wheels.flatMap((wheel) => (wheel.kind === 'rack' ? [wheel.id] : [])));
  return {
    wheels: wheels.map((wheel) =>
      collectWheel(wheel, shafts.get(wheel.id) ?? wheel.id, meshing.has(wheel.id) ? identityOf : undefined),
    ),
    meshes,
    fixed: [...new Set(fixed.filter((shaft) => !racks.has(shaft)))],
    motor: motor && {
      shaft: resolve(motor.shaft),
      rpm: motor.rpm,
      stallTorqueNmm: motor.stallTorqueNmm,
      torqueNmm: motor.torqueNmm,
    },
    wanted: wanted && {
      from: resolve(wanted.from),
      to: wanted.to !== undefined && rackIds.has(wanted.to) ? wanted.to : resolve(wanted.to),
      ratio: findWantedRatio(job),
      travelMmPerTurn: wanted.travelMmPerTurn,
      tolerancePercent: wanted.tolerancePercent,
      direction: wanted.direction,
    },
    notes,
  };
}

/** Every wheel's shaft: as said, as its part's other wheels say, or one of its own. */
function nameShafts(wheels: readonly Wheel[]): ReadonlyMap<string, string> {
  const said = new Set(wheels.flatMap((wheel) => (wheel.shaft === undefined ? [] : [wheel.shaft])));
  const ofPart = new Map<string, string>();
  for (const { part, shaft } of wheels) {
    if (part !== undefined && shaft !== undefined && !ofPart.has(part)) ofPart.set(part, shaft);
  }
  const own = (name: string): string => (said.has(name) ? `${name} (its own)` : name);
  return new Map(
    wheels.map(({ id, shaft, part }) => {
      if (shaft !== undefined) return [id, shaft];
      return [id, part === undefined ? own(id) : (ofPart.get(part) ?? own(part))];
    }),
  );
}

type JobMesh = NonNullable<Job['meshes']>[number];

function collectMesh(
  job: Job,
  mesh: JobMesh,
  driver: Wheel,
  driven: Wheel,
  carrier: string | undefined,
): DriveMesh {
  return {
    kind: findMeshKind(mesh, driver, driven),
    driver: driver.id,
    driven: driven.id,
    center: findCenter(job, mesh, driver, driven),
    carrier,
    isCrossed: mesh.crossed ?? false,
    slipPercent: mesh.slipPercent ?? 0,
  };
}

/** As said; where wheels say otherwise (a worm, two pulleys), as they are. */
function findMeshKind(mesh: JobMesh, driver: Wheel, driven: Wheel): DriveMesh['kind'] {
  if (mesh.kind === 'belt') return 'belt';
  if (mesh.kind === 'worm' || driver.kind === 'worm' || driven.kind === 'worm') return 'worm';
  if (mesh.kind === undefined && driver.kind === 'pulley' && driven.kind === 'pulley') return 'belt';
  return 'teeth';
}

/** The mesh's own distance, else one that was measured from either wheel to the other. */
function findCenter(job: Job, mesh: JobMesh, driver: Wheel, driven: Wheel): DriveMesh['center'] {
  if (mesh.centerMm !== undefined) {
    const caliper = findInstrumentUncertainty({ kit: job.kit ?? {} });
    const usual = Math.hypot(methods['center-distance'].uMm, caliper);
    return { mm: mesh.centerMm, uMm: mesh.uMm ?? usual };
  }
  for (const [wheel, mate] of [
    [driver, driven],
    [driven, driver],
  ]) {
    if (!wheel.readings?.some((one) => one.of === 'center-distance' && one.mate === mate.id)) continue;
    const evidence = collectEvidence(job, wheel);
    for (const [index, reading] of evidence.readings.entries()) {
      if (reading.of !== 'center-distance' || reading.mate !== mate.id) continue;
      const takings = takingsOf(reading);
      if (takings === undefined) continue;
      const { value, noise, zeroDeviation } = measureLength(evidence, reading, index, takings, undefined);
      return { mm: value, uMm: Math.sqrt(noise + zeroDeviation ** 2) };
    }
  }
  return undefined;
}

function collectWheel(
  wheel: Wheel,
  shaft: string,
  identityOf: ((wheel: Wheel) => Identity) | undefined,
): DriveWheel {
  const kind: DriveWheelKind = wheel.kind ?? 'external';
  const fields = wheel.spec ?? {};
  const base = {
    id: wheel.id,
    name: wheel.name,
    kind,
    shaft,
    part: wheel.part,
    post: wheel.post,
    diameterMm: wheel.diameterMm ?? fields.diameterMm,
    pitchMm: wheel.pitchMm ?? fields.pitchMm,
    isLost: wheel.state === 'lost',
    worm:
      kind === 'worm'
        ? {
            moduleMm: fields.moduleMm,
            moduleIn: fields.moduleIn ?? ('axial' as const),
            referenceDiameterMm: fields.referenceDiameterMm,
          }
        : undefined,
    tipWearMm: wheel.tipWearMm ?? 0,
    missing: wheel.missing ?? [],
    runoutMm: wheel.runoutMm ?? 0,
  };
  const known = findToothing(wheel, identityOf);
  return { ...base, ...known, notes: [...known.notes, ...tellDamage(wheel)] };
}

type Toothing = Pick<DriveWheel, 'teeth' | 'spec' | 'knownFrom' | 'notes'>;

function findToothing(wheel: Wheel, identityOf: ((wheel: Wheel) => Identity) | undefined): Toothing {
  const fields = wheel.spec ?? {};
  const counted = countOf(wheel);
  const teeth = fields.teeth ?? counted;
  const knownFrom = fields.teeth !== undefined ? 'spec' : counted !== undefined ? 'counted' : 'nothing';
  if (!isCovered(wheel)) return { teeth, spec: undefined, knownFrom, notes: [] };
  const kind = kindOf(wheel);
  if (fields.moduleMm !== undefined && (teeth !== undefined || kind === 'rack')) {
    const spec = specOfFields({ ...fields, teeth: teeth ?? longRack }, kind, 'spec');
    return { teeth, spec, knownFrom: 'spec', notes: [] };
  }
  const isCounted = (wheel.readings ?? []).some((reading) => reading.of === 'teeth');
  // What is lost can be worked out from its neighbors; what was never counted, from nothing.
  const isWorkedOut = isCounted || wheel.state === 'lost';
  if (!identityOf || !isWorkedOut) return { teeth, spec: undefined, knownFrom, notes: [] };
  return takeIdentity(identityOf(wheel), teeth, knownFrom);
}

/** A bar whose length nobody has counted is taken as long as it needs to be. */
const longRack = 100;

function takeIdentity(
  identity: Identity,
  teeth: number | undefined,
  knownFrom: DriveWheel['knownFrom'],
): Toothing {
  const [lead] = identity.candidates;
  const isSure = identity.verdict === 'certain' || identity.verdict === 'likely';
  if (!lead || !isSure) {
    return {
      teeth: teeth ?? findLikelyCount(identity),
      spec: undefined,
      knownFrom: teeth === undefined && findLikelyCount(identity) !== undefined ? 'identified' : knownFrom,
      notes: [
        identity.verdict === 'nothing-fits'
          ? 'has readings that no gear gives: look at them again'
          : 'is not settled in size; `identify` says what to measure next',
      ],
    };
  }
  const spec: GearSpec = teeth === undefined || teeth === lead.teeth ? lead.spec : { ...lead.spec, teeth };
  const count = teeth ?? findLikelyCount(identity);
  const angle =
    identity.angleVerdict === 'undecided'
      ? `, flanks at ${lead.pressureAngleDeg} degrees taken for granted`
      : '';
  return {
    teeth: count,
    spec: count === undefined ? undefined : spec,
    knownFrom: 'identified',
    notes: [
      `is taken as identified: module ${Number(lead.moduleMm.toFixed(4))}, ${spec.teeth} teeth (${identity.verdict}${angle})`,
    ],
  };
}

/** A count that holds nearly all of the probability: no ratio is worth saying on less. */
function findLikelyCount(identity: Identity): number | undefined {
  const [lead] = identity.candidates;
  if (!lead) return undefined;
  let share = 0;
  for (const one of identity.candidates) if (one.teeth === lead.teeth) share += one.probability;
  return share >= sureCount ? lead.teeth : undefined;
}

const sureCount = 0.9;

function countOf(wheel: Wheel): number | undefined {
  for (const reading of wheel.readings ?? []) {
    if (reading.of === 'teeth' && reading.count !== undefined) return reading.count;
  }
  return undefined;
}

function tellDamage(wheel: Wheel): string[] {
  const isBroken = (wheel.damage ?? []).some((one) => one.kind === 'teeth-missing');
  return isBroken && (wheel.missing ?? []).length === 0 ? ['is taken whole, as it was made'] : [];
}
