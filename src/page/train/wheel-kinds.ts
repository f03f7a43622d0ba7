import type { WheelKind } from '../state/edit-train.ts';

/** What can stand in a train, in the order in which machines have them. */
export const wheelKinds: readonly {
  readonly kind: WheelKind;
  readonly words: string;
  readonly trade: string;
}[] = [
  { kind: 'external', words: 'Gear', trade: 'spur or helical' },
  { kind: 'pulley', words: 'Belt wheel', trade: 'pulley' },
  { kind: 'worm', words: 'Screw', trade: 'worm' },
  { kind: 'worm-wheel', words: 'Wheel of a screw', trade: 'worm wheel' },
  { kind: 'internal', words: 'Ring, teeth inside', trade: 'internal' },
  { kind: 'rack', words: 'Straight bar', trade: 'rack' },
  { kind: 'other', words: 'Something else', trade: 'cone, crown, ratchet' },
];

/** What a kind is called in a sentence. */
export function nameKind(kind: WheelKind | undefined): string {
  const found = wheelKinds.find((one) => one.kind === kind) ?? wheelKinds[0];
  return kind === 'other' || kind === 'bevel' || kind === 'crown' || kind === 'ratchet'
    ? 'something else than a gear'
    : `a ${found.words.charAt(0).toLowerCase()}${found.words.slice(1)}`;
}
