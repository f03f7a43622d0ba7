/**
 * The calibration coupon as drawn, mm: a flat stair of three widths, the middle one with the space of a rack's teeth in
 * its upper edge, the widest with a row of holes. Ours: nothing of it follows a standard.
 */
export const couponForm = {
  /** Across, from edge to edge: small enough that an error that grows with length is told from one that doesn't */
  widths: [5, 10, 20],
  /** How far each width goes on along the stair */
  lengths: [8, 12, 26],
  /** Thick enough for jaws to stand clear of the first layers */
  height: 5,
  /** A laser cuts sheet */
  sheetHeight: 3,
  bores: [2, 3, 4, 5],
  /** Middle of each hole along the widest step, from where it starts */
  boreAt: [3, 7.5, 13.5, 20.5],
  /** A rack's tooth space: straight flanks, so that a shank rests at a height that tells how far they have moved */
  gap: { module: 1, pressureAngleDeg: 20, dedendum: 1.25, leastPin: 1.5, greatestPin: 2.3 },
} as const;

/** The width of the coupon that holds the gap. */
export const gapWidth = couponForm.widths[1];
