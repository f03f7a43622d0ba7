/** A box on the sheet, CSS pixels, y down. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export interface WantedLabel {
  readonly key: string;
  /** Where it would stand if it were alone */
  readonly box: Box;
}

export function overlap(a: Box, b: Box): boolean {
  return a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;
}

/**
 * Labels in their order of importance, each where it wants to be or as near as there is room inside the bounds; one
 * without room is left out. Nothing that is returned overlaps anything else or `taken`.
 */
export function partLabels(
  wanted: readonly WantedLabel[],
  bounds: { readonly left: number; readonly right: number; readonly top: number; readonly bottom: number },
  taken: readonly Box[],
): Map<string, Box> {
  const placed = new Map<string, Box>();
  const isFree = (box: Box): boolean =>
    !taken.some((other) => overlap(box, other)) && ![...placed.values()].some((other) => overlap(box, other));
  for (const { key, box } of wanted) {
    if (box.width > bounds.right - bounds.left || box.height > bounds.bottom - bounds.top) continue;
    const home = keepInside(box, bounds);
    const found = listMoves(box)
      .map(([dx, dy]) => keepInside({ ...home, x: home.x + dx, y: home.y + dy }, bounds))
      .find(isFree);
    if (found) placed.set(key, found);
  }
  return placed;
}

/** Moves by label heights and widths, nearest first: staying, then up and down, then aside. */
function listMoves({ width, height }: Box): [number, number][] {
  const moves: [number, number][] = [];
  for (const across of [0, -1, 1, -2, 2]) {
    for (let up = 0; up <= 12; up++) {
      const dy = (up % 2 === 0 ? 1 : -1) * Math.ceil(up / 2) * (height / 2 + 2);
      moves.push([across * (width / 2 + 4), dy]);
    }
  }
  // Aside only as a last resort: beside its line a label is still its own, before or behind it no longer.
  return moves.sort((a, b) => Math.hypot(4 * a[0], a[1]) - Math.hypot(4 * b[0], b[1]));
}

function keepInside(
  box: Box,
  bounds: { readonly left: number; readonly right: number; readonly top: number; readonly bottom: number },
): Box {
  return {
    ...box,
    x: Math.min(Math.max(box.x, bounds.left), bounds.right - box.width),
    y: Math.min(Math.max(box.y, bounds.top), bounds.bottom - box.height),
  };
}
