import { driveLimits } from '../../gear-library/drive-limits.ts';
import { rollingLimits } from '../../gear-library/rolling-limits.ts';
import { findBasePitch } from '../involute/base-pitch.ts';
import { findDiameters } from '../involute/gear-diameters.ts';
import type { GearSpec } from '../involute/gear-spec.ts';
import type { RolledWheel } from '../rolling/rolled-wheel.ts';
import type { RollingProof } from '../rolling/rolling-proof.ts';
import type { DriveMesh, DriveWheel } from './drive-model.ts';
import type { DriveTrouble, MeshReport } from './drive-report.ts';
import { tellReason } from './tell-reason.ts';

/** Rolls two outlines against each other at a distance and its uncertainty, mm; or says why a wheel has no outline. */
export type RollPair = (
  driver: RolledWheel,
  driven: RolledWheel,
  at: { readonly mm: number; readonly u: number },
) => RollingProof | NoOutline;

export interface NoOutline {
  readonly verdict: 'no-outline';
  readonly message: string;
  readonly remedy: string;
}

export interface CheckedMesh {
  readonly report: MeshReport;
  readonly troubles: readonly DriveTrouble[];
}

/**
 * A tooth mesh looked at before it is rolled (can they meet at that distance, do pitches and helices go together),
 * then rolled where both toothings and the distance are known.
 */
export function checkPair(
  mesh: DriveMesh,
  driver: DriveWheel,
  driven: DriveWheel,
  roll: RollPair | undefined,
): CheckedMesh {
  const notes = [driver, driven].flatMap((wheel) => wheel.notes.map((note) => `"${wheel.id}" ${note}`));
  const troubles = checkCounts(mesh, driver, driven);
  const blank = (verdict: MeshReport['verdict'] = null): CheckedMesh => ({
    report: { ...emptyReport(mesh, notes), verdict },
    troubles,
  });
  if (troubles.length > 0) return blank();
  const odd = [driver, driven].filter((wheel) => !isRollable(wheel));
  if (odd.length > 0) {
    notes.push(`not rolled: ${odd.map((wheel) => `"${wheel.id}" is ${nameKind(wheel)}`).join(' and ')}`);
    return blank();
  }
  const { spec: one } = driver;
  const { spec: other } = driven;
  if (!one || !other) {
    const open = [driver, driven].filter((wheel) => !wheel.spec).map((wheel) => `"${wheel.id}"`);
    notes.push(`not rolled: the toothing of ${open.join(' and ')} isn't known well enough yet`);
    return blank();
  }
  troubles.push(...checkHelices(driver, one, driven, other));
  if (troubles.length > 0) return blank('jams');
  tellPitches(one, other, notes);
  if (!mesh.center) {
    notes.push('not rolled: the distance between the shafts is missing');
    return blank();
  }
  const { mm, uMm } = mesh.center;
  const reach = checkReach(mesh, mm, uMm, one, other);
  if (reach && !reach.isJam) {
    troubles.push(reach.trouble);
    return blank();
  }
  if (!roll) {
    notes.push('not rolled yet');
    if (reach) troubles.push(reach.trouble);
    return blank(reach ? 'jams' : null);
  }
  // The proof rules: a worn tip may clear what the whole one can't.
  const proof = roll(asRolled(driver, one), asRolled(driven, other), { mm, u: uMm });
  if (proof.verdict === 'no-outline') {
    const { message, remedy } = proof;
    troubles.push({ kind: 'cannot-mesh', about: [mesh.driver, mesh.driven], message, remedy });
    return blank();
  }
  if (reach && proof.verdict === 'jams') troubles.push(reach.trouble);
  return { report: reportProof(mesh, proof, notes), troubles };
}

/** A mesh of which nothing was rolled. */
export function emptyReport(mesh: DriveMesh, notes: readonly string[]): MeshReport {
  return {
    kind: mesh.kind,
    driver: mesh.driver,
    driven: mesh.driven,
    centerMm: mesh.center?.mm ?? null,
    workingPressureAngleDeg: null,
    contactRatio: null,
    verdict: null,
    backlashMinMm: null,
    backlashMaxMm: null,
    transmissionErrorMm: null,
    centerUMm: mesh.center?.uMm ?? null,
    range: null,
    freeFromMm: null,
    smoothFromMm: null,
    notes,
  };
}

