import type { Wheel } from '../../index.ts';
import type { Happening } from '../start/Happened.tsx';

/** The gear with what happened to it, as the person said. */
export function applyHappening(wheel: Wheel, { state, damage }: Happening): Wheel {
  const { damage: _, ...rest } = wheel;
  return damage.length === 0 ? { ...rest, state } : { ...rest, state, damage: [...damage] };
}
