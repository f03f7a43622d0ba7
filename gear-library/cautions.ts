/** What can hurt a person or a machine, said where it applies. Words to show, not to soften. */
export interface Caution {
  readonly key: string;
  readonly says: string;
  /** When it is said: always, or for these processes, or these materials */
  readonly when:
    | { readonly always: true }
    | { readonly processes: readonly string[] }
    | { readonly materials: readonly string[] };
  readonly source: string;
}

const practice = 'common practice, no published source';
const filament = ['filament-0.25', 'filament-0.4', 'filament-0.6'];

export const cautions: readonly Caution[] = [
  {
    key: 'never-for',
    says: 'Never for lifting, braking, steering, vehicles, medical use, food contact, guards or interlocks.',
    when: { always: true },
    source: 'judgment: a part without a test certificate',
  },
  {
    key: 'licensed',
    says: 'Local codes and licensed practice come first: mains, gas and springs under load are for those who may.',
    when: { always: true },
    source: practice,
  },
  {
    key: 'unplug',
    says: 'Unplug the machine and let it cool before you put a hand in.',
    when: { always: true },
    source: 'a published guide to safety in electronics repair',
  },
  {
    key: 'fumes',
    says: 'A filament printer gives off fumes and fine dust: air the room, and leave it while it prints.',
    when: { processes: filament },
    source: 'guides of an institute for safety at work on 3D printing',
  },
  {
    key: 'hot-parts',
    says: 'Nozzle, bed and lamp stay hot after they stop.',
    when: { processes: filament },
    source: practice,
  },
  {
    key: 'uncured-resin',
    says: 'Uncured resin harms skin, eyes and lungs: nitrile gloves, glasses, an aired room; cure scraps before you throw them away.',
    when: { processes: ['resin'] },
    source: 'guides of an institute for safety at work on 3D printing',
  },
  {
    key: 'dust',
    says: 'Sanding, filing or drilling plastic makes dust: a mask, and wet where you can.',
    when: { processes: [...filament, 'resin', 'powder-bed', 'laser-cut'] },
    source: practice,
  },
  {
    key: 'chips',
    says: 'Ream by hand with the gear in soft jaws, never held in fingers at a drill press.',
    when: { always: true },
    source: practice,
  },
  {
    key: 'acetal-fumes',
    says: 'Hot acetal gives off formaldehyde: never burn it, and ask the laser shop whether they cut it.',
    when: { materials: ['pom'] },
    source: practice,
  },
  {
    key: 'cyanoacrylate',
    says: 'Cyanoacrylate glues skin in seconds and its fumes sting: glasses, and a window.',
    when: { always: true },
    source: practice,
  },
];
