import { partMethods } from '../gear-library/print-errors.ts';
import type { Process } from '../gear-library/processes.ts';
import { methods } from '../gear-library/reading-uncertainty.ts';
import { Fail } from './fail.ts';
import { findMates } from './find-mates.ts';
import { collectEvidence, findWheels, kindOf } from './job/collect-evidence.ts';
import type { Job, Wheel } from './job/job-schema.ts';
import type { MadeReport } from './job/made-report.ts';
import { roundNumbers } from './job/round-numbers.ts';
import { fieldsOfSpec, specOfFields } from './job/spec-fields.ts';
import type { Compensation } from './making/compensation.ts';
import { fillCompensation } from './making/fill-compensation.ts';
import { findProcess } from './making/find-process.ts';
import { type JudgedDimension, judgeMade } from './making/judge-made.ts';
import { planWheel } from './plan-wheel.ts';
import { type ErrorPrior, errorOrder, findErrorPrior } from './readings/error-prior.ts';
import { findOutOfRound, type OutOfRound } from './readings/find-out-of-round.ts';
import { type MadePartReading, type MeantPart, readMadePart } from './readings/read-made-part.ts';
import { readPlainLength } from './readings/read-plain-length.ts';
import type { WheelEvidence } from './readings/wheel-evidence.ts';
import { rollPair } from './rolling/roll-pair.ts';
import type { RolledWheel } from './rolling/rolled-wheel.ts';
import type { RollingProof } from './rolling/rolling-proof.ts';
import { tryPlanWheel } from './try-plan-wheel.ts';

/** Of a bush's outside, mm: an h9 of 3 to 6 mm is 0.03 wide (ISO 286-1), taken as even over its width. */
const bushDeviation = 0.009;

/** Of a good reading it happens once in 16,000, less where it pulls the answer to itself. */
const suspectBeyond = 4;

type Made = NonNullable<Wheel['made']>;

/**
 * Whether the part that was made for a wheel fits: its readings (`made.readings` of the wheel) against what was meant,
 * what is off and by how much, this part as measured rolled against its mate, and what to take back in the next
 * drawing. What was meant is `made.spec` where it is given, else the part as it is planned now.
 *
 * The mate is the first wheel that a mesh of teeth joins to this one, whose spec is given or can be worked out and
 * whose distance is known. Throws Fail `not-identified` where nothing was made or nothing is planned, `bad-usage` for a
 * process that is not known; else as `planWheel` does.
 */
export function checkMade(job: Job, wheelId: string): MadeReport {
  const [wheel] = findWheels(job, wheelId);
  const { made } = wheel;
  if (!made) {
    throw new Fail(
      'not-identified',
      `wheels[${(job.wheels ?? []).indexOf(wheel)}].made`,
      `no part was made for "${wheelId}" yet`,
      'Make it, then put its readings into "made": { "readings": [ … ] } of the wheel.',
      { wheelId },
    );
  }
  const process = findProcess(made.process, 'made.process');
  const meant = findMeant(job, wheel, made, process);
  const used = fillCompensation(made.compensation);
  const prior = findMachine(process, made);
  const evidence = collectMade(job, wheel, made);
  const reading = readMadePart(evidence, meant, takeOff(prior, used));
  const outOfRound = findOutOfRound(evidence);
  const rolled = rollMade(job, wheel, reading, outOfRound);
  const judgment = judgeMade({
    reading,
    outOfRound,
    module: meant.spec.module,
    isInternal: meant.spec.kind === 'internal',
    shaft: findShaft(job, wheel),
    proof: rolled.proof,
  });
  return roundNumbers({
    wheel: wheelId,
    process: process.key,
    verdict: judgment.verdict,
    chance: judgment.chance,
    dimensions: judgment.dimensions.map(reportDimension),
    outOfRound: outOfRound
      ? {
          reading: outOfRound.index,
          of: outOfRound.of,
          rangeMm: outOfRound.range,
          mm: outOfRound.mm,
          uMm: outOfRound.u,
        }
      : null,
    unread: judgment.unread,
    residuals: reading.readings.map(({ index, of, read, expected, sigmas, isLeftOut }) => ({
      reading: index,
      of,
      readMm: read,
      expectedMm: expected,
      sigmas,
      isSuspect: isLeftOut || Math.abs(sigmas) > suspectBeyond,
      isLeftOut,
    })),
    spec: fieldsOfSpec(reading.spec),
    proof: rolled.report,
    proofMissing: rolled.missing,
    next: correct(used, prior, reading),
  });
}

