import type { Material } from '../../gear-library/materials.ts';
import type { Process } from '../../gear-library/processes.ts';
import type { WheelEvidence } from '../readings/wheel-evidence.ts';
import type { RolledWheel } from '../rolling/rolled-wheel.ts';
import type { RollingProof } from '../rolling/rolling-proof.ts';
import type { WheelForm } from '../solid/wheel-form.ts';
import type { ToothStrength } from '../strength/check-tooth.ts';
import type { checkHub } from './check-hub.ts';

/** Changes that make a part last, in the order in which they are made; each can be switched off by its key. */
export const changeKeys = [
  'fineness',
  'material',
  'spur-pair',
  'backlash',
  'moisture',
  'warmth',
  'tip-land',
  'root-fillet',
  'face-width',
  'weakest-link',
  'bore',
  'hub',
  'rim',
] as const;

export type ChangeKey = (typeof changeKeys)[number];

/** One change, shown whether it is made or not. */
export interface PartChange {
  readonly key: ChangeKey;
  /** What is changed, in plain words */
  readonly what: string;
  readonly from: number | string | null;
  readonly to: number | string | null;
  readonly unit: 'mm' | 'degrees' | '';
  /** The reason, with its numbers */
  readonly why: string;
  readonly isOn: boolean;
  readonly canTurnOff: boolean;
  /** Why it is not made although nobody switched it off */
  readonly withdrawn?: string;
}

/** How a wheel is to sit on its shaft. */
export type Hold = 'bond' | 'flat' | 'knurl' | 'bush' | 'press' | 'turns';

/** A wheel that meshes with the part, at the distance of their shafts. */
export interface DesignMate {
  readonly id: string;
  readonly wheel: RolledWheel;
  readonly material: Material;
  readonly isMaterialAssumed: boolean;
  readonly faceWidth: number | undefined;
  readonly center: { readonly mm: number; readonly u: number } | undefined;
  /** Whether the part drives this mate */
  readonly isDriven: boolean;
  /** Whether it is made new together with the part, as a spur wheel too */
  readonly turnsSpur: boolean;
  readonly isSacrificial: boolean;
}

/** What a part is designed from. Lengths mm, torques N mm, temperatures °C. */
export interface DesignTask {
  /** Today's plan: the old wheel as it was read */
  readonly form: WheelForm;
  readonly evidence: WheelEvidence;
  readonly oldMaterial: Material | undefined;
  readonly process: Process;
  readonly material: Material;
  /** Whether the person chose that material; else the design may choose another */
  readonly isMaterialChosen: boolean;
  readonly mates: readonly DesignMate[];
  readonly runningTorque: number | undefined;
  readonly stallTorque: number | undefined;
  readonly temperatureC: number;
  /** Why it is that warm; undefined where it is a room's */
  readonly warmBecause: string | undefined;
  readonly cycles: number;
  readonly isReversed: boolean;
  readonly isWet: boolean;
  readonly wantsSpur: boolean;
  readonly isSacrificial: boolean;
  readonly hold: Hold | undefined;
  /** How much wider the teeth may be before something is in the way */
  readonly room: number;
  readonly off: readonly ChangeKey[];
}

/** What a step may give: a change, and the form that it makes; no form where it can't be made. */
export interface Proposal {
  readonly change: Omit<PartChange, 'isOn'>;
  readonly form?: WheelForm;
}

export interface MateProof {
  readonly mate: string;
  readonly before: RollingProof;
  readonly after: RollingProof;
}

/** The part that lasts: its form, every change, and what proves it. */
export interface PartDesign {
  readonly form: WheelForm;
  readonly material: Material;
  readonly process: Process;
  readonly hold: Hold | undefined;
  readonly bushOutside: number | undefined;
  readonly changes: readonly PartChange[];
  readonly rolled: readonly MateProof[];
  /** Mates that could not be rolled, and other things that stay open */
  readonly notes: readonly string[];
  readonly strength: { readonly before: ToothStrength; readonly after: ToothStrength };
  readonly hub: ReturnType<typeof checkHub>;
}
