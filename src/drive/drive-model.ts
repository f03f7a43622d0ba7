import type { GearSpec } from '../involute/gear-spec.ts';

/** Shafts, wheels and meshes of one machine, as the rooms that reckon with them need them. Lengths mm. */
export interface DriveModel {
  readonly wheels: readonly DriveWheel[];
  readonly meshes: readonly DriveMesh[];
  /** Shafts held still */
  readonly fixed: readonly string[];
  readonly motor: DriveMotor | undefined;
  readonly wanted: DriveWish | undefined;
  /** What of the job was left aside, in words */
  readonly notes: readonly string[];
}

export type DriveWheelKind =
  | 'external'
  | 'internal'
  | 'rack'
  | 'worm'
  | 'worm-wheel'
  | 'pulley'
  | 'bevel'
  | 'crown'
  | 'ratchet'
  | 'other';

export interface DriveWheel {
  readonly id: string;
  readonly name: string | undefined;
  readonly kind: DriveWheelKind;
  /** What turns together. A rack's slides */
  readonly shaft: string;
  /** Wheels of one part are one piece */
  readonly part: string | undefined;
  /** What the shaft turns on: loose gears on one pin share it */
  readonly post: string | undefined;
  /** Teeth, or a worm's starts; undefined where nobody knows them yet. Of a rack they don't count */
  readonly teeth: number | undefined;
  /** Of a pulley: the diameter the belt runs on */
  readonly diameterMm: number | undefined;
  /** Of a toothed belt's pulley */
  readonly pitchMm: number | undefined;
  /** The toothing, where it is known well enough to be rolled */
  readonly spec: GearSpec | undefined;
  /** Where teeth and spec come from */
  readonly knownFrom: 'spec' | 'identified' | 'counted' | 'nothing';
  readonly isLost: boolean;
  /** Of a worm */
  readonly worm: WormForm | undefined;
  /** This piece, beside what it was made to be */
  readonly tipWearMm: number;
  readonly missing: readonly number[];
  readonly runoutMm: number;
  /** What is wrong with it or still open, as what follows its name in a sentence */
  readonly notes: readonly string[];
}

export interface WormForm {
  readonly moduleMm: number | undefined;
  readonly moduleIn: 'axial' | 'normal';
  readonly referenceDiameterMm: number | undefined;
}

export interface DriveMesh {
  readonly kind: 'teeth' | 'worm' | 'belt';
  /** Ids of wheels of the model */
  readonly driver: string;
  readonly driven: string;
  readonly center: { readonly mm: number; readonly uMm: number } | undefined;
  /** The shaft that carries both axes round */
  readonly carrier: string | undefined;
  readonly isCrossed: boolean;
  readonly slipPercent: number;
}

export interface DriveMotor {
  readonly shaft: string | undefined;
  readonly rpm: number | undefined;
  /** Torque at standstill, and at `rpm` */
  readonly stallTorqueNmm: number | undefined;
  readonly torqueNmm: number | undefined;
}

export interface DriveWish {
  readonly from: string | undefined;
  /** A shaft, or a rack */
  readonly to: string | undefined;
  /** Input speed over output speed */
  readonly ratio: number | undefined;
  readonly travelMmPerTurn: number | undefined;
  readonly tolerancePercent: number | undefined;
  readonly direction: 'same' | 'opposite' | undefined;
}
