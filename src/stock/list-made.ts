import { type Process, processes } from '../../gear-library/processes.ts';
import type { GearSpec } from '../involute/gear-spec.ts';
import type { Need, Roll, SpeedEffect } from './need.ts';
import { proveWheel, type WheelProof } from './prove-wheel.ts';
import { findShiftForDistance } from './shift-for-distance.ts';
import { findShiftRange } from './shift-range.ts';

/** A wheel that can be made: the original again, or the original with teeth that suit the distance as measured. */
export interface MadeRow {
  readonly kind: 'made' | 'made-to-distance';
  readonly spec: GearSpec;
  readonly proof: WheelProof | undefined;
  readonly speed: SpeedEffect | null;
  /** Ways to make teeth that fine, as keys and names */
  readonly processes: readonly { readonly key: string; readonly name: string }[];
  readonly doubts: readonly string[];
  readonly why: string;
}

/**
 * What can be made in the wheel's place: itself; and, where it does not turn at the measured distance or leaves much play
 * there, the same count with the profile shift that gives the aimed backlash at the tightest mate. External wheels
 * alone are fitted.
 */
export function listMade(need: Need, roll: Roll): MadeRow[] {
  const ways = processes.filter(({ leastModuleMm }) => need.spec.module >= leastModuleMm - 1e-9);
  const itself = proveWheel(need.spec, need.mates, roll);
  const rows: MadeRow[] = [
    {
      kind: 'made',
      spec: need.spec,
      proof: itself,
      speed: need.speedWith(need.spec.teeth),
      processes: ways.map(nameProcess),
      doubts: need.isSure ? [] : ['what the wheel was is not sure yet: make it as a trial part'],
      why: `the same teeth again${itself ? `; rolled, it ${itself.meshes.map(({ words }) => words).join('; it ')}` : '; not rolled, since no mate is known well enough'}`,
    },
  ];
  const fitted = fitToDistance(need);
  if (!fitted) return rows;
  // What turns as it is is not worth another shift for hundredths.
  const gain = Math.abs(fitted.profileShift - need.spec.profileShift);
  if (itself?.verdict === 'turns' && gain < worthShift) return rows;
  const proof = proveWheel(fitted, need.mates, roll);
  if (proof?.verdict !== 'turns') return rows;
  const row: MadeRow = {
    kind: 'made-to-distance',
    spec: fitted,
    proof,
    speed: need.speedWith(fitted.teeth),
    processes: ways.map(nameProcess),
    doubts: need.isSure ? [] : ['what the wheel was is not sure yet: make it as a trial part'],
    why: `the same count, its shift ${tellShift(fitted)} in place of ${tellShift(need.spec)} so that it suits the measured distance; rolled, it ${proof.meshes.map(({ words }) => words).join('; it ')}`,
  };
  return itself?.verdict === 'turns' ? [...rows, row] : [row, ...rows];
}

/** Without the sign of a rounded nothing. */
function tellShift({ profileShift }: GearSpec): string {
  return (Math.round(profileShift * 100) / 100 + 0).toFixed(2);
}

function nameProcess({ key, name }: Process): { key: string; name: string } {
  return { key, name };
}

/** 0.07 modules of tooth thickness. */
const worthShift = 0.1;

/** Shifts nearer than this are the same tooth to any printer: 0.02 modules of thickness. */
const sameShift = 0.03;

/** The original with another shift, or undefined where none is called for or none can be cut. */
function fitToDistance(need: Need): GearSpec | undefined {
  const { spec } = need;
  if (spec.kind !== 'external' || !need.mates.some(({ isMeasured }) => isMeasured)) return undefined;
  const fits = need.mates.map((mate) => findShiftForDistance(spec, mate));
  if (fits.some((fit) => fit === undefined)) return undefined;
  const shift = Math.min(...fits.map((fit) => fit ?? 0));
  const range = findShiftRange(spec);
  if (!range || Math.abs(shift - spec.profileShift) < sameShift) return undefined;
  const held = Math.min(range.greatest, Math.max(range.least, shift));
  if (Math.abs(held - shift) > sameShift) return undefined;
  return { ...spec, profileShift: Math.round(held * 1000) / 1000, tipDiameter: null };
}
