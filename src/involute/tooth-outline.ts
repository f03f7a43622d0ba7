/**
 * A toothing's outline in the transverse section: closed, counter-clockwise, the first point not repeated at the end.
 * Wheels stand about the origin with tooth 0 on the +x axis and repeat exactly, `perTooth` points a tooth; an
 * internal wheel's is the contour of its hole. A rack lies along x with its datum line at y = 0.
 */
export interface ToothOutline {
  /** x0, y0, x1, y1, … mm */
  readonly points: Float64Array;
  readonly perTooth: number;
}