/** Counts and a distance that no listed module fills. */
function checkCounts(mesh: DriveMesh, driver: DriveWheel, driven: DriveWheel): DriveTrouble[] {
  const inward = [driver, driven].find((wheel) => wheel.kind === 'internal');
  const [z1, z2] = [driver.teeth, driven.teeth];
  const isFlat = driver.kind === 'rack' || driven.kind === 'rack';
  if (z1 === undefined || z2 === undefined || isFlat) return [];
  const about = [driver.id, driven.id];
  if (inward) {
    const [ring, within] = inward === driver ? [z1, z2] : [z2, z1];
    if (ring <= within) {
      return [
        {
          kind: 'cannot-mesh',
          about,
          message: `a ring of ${ring} teeth can't hold a wheel of ${within}`,
          remedy: 'Count both again, or correct which of them is the ring.',
        },
      ];
    }
  }
  if (!mesh.center || !isRollable(driver) || !isRollable(driven)) return [];
  const teeth = inward ? Math.abs(z2 - z1) : z1 + z2;
  const module = (2 * mesh.center.mm) / teeth;
  const { finestModule, coarsestModule } = driveLimits;
  if (module >= finestModule.mm / 2 && module <= coarsestModule.mm * 2) return [];
  return [
    {
      kind: 'cannot-mesh',
      about,
      message:
        `${z1} and ${z2} teeth at ${tell(mesh.center.mm)} mm would be of module ${tell(module)}, ` +
        `${module < 1 ? 'finer' : 'coarser'} than any listed (${finestModule.mm} to ${coarsestModule.mm})`,
      remedy: 'Measure the distance between the shafts again, in mm, from middle to middle.',
    },
  ];
}

/** Helices that can't lie along each other, by the limit that rolling has. */
function checkHelices(
  driver: DriveWheel,
  one: GearSpec,
  driven: DriveWheel,
  other: GearSpec,
): DriveTrouble[] {
  const isRing = one.kind === 'internal' || other.kind === 'internal';
  const [first, second] = [one, other].map(findBaseHelix);
  const apart = Math.abs(isRing ? first - second : first + second);
  if (apart <= rollingLimits.helix.most) return [];
  const isHand = Math.abs(isRing ? first + second : first - second) <= rollingLimits.helix.most;
  return [
    {
      kind: 'cannot-mesh',
      about: [driver.id, driven.id],
      message: isHand
        ? `the helices of "${driver.id}" and "${driven.id}" are of ${isRing ? 'opposite hands' : 'one hand'}, so they don't run on parallel shafts`
        : `the helices of "${driver.id}" and "${driven.id}" stand ${tell((apart * 180) / Math.PI)} degrees apart`,
      remedy: isRing
        ? 'With a ring both are of one hand; look which way each leans.'
        : 'On parallel shafts one is right hand and the other left; look which way each leans.',
    },
  ];
}

function findBaseHelix({ helixAngle, pressureAngle }: GearSpec): number {
  return Math.asin(Math.sin(helixAngle) * Math.cos(pressureAngle));
}

function tellPitches(one: GearSpec, other: GearSpec, notes: string[]): void {
  const apart = findBasePitch(other) / findBasePitch(one) - 1;
  if (Math.abs(apart) <= driveLimits.samePitch.part) return;
  notes.push(
    `the driven wheel's teeth stand ${tell(Math.abs(100 * apart))} % ${apart > 0 ? 'wider' : 'closer'} ` +
      "than the driver's (base pitch)",
  );
}

