/** A length as the person reads it: mm to the hundredth, inches to the ten-thousandth. */
export function formatLength(mm: number, unit: 'mm' | 'in'): string {
  return unit === 'mm' ? mm.toFixed(2) : (mm / 25.4).toFixed(4);
}
