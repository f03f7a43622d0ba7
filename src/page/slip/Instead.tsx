import './next-act.css';
import type { ReactNode } from 'react';
import { type Slot, slotKey } from '../state/slot.ts';
import { nameAct } from '../words/name-act.ts';

/** Other acts than the one proposed, as a list to open; nothing where there are none. */
export function Instead(props: {
  readonly slots: readonly Slot[];
  readonly most: number;
  readonly onOpen: (slot: Slot) => void;
}): ReactNode {
  const { slots, most, onOpen } = props;
  if (slots.length === 0) return null;
  return (
    <details className="next-act-how">
      <summary>Something else instead</summary>
      <ul className="next-act-others">
        {slots.slice(0, most).map((slot) => (
          <li key={slotKey(slot)}>
            <button type="button" className="plain" onClick={() => onOpen(slot)}>
              {nameAct(slot)}
            </button>
          </li>
        ))}
      </ul>
    </details>
  );
}
