/** A plain number as a person types it, with point or comma; undefined where it is none. */
export function readNumber(text: string): number | undefined {
  const plain = text.trim().replace(',', '.');
  if (!/^[+-]?(\d+\.?\d*|\.\d+)$/.test(plain)) return undefined;
  return Number(plain);
}