function findMeant(job: Job, wheel: Wheel, made: Made, process: Process): MeantPart {
  const at = (job.wheels ?? []).indexOf(wheel);
  const given = made.spec?.moduleMm !== undefined && made.spec.teeth !== undefined ? made.spec : undefined;
  if (given) {
    const hubs = given.hubs ?? [];
    return {
      spec: specOfFields(given, kindOf(wheel), `wheels[${at}].made.spec`),
      bore: given.bore?.diameterMm,
      hub: hubs.length === 1 ? hubs[0].diameterMm : undefined,
    };
  }
  const { spec, bore, hubs } = planWheel(job, { wheelId: wheel.id, process: process.key }).plan.form;
  return {
    spec,
    bore: 'diameter' in bore ? bore.diameter : undefined,
    hub: hubs.length === 1 ? hubs[0].diameter : undefined,
  };
}

/** What is thought of the machine before this part: what was measured of it, where that comes with its give or take. */
function findMachine(process: Process, made: Made): ErrorPrior {
  const usual = findErrorPrior(process);
  const { uncertainty: u, compensation } = made;
  if (!u || !compensation) return usual;
  const figures = fillCompensation(compensation);
  const apart = Math.sqrt(Math.max(0, (u.teethPerSideMm ?? 0) ** 2 - (u.outsidePerSideMm ?? 0) ** 2));
  return {
    mean: inOrder(figures),
    deviation: [
      u.scalePercent === undefined ? usual.deviation[errorOrder.scale] : u.scalePercent / 100,
      u.outsidePerSideMm ?? usual.deviation[errorOrder.outside],
      // Flanks that are known no worse than outsides are still not known exactly.
      Math.max(apart, usual.deviation[errorOrder.flanksApart] / 4),
      u.holesPerSideMm ?? usual.deviation[errorOrder.holes],
      u.firstLayerPerSideMm ?? usual.deviation[errorOrder.firstLayer],
    ],
    betweenPrints: usual.betweenPrints,
  };
}

/** In `errorOrder`. */
function inOrder(figures: Compensation): number[] {
  return [
    figures.scalePercent / 100,
    figures.outsidePerSideMm,
    figures.teethPerSideMm - figures.outsidePerSideMm,
    figures.holesPerSideMm,
    figures.firstLayerPerSideMm,
  ];
}

/** What stays of a machine's errors after what the drawing took back. */
function takeOff(prior: ErrorPrior, used: Compensation): ErrorPrior {
  const taken = inOrder(used);
  return { ...prior, mean: prior.mean.map((one, k) => one - taken[k]) };
}

function correct(used: Compensation, prior: ErrorPrior, { machine }: MadePartReading): MadeReport['next'] {
  const taken = inOrder(used);
  const at = (k: number): number => machine.mean[k] + taken[k];
  const { scale, outside, flanksApart, holes, firstLayer } = errorOrder;
  return {
    compensation: {
      scalePercent: 100 * at(scale),
      outsidePerSideMm: at(outside),
      teethPerSideMm: at(outside) + at(flanksApart),
      holesPerSideMm: at(holes),
      // Nothing of a part tells it; what was taken back stays.
      firstLayerPerSideMm: used.firstLayerPerSideMm,
    },
    uncertainty: {
      scalePercent: 100 * machine.deviation[scale],
      outsidePerSideMm: machine.deviation[outside],
      teethPerSideMm: Math.hypot(machine.deviation[outside], machine.deviation[flanksApart]),
      holesPerSideMm: machine.deviation[holes],
      firstLayerPerSideMm: prior.deviation[firstLayer],
    },
  };
}

/** The made part's readings as a wheel's: whole, of this kind, with the job's caliper. */
function collectMade(job: Job, wheel: Wheel, made: Made): WheelEvidence {
  return {
    ...collectEvidence(job, { ...wheel, readings: made.readings ?? [], damage: [] }),
    mates: [],
  };
}

