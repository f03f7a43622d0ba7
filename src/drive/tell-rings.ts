import type { DriveTrouble } from './drive-report.ts';
import type { PostDistance } from './list-distances.ts';

/** One trouble for the distances that don't go together, with the shortest ring that shows it. */
export function tellRings(
  wrong: readonly PostDistance[],
  distances: readonly PostDistance[],
): DriveTrouble[] {
  if (wrong.length === 0) return [];
  const posts = [...new Set(wrong.flatMap((one) => one.ends))];
  const triangle = findTriangle(distances);
  if (triangle) {
    const [long, one, other] = triangle;
    return [
      {
        kind: 'contradiction',
        about: [...new Set(triangle.flatMap((each) => each.ends))],
        message: `the distances can't all be right: ${tell(long)} is more than ${tell(one)} and ${tell(other)} together`,
        remedy: 'Measure the longest of the three again, then the others.',
      },
    ];
  }
  return [
    {
      kind: 'contradiction',
      about: posts,
      message: `the distances between ${posts.map((id) => `"${id}"`).join(', ')} can't all be right`,
      remedy: 'Measure them again, from middle to middle.',
    },
  ];
}

function tell(one: PostDistance): string {
  return `${one.mm} mm from "${one.ends[0]}" to "${one.ends[1]}"`;
}

/** Three measured distances of which one is longer than the others together, the long one first. */
function findTriangle(distances: readonly PostDistance[]): readonly PostDistance[] | undefined {
  const measured = distances.filter((one) => !one.isGuessed);
  const between = new Map(measured.map((one) => [JSON.stringify([...one.ends].sort()), one]));
  for (const long of measured) {
    const [a, b] = long.ends;
    for (const one of measured) {
      if (one === long || !one.ends.includes(a)) continue;
      const c = one.ends[0] === a ? one.ends[1] : one.ends[0];
      const other = between.get(JSON.stringify([b, c].sort()));
      if (other && long.mm > one.mm + other.mm + allowance(long)) return [long, one, other];
    }
  }
  return undefined;
}

/** What a distance may be off by: twice its uncertainty, and a hair for rounding. */
export function allowance(one: PostDistance): number {
  return 2 * one.uMm + 0.01;
}
