/** A length as sheets have it: three decimals, so that no limit of a micrometer is lost. */
export function formatMm(length: number): string {
  return (Math.round(length * 1000) / 1000 + 0).toFixed(3);
}
