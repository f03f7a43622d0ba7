/** A value with every number in it, however deep, to nine decimals: a millionth of a micrometer, a billionth of a chance. */
export function roundNumbers<T>(value: T): T {
  return round(value) as T;
}

function round(value: unknown): unknown {
  if (typeof value === 'number') return Math.round(value * 1e9) / 1e9;
  if (Array.isArray(value)) return value.map(round);
  if (typeof value !== 'object' || value === null) return value;
  const rounded: Record<string, unknown> = {};
  for (const [key, inner] of Object.entries(value)) rounded[key] = round(inner);
  return rounded;
}
