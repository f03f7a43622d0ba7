/**
 * Where the edges of the tips stand when a gear is seen from the side: offsets from its axis, within ±`half`, by
 * projecting the tips of the near half. Edges closer together than 3 are left out.
 */
export function listToothEdges(teeth: number, half: number): number[] {
  const land = Math.min(0.25, 0.35 / (teeth / 10)) * (Math.PI / teeth) * 2;
  const edges: number[] = [];
  for (let i = 0; i < teeth; i++) {
    const middle = (2 * Math.PI * (i + 0.5)) / teeth;
    for (const angle of [middle - land, middle + land]) {
      if (Math.sin(angle) > 0) edges.push(half * Math.cos(angle));
    }
  }
  edges.sort((a, b) => a - b);
  const kept: number[] = [];
  for (const edge of edges) {
    if (Math.abs(Math.abs(edge) - half) < 2) continue;
    if (kept.length === 0 || edge - kept[kept.length - 1] >= 3) kept.push(edge);
  }
  return kept;
}
