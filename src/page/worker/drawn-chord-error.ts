/** mm: a screen shows a fiftieth of a pixel of this at the largest scale; a drawing needs no more. */
export const drawnChordError = 0.002;
