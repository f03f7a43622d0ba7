import type { ReactNode } from 'react';
import type { Slot } from '../state/slot.ts';
import './ActSketch.css';
import { findSketch } from './find-sketch.tsx';
import type { SketchSubject } from './sketch-subject.ts';
import { tellAct } from './tell-act.ts';

/** A line sketch of how one reading is taken, for the gear at hand; nothing for a reading that has none. */
export function ActSketch(props: { readonly slot: Slot; readonly subject: SketchSubject }): ReactNode {
  const { slot, subject } = props;
  const sketch = findSketch(slot, subject);
  if (sketch === undefined) return null;
  return (
    <svg
      className="act-sketch"
      viewBox="0 0 320 200"
      role="img"
      aria-label={`Sketch: ${tellAct(slot, subject).title}`}
    >
      {sketch}
    </svg>
  );
}
