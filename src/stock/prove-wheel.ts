import { tellReason } from '../drive/tell-reason.ts';
import { Fail } from '../fail.ts';
import type { GearSpec } from '../involute/gear-spec.ts';
import type { RollingProof } from '../rolling/rolling-proof.ts';
import type { NeedMate, Roll } from './need.ts';

export type Verdict = RollingProof['verdict'];

/** A wheel rolled against one mate: what a row shows of it. Lengths mm. */
export interface MeshProof {
  readonly mateId: string;
  readonly isDriver: boolean;
  readonly centerMm: number;
  readonly uMm: number;
  readonly isMeasured: boolean;
  readonly verdict: Verdict;
  readonly backlashMinMm: number;
  readonly backlashMaxMm: number;
  readonly transmissionErrorMm: number;
  readonly contactRatio: number;
  readonly workingPressureAngleDeg: number | null;
  /** The distance from which it turns, where that lies beyond the measured one */
  readonly freeFromMm: number | null;
  readonly smoothFromMm: number | null;
  readonly reasons: RollingProof['reasons'];
  readonly words: string;
}

export interface WheelProof {
  /** The worst of all meshes */
  readonly verdict: Verdict;
  readonly meshes: readonly MeshProof[];
}

/** A wheel rolled against each of its mates, at their distances with their uncertainty; undefined without a mate. */
export function proveWheel(spec: GearSpec, mates: readonly NeedMate[], roll: Roll): WheelProof | undefined {
  if (mates.length === 0) return undefined;
  const meshes = mates.map((mate) => proveMesh(spec, mate, roll));
  const worst = meshes.reduce((a, b) => (ranks[b.verdict] > ranks[a.verdict] ? b : a));
  return { verdict: worst.verdict, meshes };
}

const ranks: Readonly<Record<Verdict, number>> = { turns: 0, rough: 1, jams: 2 };

function proveMesh(spec: GearSpec, mate: NeedMate, roll: Roll): MeshProof {
  const distance = { mm: mate.centerDistance, u: mate.uncertainty };
  const base = {
    mateId: mate.id,
    isDriver: mate.isDriver,
    centerMm: mate.centerDistance,
    uMm: mate.uncertainty,
    isMeasured: mate.isMeasured,
  };
  let proof: RollingProof;
  try {
    proof = mate.isDriver ? roll(mate.wheel, { spec }, distance) : roll({ spec }, mate.wheel, distance);
  } catch (error) {
    // A mate whose outline can't exist (its spec says so) proves nothing for the part.
    if (!(error instanceof Fail)) throw error;
    return {
      ...base,
      verdict: 'jams',
      backlashMinMm: 0,
      backlashMaxMm: 0,
      transmissionErrorMm: 0,
      contactRatio: 0,
      workingPressureAngleDeg: null,
      freeFromMm: null,
      smoothFromMm: null,
      reasons: [],
      words: `can't be rolled: ${error.message}`,
    };
  }
  const { mean } = proof;
  const mesh = {
    ...base,
    verdict: proof.verdict,
    backlashMinMm: mean.backlashLeast,
    backlashMaxMm: mean.backlashGreatest,
    transmissionErrorMm: mean.transmissionError,
    contactRatio: mean.contactRatio,
    workingPressureAngleDeg:
      mean.workingPressureAngle === undefined ? null : (mean.workingPressureAngle * 180) / Math.PI,
    freeFromMm: proof.freeFrom ?? null,
    smoothFromMm: proof.smoothFrom ?? null,
    reasons: proof.reasons,
  };
  return { ...mesh, words: tellMesh(mesh, proof) };
}

function tellMesh(mesh: Omit<MeshProof, 'words'>, proof: RollingProof): string {
  const at = `at ${mesh.centerMm.toFixed(2)} mm${mesh.isMeasured ? '' : ' (by the numbers, not measured)'} with ${mesh.mateId}`;
  const least = mesh.backlashMinMm.toFixed(2);
  const most = mesh.backlashMaxMm.toFixed(2);
  const play = `${least === most ? least : `${least} to ${most}`} mm of play`;
  const uneven = `unevenness ${mesh.transmissionErrorMm.toFixed(3)} mm`;
  switch (mesh.verdict) {
    case 'turns':
      return `turns ${at}: ${play}, ${uneven}`;
    case 'rough':
      return `runs roughly ${at}: ${mesh.reasons.map((reason) => tellReason(reason, proof)).join('; ')}`;
    case 'jams':
      return mesh.freeFromMm === null
        ? `jams ${at}, and wherever within its give or take the shafts may be`
        : `jams ${at}; it would be free from ${mesh.freeFromMm.toFixed(2)} mm on`;
  }
}
