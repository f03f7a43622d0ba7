/** Outlines of gears of one size with several tooth counts: what is drawn before anything is known. */
export interface UnsharpGear {
  readonly path: string;
  readonly share: number;
}

/** Radius of the tips, of any unit; the drawing of nothing yet has no scale. */
export const unsharpRadius = 100;

const counts: readonly { readonly teeth: number; readonly share: number }[] = [
  { teeth: 18, share: 0.9 },
  { teeth: 20, share: 0.6 },
  { teeth: 23, share: 0.4 },
  { teeth: 26, share: 0.25 },
];

/** Sketched teeth with straight flanks and broken corners: a gear, but none in particular. */
export function traceUnsharp(kind: 'external' | 'internal' | 'rack'): UnsharpGear[] {
  return counts.map(({ teeth, share }) => ({ path: traceTeeth(teeth, kind), share }));
}

function traceTeeth(teeth: number, kind: 'external' | 'internal' | 'rack'): string {
  const isRack = kind === 'rack';
  const size = (2 * unsharpRadius) / (teeth + 2);
  const tip = kind === 'internal' ? unsharpRadius - 4 * size : unsharpRadius;
  const root = kind === 'internal' ? tip + 2.2 * size : tip - 2.2 * size;
  const pitch = (2 * Math.PI) / teeth;
  // A tooth's corners as parts of a pitch from its middle, and how far up from the bottom to the tip.
  const corners: readonly (readonly [number, number])[] = [
    [-0.34, 0],
    [-0.29, 0.08],
    [-0.15, 0.9],
    [-0.11, 1],
    [0.11, 1],
    [0.15, 0.9],
    [0.29, 0.08],
    [0.34, 0],
  ];
  let path = '';
  // Shown as long as the round ones are wide.
  const shown = isRack ? Math.floor(teeth / 2.6) : teeth;
  for (let tooth = 0; tooth < shown; tooth++) {
    for (const [part, up] of corners) {
      const letter = path === '' ? 'M' : 'L';
      if (isRack) {
        const length = (2 * unsharpRadius) / shown;
        const x = -unsharpRadius + (tooth + 0.5 + part) * length;
        path += `${letter}${x.toFixed(2)} ${((up - 0.5) * 0.7 * length).toFixed(2)}`;
        continue;
      }
      const angle = (tooth + part) * pitch;
      const radius = root + (tip - root) * up;
      path += `${letter}${(radius * Math.cos(angle)).toFixed(2)} ${(radius * Math.sin(angle)).toFixed(2)}`;
    }
  }
  return isRack ? path : `${path}Z`;
}
