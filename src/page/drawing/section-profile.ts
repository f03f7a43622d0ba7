import type { DrawnGear, Wheel } from '../../index.ts';
import { readLength } from '../state/read-length.ts';
import { traceRack } from './trace-path.ts';

/**
 * What the view beside the front view shows, mm: the axis along x, the left face at 0, the hub to the right. What
 * nobody has measured has a size to be drawn at and is marked as not known.
 */
export interface Section {
  /** Outermost radius: the tips, or an internal gear's ring */
  readonly radius: number;
  readonly tipRadius: number;
  readonly rootRadius: number;
  readonly faceWidth: number;
  readonly isFaceKnown: boolean;
  readonly hubRadius?: number | undefined;
  /** From the left face to the end of the hub; the face width where there is no hub */
  readonly length: number;
  readonly isLengthKnown: boolean;
  /** The shaft's diameter where it was measured, else the hole's */
  readonly boreDiameter?: number | undefined;
}

export function findSection(wheel: Wheel, gear: DrawnGear, kind: 'external' | 'internal' | 'rack'): Section {
  const face = readLength(wheel, { of: 'face-width' });
  const overall = readLength(wheel, { of: 'overall-length' });
  const hub = kind === 'external' ? readLength(wheel, { of: 'hub-diameter' }) : undefined;
  const bore =
    kind === 'external'
      ? (readLength(wheel, { of: 'shaft' }) ?? readLength(wheel, { of: 'bore' }))
      : undefined;
  const isRack = kind === 'rack';
  const piece = isRack ? traceRack(gear) : undefined;
  const tipRadius = piece ? piece.tip : gear.tipDiameterMm / 2;
  const rootRadius = piece ? piece.root : gear.rootDiameterMm / 2;
  const radius =
    kind === 'internal' ? rootRadius + 1.5 * gear.moduleMm : isRack ? (piece?.tip ?? 0) : tipRadius;
  const faceWidth = face ?? Math.min(8 * gear.moduleMm, isRack ? 8 * gear.moduleMm : 0.6 * tipRadius);
  const hasHub = hub !== undefined && hub / 2 < rootRadius;
  const isLonger = overall !== undefined && overall > faceWidth;
  return {
    radius,
    tipRadius,
    rootRadius,
    faceWidth,
    isFaceKnown: face !== undefined,
    hubRadius: hasHub ? hub / 2 : undefined,
    length: isLonger ? overall : hasHub ? faceWidth * 1.5 : faceWidth,
    isLengthKnown: isLonger,
    boreDiameter: bore !== undefined && bore / 2 < rootRadius ? bore : undefined,
  };
}