/** Too near for any position, or too far to touch, whatever the distance within twice its uncertainty. */
function checkReach(
  mesh: DriveMesh,
  mm: number,
  uMm: number,
  one: GearSpec,
  other: GearSpec,
): { readonly trouble: DriveTrouble; readonly isJam: boolean } | undefined {
  const { least, greatest } = findReach(one, other);
  const isNear = mm + 2 * uMm < least;
  if (!isNear && mm - 2 * uMm <= greatest) return undefined;
  const isRing = one.kind === 'internal' || other.kind === 'internal';
  // With a ring, a smaller distance draws the teeth apart.
  const isJam = isNear !== isRing;
  return {
    isJam,
    trouble: {
      kind: 'cannot-mesh',
      about: [mesh.driver, mesh.driven],
      message: isJam
        ? `at ${tell(mm)} mm the tips of "${mesh.driver}" and "${mesh.driven}" run into the bottoms of each other's gaps: ` +
          `${isRing ? `${tell(greatest)} mm at most` : `${tell(least)} mm at least`}`
        : `at ${tell(mm)} mm "${mesh.driver}" and "${mesh.driven}" don't reach each other: ` +
          `${isRing ? `${tell(least)} mm at least` : `${tell(greatest)} mm at most`}`,
      remedy:
        'Measure the distance between the shafts again; else one of the two is another wheel than it is taken for.',
    },
  };
}

/** Distances between which tips reach each other and clear the roots, mm. */
function findReach(one: GearSpec, other: GearSpec): { readonly least: number; readonly greatest: number } {
  const rack = one.kind === 'rack' ? one : other.kind === 'rack' ? other : undefined;
  const ring = one.kind === 'internal' ? one : other.kind === 'internal' ? other : undefined;
  const wheel = one === rack || one === ring ? other : one;
  const round = findDiameters(wheel);
  if (rack) {
    const [addendum, dedendum] = [rack.addendum * rack.module, rack.dedendum * rack.module];
    return {
      least: Math.max(round.tip / 2 - dedendum, round.root / 2 + addendum),
      greatest: round.tip / 2 + addendum,
    };
  }
  const far = findDiameters(ring ?? other);
  if (ring) {
    return {
      least: (far.tip - round.tip) / 2,
      greatest: Math.min(far.root - round.tip, far.tip - round.root) / 2,
    };
  }
  return {
    least: Math.max(round.root + far.tip, round.tip + far.root) / 2,
    greatest: (round.tip + far.tip) / 2,
  };
}

function asRolled(wheel: DriveWheel, spec: GearSpec): RolledWheel {
  return { spec, tipWear: wheel.tipWearMm, missing: wheel.missing, runout: wheel.runoutMm };
}

function reportProof(mesh: DriveMesh, proof: RollingProof, notes: readonly string[]): MeshReport {
  const { mean, range } = proof;
  const angle = mean.workingPressureAngle;
  const distances = range.map((one) => one.centerDistance);
  return {
    ...emptyReport(mesh, [...notes, ...proof.reasons.map((reason) => tellReason(reason, proof))]),
    workingPressureAngleDeg: angle === undefined ? null : (angle * 180) / Math.PI,
    contactRatio: finite(mean.contactRatio),
    verdict: proof.verdict,
    backlashMinMm: finite(mean.backlashLeast),
    backlashMaxMm: finite(mean.backlashGreatest),
    transmissionErrorMm: finite(mean.transmissionError),
    range: {
      centerLeastMm: Math.min(...distances),
      centerGreatestMm: Math.max(...distances),
      backlashMinMm: finite(Math.min(...range.map((one) => one.backlashLeast))),
      backlashMaxMm: finite(Math.max(...range.map((one) => one.backlashGreatest))),
      transmissionErrorMm: finite(Math.max(...range.map((one) => one.transmissionError))),
    },
    freeFromMm: proof.freeFrom ?? null,
    smoothFromMm: proof.smoothFrom ?? null,
  };
}

/** Null where no tooth holds the wheel, so that play and unevenness have no end. */
function finite(value: number): number | null {
  return Number.isFinite(value) ? value : null;
}

function isRollable({ kind }: DriveWheel): boolean {
  return kind === 'external' || kind === 'internal' || kind === 'rack';
}

function nameKind({ kind }: DriveWheel): string {
  if (kind === 'other') return 'of another kind';
  return `a ${kind === 'worm-wheel' ? 'worm wheel' : kind === 'bevel' || kind === 'crown' ? `${kind} wheel` : kind}`;
}

function tell(value: number): string {
  return String(Number(value.toPrecision(4)));
}
