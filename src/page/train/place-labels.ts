/** A place that a label points at, px. */
export interface LabelledPoint {
  readonly id: string;
  readonly x: number;
  readonly y: number;
}

export interface PlacedLabel {
  readonly id: string;
  readonly box: { readonly x: number; readonly y: number; readonly width: number; readonly height: number };
  /** From the label to the point */
  readonly leader: readonly [number, number, number, number];
}

const labelHeight = 48;
const gap = 4;

/** How wide a label may be, and how much of the sheet's edges the labels take, px. */
export function labelRoom(
  width: number,
  inRows: boolean,
): { readonly label: number; readonly x: number; readonly y: number } {
  if (!inRows) return { label: 168, x: 192, y: 24 };
  const inARow = Math.max(3, Math.floor((width - 16) / 168));
  return { label: Math.floor((width - 16) / inARow) - gap, x: 8, y: labelHeight + 12 };
}

/**
 * Labels at the edges of the sheet with a line to what they name, so that none lies over a gear: in two columns or in two
 * rows. Points that no room is left for get none.
 */
export function placeLabels(
  points: readonly LabelledPoint[],
  sheet: { readonly width: number; readonly height: number },
  inRows: boolean,
): PlacedLabel[] {
  const room = labelRoom(sheet.width, inRows);
  const along: 'x' | 'y' = inRows ? 'x' : 'y';
  const across: 'x' | 'y' = inRows ? 'y' : 'x';
  const size = inRows ? room.label : labelHeight;
  const length = (inRows ? sheet.width : sheet.height) - 2 * 8;
  const most = Math.max(1, Math.floor((length + gap) / (size + gap)));
  const sorted = points.toSorted((a, b) => a[across] - b[across] || a[along] - b[along]);
  const half = Math.min(Math.ceil(sorted.length / 2), most);
  const low = sorted.slice(0, half);
  const high = sorted.slice(half, half + most);
  return [low, high].flatMap((side, k) => {
    const order = side.toSorted((a, b) => a[along] - b[along]);
    const starts = spread(
      order.map((point) => point[along] - size / 2),
      size,
      8,
      8 + length,
    );
    return order.map((point, i): PlacedLabel => {
      const box = inRows
        ? { x: starts[i], y: k === 0 ? 4 : sheet.height - labelHeight - 4, width: size, height: labelHeight }
        : {
            x: k === 0 ? 8 : sheet.width - room.label - 8,
            y: starts[i],
            width: room.label,
            height: labelHeight,
          };
      const leader: [number, number, number, number] = inRows
        ? [box.x + box.width / 2, k === 0 ? box.y + box.height : box.y, point.x, point.y]
        : [k === 0 ? box.x + box.width : box.x, box.y + box.height / 2, point.x, point.y];
      return { id: point.id, box, leader };
    });
  });
}

/** Moves wanted starts apart until none overlap, within an interval that holds them all. */
function spread(wanted: readonly number[], size: number, from: number, to: number): number[] {
  const starts = [...wanted];
  let least = from;
  for (let i = 0; i < starts.length; i++) {
    starts[i] = Math.max(starts[i], least);
    least = starts[i] + size + gap;
  }
  let greatest = to - size;
  for (let i = starts.length - 1; i >= 0; i--) {
    starts[i] = Math.min(starts[i], greatest);
    greatest = starts[i] - size - gap;
  }
  return starts;
}
