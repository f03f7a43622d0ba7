/** What is known so far of the gear that an act is told and drawn for. Lengths mm. */
export interface SketchSubject {
  readonly kind: 'external' | 'internal' | 'rack';
  readonly teeth?: number | undefined;
  /** The leading answer's outline: x0, y0, … as the core traces it, tooth 0 on +x */
  readonly outline?: Float64Array | undefined;
  readonly tipDiameterMm?: number | undefined;
  readonly rootDiameterMm?: number | undefined;
  readonly baseDiameterMm?: number | undefined;
  readonly isSplit: boolean;
  readonly isHelical: boolean;
  readonly boreMm?: number | undefined;
  readonly faceWidthMm?: number | undefined;
}

/** Below this a gear can't be held and measured by the same two hands (common practice, no published source). */
const smallMm = 10;

/** The gear is so small that it is stood on a stick in putty. */
export function isSmall(subject: SketchSubject): boolean {
  return (
    subject.kind === 'external' && subject.tipDiameterMm !== undefined && subject.tipDiameterMm < smallMm
  );
}

/** No tooth stands straight opposite another. An unknown count is taken as even. */
export function isOdd(subject: SketchSubject): boolean {
  return subject.teeth !== undefined && subject.teeth % 2 === 1;
}
