/**
 * What is stored, with the changes that one window made to what it knew: fields it changed or added are put in,
 * fields it took out go, and all others stay as another window may have stored them since.
 *
 * @example mergeChanges({ a: 1, b: 2 }, { a: 1 }, { a: 3 }) = { a: 3, b: 2 }
 */
export function mergeChanges<T>(
  stored: Readonly<Record<string, T>>,
  before: Readonly<Record<string, T>>,
  after: Readonly<Record<string, T>>,
): Record<string, T> {
  const merged = new Map(Object.entries(stored));
  for (const key of Object.keys(before)) if (!Object.hasOwn(after, key)) merged.delete(key);
  for (const [key, value] of Object.entries(after)) {
    if (!Object.hasOwn(before, key) || !Object.is(before[key], value)) merged.set(key, value);
  }
  return Object.fromEntries(merged);
}
