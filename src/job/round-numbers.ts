/**
 * A value with every number in it, however deep, to so many decimals; nine are a millionth of a micrometer, a billionth of
 * a chance.
 */
export function roundNumbers<T>(value: T, decimals = 9): T {
  return round(value, 10 ** decimals) as T;
}

function round(value: unknown, scale: number): unknown {
  if (typeof value === 'number') return Math.round(value * scale) / scale;
  if (Array.isArray(value)) return value.map((one) => round(one, scale));
  if (typeof value !== 'object' || value === null) return value;
  const rounded: Record<string, unknown> = {};
  for (const [key, inner] of Object.entries(value)) rounded[key] = round(inner, scale);
  return rounded;
}
