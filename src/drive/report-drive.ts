import { divide, toNumber, unity, withoutSign } from '../numeric/rational.ts';
import { checkBelt } from './check-belt.ts';
import { type CheckedMesh, checkPair, type RollPair } from './check-pair.ts';
import { checkWanted } from './check-wanted.ts';
import { checkWorm } from './check-worm.ts';
import type { DriveMesh, DriveModel, DriveWheel } from './drive-model.ts';
import type { DriveReport, RackReport, Ratio, ShaftReport } from './drive-report.ts';
import { type DriveEnds, findEnds, listShafts } from './find-ends.ts';
import { findTorques } from './find-torques.ts';
import { rackNode, shaftNode } from './list-relations.ts';
import { placePosts } from './place-posts.ts';
import { findRackStep } from './rack-travel.ts';
import { type Speed, type Speeds, solveSpeeds } from './solve-speeds.ts';
import { tellRatio } from './tell-ratio.ts';
import { tellTroubles } from './tell-troubles.ts';

/**
 * What a drive does: the ratio from its input to its output, the speed and torque of every shaft, every mesh checked
 * and, where both toothings and the distance are known, rolled. What keeps it from being said, or can't all be true,
 * stands in `troubles`. A drive that contradicts itself can't turn, so nothing in it has a speed.
 */
export function reportDrive(model: DriveModel, roll?: RollPair): DriveReport {
  const ends = findEnds(model);
  const solved = solveSpeeds(model, ends.from);
  const speeds: Speeds = solved.contradictions.length > 0 ? { ...solved, speeds: new Map() } : solved;
  const checked = model.meshes.map((mesh) => checkMesh(model, mesh, roll));
  const output = findOutput(model, ends, speeds);
  const { troubles, notes } = tellTroubles(model, ends, speeds, output.isKnown);
  const laid = placePosts(model);
  const wanted = checkWanted(model.wanted, output);
  return {
    ratio: output.ratio,
    direction: output.direction,
    from: ends.from ?? null,
    to: ends.rack?.id ?? ends.to ?? null,
    travelMmPerTurn: output.travelMm,
    shafts: reportShafts(model, ends, speeds),
    racks: reportRacks(model, ends, speeds),
    wheels: model.wheels.map(({ id, shaft, teeth, knownFrom, kind }) => ({
      id,
      shaft,
      post: kind === 'rack' ? null : (laid.postOfShaft.get(shaft) ?? shaft),
      teeth: teeth ?? null,
      knownFrom,
    })),
    posts: laid.posts,
    wanted: wanted ?? null,
    meshes: checked.map((one) => one.report),
    troubles: [...ends.troubles, ...troubles, ...checked.flatMap((one) => one.troubles), ...laid.troubles],
    notes: [...model.notes, ...output.notes, ...notes, ...tellTorqueNotes(model, speeds)],
  };
}

function checkMesh(model: DriveModel, mesh: DriveMesh, roll: RollPair | undefined): CheckedMesh {
  const wheelOf = (id: string): DriveWheel => {
    const wheel = model.wheels.find((one) => one.id === id);
    if (!wheel) throw new Error(`a mesh names "${id}", which the model lacks`);
    return wheel;
  };
  const [driver, driven] = [wheelOf(mesh.driver), wheelOf(mesh.driven)];
  if (mesh.kind === 'belt') return checkBelt(mesh, driver, driven);
  if (mesh.kind === 'worm') return checkWorm(mesh, driver, driven);
  return checkPair(mesh, driver, driven, roll);
}

interface Output {
  readonly ratio: Ratio | null;
  readonly direction: 'same' | 'opposite' | null;
  readonly travelMm: number | null;
  readonly isKnown: boolean;
  readonly notes: readonly string[];
}

function findOutput(model: DriveModel, ends: DriveEnds, { speeds }: Speeds): Output {
  const nothing: Output = { ratio: null, direction: null, travelMm: null, isKnown: false, notes: [] };
  if (ends.rack) {
    const travelMm = findTravel(model, ends.rack, speeds.get(rackNode(ends.rack.id)));
    return { ...nothing, travelMm, isKnown: travelMm !== null };
  }
  const speed = ends.to === undefined ? undefined : speeds.get(shaftNode(ends.to));
  if (!speed) return nothing;
  if (speed.turns.num === 0n) {
    return { ...nothing, isKnown: true, notes: [`"${ends.to}" stands still, so there is no ratio`] };
  }
  const inverse = divide(unity, speed.turns);
  const isBack = inverse.num < 0n;
  const ratio = tellRatio(withoutSign(inverse), speed.isExact);
  return {
    ...nothing,
    ratio: ratio ?? null,
    direction: speed.isDirectionKnown ? (isBack ? 'opposite' : 'same') : null,
    isKnown: true,
    notes: [
      ...(ratio ? [] : ['the ratio is beyond the numbers that can be written']),
      ...(ratio && ratio.num === null && speed.isExact
        ? ['the ratio has too many digits to write whole']
        : []),
      ...(speed.isExact ? [] : ['a belt stands in the ratio: it is as good as the diameters and the slip']),
      ...(speed.isDirectionKnown
        ? []
        : [
            'which way the output turns depends on the hand of the worm or on which side the crossing wheel sits: look',
          ]),
    ],
  };
}