/** What goes into the bore: a bush where the part was made for one, else the shaft. */
function findShaft(job: Job, wheel: Wheel): { mm: number; u: number } | undefined {
  const seat = wheel.made?.seatMm;
  // A bush is bought or turned to its size.
  if (seat !== undefined) return { mm: seat, u: bushDeviation };
  for (const reading of wheel.readings ?? []) {
    if (reading.of !== 'shaft') continue;
    const read = readPlainLength(reading, partMethods.wall, job.kit ?? {});
    // The zero cancels in the difference of two caliper readings; a bore by shanks has none to cancel.
    if (read) return { mm: read.value, u: read.noise };
  }
  return undefined;
}

function rollMade(
  job: Job,
  wheel: Wheel,
  reading: MadePartReading,
  outOfRound: OutOfRound | undefined,
): { proof: RollingProof | undefined; report: MadeReport['proof']; missing: string | null } {
  const missing = (why: string) => ({ proof: undefined, report: null, missing: why });
  const mate = findRolledMate(job, wheel);
  if (typeof mate === 'string') return missing(mate);
  const thickness = reading.dimensions.find(({ of }) => of === 'tooth-thickness');
  // Thicker by s is closer by s/(2 tan α), so what isn't known of the one counts as the other.
  const u = Math.hypot(mate.u, (thickness?.u ?? 0) / (2 * Math.tan(reading.spec.pressureAngle)));
  // An oval wheel's radius goes up and down by half of what its diameters differ by.
  const isOval = outOfRound && outOfRound.of !== 'bore' && outOfRound.mm > 2 * outOfRound.u;
  const part: RolledWheel = { spec: reading.spec, runout: isOval ? outOfRound.mm / 2 : 0 };
  try {
    const proof = mate.isDriver
      ? rollPair(mate.wheel, part, { mm: mate.mm, u })
      : rollPair(part, mate.wheel, { mm: mate.mm, u });
    const { mean } = proof;
    return {
      proof,
      missing: null,
      report: {
        mate: mate.id,
        centerMm: mate.mm,
        uMm: u,
        verdict: proof.verdict,
        contactRatio: mean.contactRatio,
        backlashMinMm: finiteOrNull(mean.backlashLeast),
        backlashMaxMm: finiteOrNull(mean.backlashGreatest),
        transmissionErrorMm: finiteOrNull(mean.transmissionError),
        freeFromMm: proof.freeFrom ?? null,
        reasons: proof.reasons,
      },
    };
  } catch (error) {
    if (error instanceof Fail) return missing(`it can't be rolled: ${error.message}`);
    throw error;
  }
}

function finiteOrNull(value: number): number | null {
  return Number.isFinite(value) ? value : null;
}

interface RolledMate {
  readonly id: string;
  readonly wheel: RolledWheel;
  readonly isDriver: boolean;
  readonly mm: number;
  readonly u: number;
}

/** The mate to roll against, or why there is none. */
function findRolledMate(job: Job, wheel: Wheel): RolledMate | string {
  let why = 'the job names no wheel that it runs against';
  for (const { mesh, mate, isDriver } of findMates(job, wheel.id)) {
    if (mesh.centerMm === undefined) {
      why = `the distance of the shafts to "${mate.id}" is not in the job`;
      continue;
    }
    const spec = tryPlanWheel(job, mate.id)?.plan.form.spec;
    if (!spec) {
      why = `"${mate.id}" is not known well enough to roll against`;
      continue;
    }
    return {
      id: mate.id,
      wheel: {
        spec,
        tipWear: mate.tipWearMm ?? 0,
        missing: mate.missing ?? [],
        runout: mate.runoutMm ?? 0,
      },
      isDriver,
      mm: mesh.centerMm,
      u: mesh.uMm ?? methods['center-distance'].uMm,
    };
  }
  return why;
}

function reportDimension(one: JudgedDimension): MadeReport['dimensions'][number] {
  const { of, meant, made, error, u, isRead, verdict, chance, heldAgainst } = one;
  return {
    of,
    meantMm: meant,
    madeMm: made,
    errorMm: error,
    uMm: u,
    isRead,
    verdict,
    chance,
    heldAgainst,
  };
}
