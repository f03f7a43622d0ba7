/** Whether a piece of which there is only one is taken more than once. */
export function isTakenTwice(takes: readonly (readonly number[])[]): boolean {
  const taken = new Set<number>();
  for (const pieces of takes) {
    for (const piece of pieces) {
      if (taken.has(piece)) return true;
      taken.add(piece);
    }
  }
  return false;
}