/** mm for one turn of the input, without sign; null where speed or pitch isn't known. */
function findTravel(model: DriveModel, rack: DriveWheel, speed: Speed | undefined): number | null {
  const step = findRackStep(model, rack);
  return speed && step !== undefined ? Math.abs(toNumber(speed.turns)) * step : null;
}

function reportShafts(model: DriveModel, ends: DriveEnds, { speeds }: Speeds): ShaftReport[] {
  const slides = new Set(model.wheels.flatMap((wheel) => (wheel.kind === 'rack' ? [wheel.shaft] : [])));
  const shafts = listShafts(model).filter((shaft) => !slides.has(shaft));
  const inputRpm = findInputRpm(model, ends, speeds);
  const torques = findTorques(model.motor, ends.from, speeds, shafts);
  const travels = listShaftTravels(model);
  return shafts.map((id): ShaftReport => {
    const speed = speeds.get(shaftNode(id));
    const travel = travels.get(id);
    const torque = torques.get(id);
    const turns = speed && (speed.isDirectionKnown ? speed.turns : withoutSign(speed.turns));
    return {
      id,
      rpm: turns && inputRpm !== undefined ? toNumber(turns) * inputRpm : null,
      turns: (speed && turns && tellRatio(turns, speed.isExact)) ?? null,
      isDirectionKnown: speed?.isDirectionKnown ?? false,
      torqueNmm: torque?.stall ?? null,
      runningTorqueNmm: torque?.running ?? null,
      ...(travel === undefined ? {} : { travelMmPerTurn: travel }),
    };
  });
}

/** Turns a minute of the input, which counts as positive whatever shaft the motor is on. */
function findInputRpm(
  model: DriveModel,
  ends: DriveEnds,
  speeds: ReadonlyMap<string, Speed>,
): number | undefined {
  const rpm = model.motor?.rpm;
  const shaft = model.motor?.shaft ?? ends.from;
  const own = shaft === undefined ? undefined : speeds.get(shaftNode(shaft));
  if (rpm === undefined || !own || own.turns.num === 0n) return undefined;
  return rpm / Math.abs(toNumber(own.turns));
}

function reportRacks(model: DriveModel, ends: DriveEnds, { speeds }: Speeds): RackReport[] {
  const inputRpm = findInputRpm(model, ends, speeds);
  return model.wheels
    .filter((wheel) => wheel.kind === 'rack')
    .map((rack) => {
      const travel = findTravel(model, rack, speeds.get(rackNode(rack.id)));
      return {
        id: rack.id,
        travelMmPerTurn: travel,
        mmPerMinute: travel !== null && inputRpm !== undefined ? travel * inputRpm : null,
      };
    });
}

/** How far a rack moves for one turn of each shaft whose wheel it runs on. */
function listShaftTravels(model: DriveModel): ReadonlyMap<string, number> {
  const travels = new Map<string, number>();
  const racks = model.wheels.filter((wheel) => wheel.kind === 'rack');
  for (const rack of racks) {
    const step = findRackStep(model, rack);
    for (const mesh of model.meshes) {
      if (mesh.driver !== rack.id && mesh.driven !== rack.id) continue;
      const mate = mesh.driver === rack.id ? mesh.driven : mesh.driver;
      const wheel = model.wheels.find((one) => one.id === mate);
      if (step !== undefined && wheel?.teeth !== undefined) travels.set(wheel.shaft, step * wheel.teeth);
    }
  }
  return travels;
}

function tellTorqueNotes(model: DriveModel, { speeds }: Speeds): string[] {
  const { stallTorqueNmm, torqueNmm } = model.motor ?? {};
  if ((stallTorqueNmm === undefined && torqueNmm === undefined) || speeds.size === 0) return [];
  const hasWorm = model.meshes.some((mesh) => mesh.kind === 'worm');
  return [
    'torques are without loss: each shaft as if all the power went to it',
    ...(hasWorm ? ['a worm loses a large part of the power, often half'] : []),
  ];
}
