import { kindOf, type Wheel } from '../../index.ts';
import type { SketchSubject } from '../acts/sketch-subject.ts';
import { isSlanted } from './choose-next.ts';
import { isSplit } from './is-split.ts';
import type { GearAnswer } from './page-state.ts';
import { readLength } from './read-length.ts';

/** What a sketch is drawn for: the gear at hand, as far as it is known. */
export function subjectOf(wheel: Wheel, answer: Pick<GearAnswer, 'drawing'> | undefined): SketchSubject {
  const gear = answer?.drawing.gears[0];
  return {
    kind: kindOf(wheel),
    teeth: countOf(wheel) ?? gear?.teeth,
    outline: gear?.outline,
    tipDiameterMm: gear?.tipDiameterMm,
    rootDiameterMm: gear?.rootDiameterMm,
    baseDiameterMm: gear?.baseDiameterMm,
    isSplit: isSplit(wheel),
    isHelical: isSlanted(wheel),
    boreMm: readLength(wheel, { of: 'shaft' }) ?? readLength(wheel, { of: 'bore' }),
    faceWidthMm: readLength(wheel, { of: 'face-width' }),
  };
}

function countOf(wheel: Wheel): number | undefined {
  for (const reading of wheel.readings ?? []) if (reading.of === 'teeth') return reading.count;
  return undefined;
}
