import { driveLimits } from '../../gear-library/drive-limits.ts';
import { findBasePitch } from '../involute/base-pitch.ts';
import type { GearSpec } from '../involute/gear-spec.ts';
import type { RolledWheel } from '../rolling/rolled-wheel.ts';
import type { RollingProof } from '../rolling/rolling-proof.ts';
import { checkHelices } from './check-helices.ts';
import { checkReach } from './check-reach.ts';
import type { DriveMesh, DriveWheel } from './drive-model.ts';
import type { DriveTrouble, MeshReport } from './drive-report.ts';
import { emptyReport, reportProof } from './report-mesh.ts';

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
  if (reach?.isFar) {
    troubles.push(reach.trouble);
    return blank('jams');
  }
  // The proof rules: a worn tip may clear what the whole one can't.
  const isLong = countMeetings(driver, driven) > mostMeetings;
  if (isLong)
    notes.push('rolled with all teeth alike: with missing teeth or runout the cycle would be too long');
  const asFound = (wheel: DriveWheel, spec: GearSpec): RolledWheel =>
    isLong
      ? { spec, tipWear: wheel.tipWearMm }
      : { spec, tipWear: wheel.tipWearMm, missing: wheel.missing, runout: wheel.runoutMm };
  const proof = roll(asFound(driver, one), asFound(driven, other), { mm, u: uMm });
  if (proof.verdict === 'no-outline') {
    const { message, remedy } = proof;
    troubles.push({ kind: 'cannot-mesh', about: [mesh.driver, mesh.driven], message, remedy });
    return blank();
  }
  if (reach && proof.verdict === 'jams') troubles.push(reach.trouble);
  return { report: reportProof(mesh, proof, notes), troubles };
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

function tellPitches(one: GearSpec, other: GearSpec, notes: string[]): void {
  const apart = findBasePitch(other) / findBasePitch(one) - 1;
  if (Math.abs(apart) <= driveLimits.samePitch.part) return;
  notes.push(
    `the driven wheel's teeth stand ${tell(Math.abs(100 * apart))} % ${apart > 0 ? 'wider' : 'closer'} ` +
      "than the driver's (base pitch)",
  );
}

/** Meetings of different teeth in one cycle; 1 where all are alike. */
function countMeetings(driver: DriveWheel, driven: DriveWheel): number {
  const [z1, z2] = [driver.spec?.teeth ?? 1, driven.spec?.teeth ?? 1];
  const areAlike = [driver, driven].every((wheel) => wheel.missing.length === 0 && wheel.runoutMm === 0);
  let [a, b] = [z1, z2];
  while (b > 0) [a, b] = [b, a % b];
  return areAlike ? 1 : (z1 / a) * z2;
}

/** 9,797 of them (97 and 101 teeth, one running out) took 5 s on a busy machine of two cores. */
const mostMeetings = 20_000;

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
