/** A bank card, mm: ISO/IEC 7810, size ID-1. */
export const bankCard = { longMm: 85.6, shortMm: 53.98, cornerMm: 3.18 } as const;

/** Screens from a wall's to a telephone's, in the page's own pixels. */
export const leastPixelsPerMm = 2;
export const greatestPixelsPerMm = 10;

/** CSS holds 96 pixels to be an inch: where the outline starts. */
export const usualPixelsPerMm = 96 / 25.4;

/** Held to what a screen can be. */
export function holdScale(pixelsPerMm: number): number {
  return Math.min(greatestPixelsPerMm, Math.max(leastPixelsPerMm, pixelsPerMm));
}

/** A card lies along a wide screen and stands on a narrow one, so that it fits at the largest scale. */
export function isCardStanding(roomPx: number): boolean {
  return roomPx < bankCard.longMm * 7;
}
