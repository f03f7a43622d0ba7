export type DamageKind = 'split' | 'teeth-missing' | 'worn' | 'swollen' | 'crumbling';

/** What happened to a gear, as the job file has it; what isn't known is left out. */
export interface Happening {
  readonly state: 'damaged' | 'sound' | 'lost';
  readonly damage: readonly {
    readonly kind: DamageKind;
    readonly count?: number;
    /** At the rim, as it lies, mm */
    readonly gapMm?: number;
  }[];
}

export const damageWords: readonly {
  readonly kind: DamageKind;
  readonly word: string;
  readonly more: string;
}[] = [
  { kind: 'split', word: 'Split', more: 'a crack from the hole to the rim' },
  { kind: 'teeth-missing', word: 'Teeth gone', more: 'broken off or stripped' },
  { kind: 'worn', word: 'Worn', more: 'tips rounded or thin' },
  { kind: 'swollen', word: 'Swollen', more: 'grown with oil or age, runs tight' },
  { kind: 'crumbling', word: 'Crumbling', more: 'sticky, or falling to bits' },
];
