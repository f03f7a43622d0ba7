import type { Wheel } from '../../index.ts';
import type { SketchSubject } from '../acts/sketch-subject.ts';
import { isSlanted } from './choose-next.ts';
import type { GearAnswer } from './page-state.ts';

/** What a sketch is drawn for: the gear at hand, as far as it is known. */
export function subjectOf(wheel: Wheel, answer: GearAnswer | undefined): SketchSubject {
  const gear = answer?.drawing.gears[0];
  return {
    kind: wheel.kind === 'internal' || wheel.kind === 'rack' ? wheel.kind : 'external',
    teeth: countOf(wheel) ?? gear?.teeth,
    outline: gear?.outline,
    tipDiameterMm: gear?.tipDiameterMm,
    rootDiameterMm: gear?.rootDiameterMm,
    baseDiameterMm: gear?.baseDiameterMm,
    isSplit: (wheel.damage ?? []).some((one) => one.kind === 'split'),
    isHelical: isSlanted(wheel),
    boreMm: lengthOf(wheel, 'shaft') ?? lengthOf(wheel, 'bore'),
    faceWidthMm: lengthOf(wheel, 'face-width'),
  };
}

function countOf(wheel: Wheel): number | undefined {
  for (const reading of wheel.readings ?? []) if (reading.of === 'teeth') return reading.count;
  return undefined;
}

function lengthOf(wheel: Wheel, of: string): number | undefined {
  for (const reading of wheel.readings ?? []) {
    if (reading.of !== of || !('mm' in reading) || reading.mm === undefined) continue;
    return typeof reading.mm === 'number' ? reading.mm : reading.mm[0];
  }
  return undefined;
}
