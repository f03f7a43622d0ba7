import { chooseScale, type DrawingScale } from './choose-scale.ts';
import {
  aboveFront,
  aboveSection,
  belowFront,
  besideSection,
  clear,
  isShort,
  type LaidDimension,
  type LayoutAsked,
  labelHeight,
  type Style,
} from './laid-dimension.ts';
import { type Box, partLabels } from './part-labels.ts';
import { placeDimension } from './place-dimension.ts';

/** A dimension on the sheet, CSS pixels, y down. */
export interface PlacedDimension {
  readonly key: string;
  readonly label: Box;
  /** Thin lines: extension lines, the dimension line, a leader to the label */
  readonly lines: string;
  /** Arrow heads, filled */
  readonly arrows: string;
}

export interface Layout {
  readonly scale: DrawingScale;
  readonly isNarrow: boolean;
  /** The gear's axis in the front view */
  readonly front: { readonly x: number; readonly y: number };
  /** Left face on the axis; undefined where there is no room for the side view */
  readonly section?: { readonly x: number; readonly y: number } | undefined;
  readonly dimensions: readonly PlacedDimension[];
  readonly detail?: { readonly x: number; readonly y: number; readonly radius: number } | undefined;
}

const edge = 8;
const between = 40;
/** Below these the side view is left out, or labels stand in columns beside the gear instead of rows above it. */
const narrowBelow = 560;
const lowBelow = 540;

/** Labels on a narrow sheet: two above the gear and two below. */
const mostNarrow = 4;
/** The words beside a detail, CSS pixels. */
export const captionWidth = 152;

/**
 * Where everything stands on a sheet of that size: the largest standard scale at which the views and their labels
 * fit, front view and side view on one axis, dimensions nearest the gear that are shortest, labels that never overlap.
 * A label without room is left out; the more important ones come first.
 */
export function layOut(asked: LayoutAsked): Layout {
  if (asked.width < narrowBelow) return layOutAs('narrow', asked);
  const rows = layOutAs('rows', asked);
  const columns = layOutAs('columns', asked);
  return columns.scale.pxPerMm > rows.scale.pxPerMm || asked.height < lowBelow ? columns : rows;
}

function layOutAs(style: Style, asked: LayoutAsked): Layout {
  const isNarrow = style === 'narrow';
  const gap = style === 'rows' ? labelHeight : 16;
  const dimensions = isNarrow ? chooseFew(asked.dimensions) : asked.dimensions;
  const count = (set: ReadonlySet<string>): number => dimensions.filter((one) => set.has(one.of)).length;
  const rowsUp = Math.max(count(aboveFront), isNarrow ? 0 : count(aboveSection));
  const rowsDown = count(belowFront);
  const detailRadius = asked.hasDetail ? (isNarrow ? 44 : style === 'rows' ? 72 : 56) : 0;
  const labelRows = isNarrow ? Math.ceil(dimensions.length / 2) : 0;
  const topLabels = Math.ceil(labelRows / 2) * labelHeight;
  const bottomLabels = Math.floor(labelRows / 2) * labelHeight;
  const detailBand = asked.hasDetail && style === 'rows' ? 2 * detailRadius + 24 : 0;
  const band = Math.max(asked.titleHeight, detailBand);
  const top = 8 + topLabels + rowsUp * gap + 8;
  const bottom = band + bottomLabels + rowsDown * gap + 16;
  const hasSection = !isNarrow;
  const spareHeight = asked.height - top - bottom;
  const widthMm = 2 * asked.halfWidth + (hasSection ? asked.sectionLength : 0);
  const heightMm = asked.up + asked.down;
  const roomAt = (s: number) => findRoom({ dimensions, style, s, detailRadius });
  const scale = chooseScale((s) => {
    const room = roomAt(s);
    return (
      widthMm * s <= asked.width - room.left - room.right - (hasSection ? between : 0) &&
      heightMm * s <= spareHeight &&
      s <= (asked.mostPxPerMm ?? Infinity) * 1.0001
    );
  });
  const room = roomAt(scale.pxPerMm);
  const spareWidth = asked.width - room.left - room.right - (hasSection ? between : 0);
  const s = scale.pxPerMm;
  const left = room.left + Math.max(0, (spareWidth - widthMm * s) / 2);
  const front = {
    x: left + asked.halfWidth * s,
    y: top + Math.max(0, spareHeight - heightMm * s) / 2 + asked.up * s,
  };
  const section = hasSection ? { x: front.x + asked.halfWidth * s + between, y: front.y } : undefined;
  const detail = asked.hasDetail
    ? {
        x: edge + detailRadius,
        y: isNarrow ? front.y + asked.down * s - detailRadius : asked.height - 8 - detailRadius,
        radius: detailRadius,
      }
    : undefined;
  const wanted = dimensions.flatMap((one) =>
    placeDimension({ asked, one, dimensions, style, gap, front, section, s, top, bottomLabels, band }),
  );
  const bounds = { left: 4, right: asked.width - 4, top: 4, bottom: asked.height - asked.titleHeight - 4 };
  // The circle and the words beside it.
  const taken: Box[] = detail
    ? [
        {
          x: detail.x - detail.radius,
          y: detail.y - detail.radius - (isNarrow ? 24 : 0),
          width: 2 * detail.radius + (isNarrow ? 0 : captionWidth + 8),
          height: 2 * detail.radius + (isNarrow ? 24 : 0),
        },
      ]
    : [];
  const placed = partLabels(wanted, bounds, taken);
  return {
    scale,
    isNarrow,
    front,
    section,
    detail,
    dimensions: wanted.flatMap((one) => {
      const label = placed.get(one.key);
      return label ? [{ key: one.key, label, ...one.draw(label) }] : [];
    }),
  };
}

/** The most important for a narrow sheet: at most two above the gear and two for the rest, none of the side view. */
function chooseFew(dimensions: readonly LaidDimension[]): LaidDimension[] {
  const front = dimensions.filter((one) => !aboveSection.has(one.of) && one.of !== 'hub-diameter');
  const up = front.filter((one) => aboveFront.has(one.of)).slice(0, mostNarrow / 2);
  const rest = front.filter((one) => !aboveFront.has(one.of)).slice(0, mostNarrow - up.length);
  return front.filter((one) => up.includes(one) || rest.includes(one));
}

/** The room that labels need left and right of the views at a scale, CSS pixels. */
function findRoom({
  dimensions,
  style,
  s,
  detailRadius,
}: {
  readonly dimensions: readonly LaidDimension[];
  readonly style: Style;
  readonly s: number;
  readonly detailRadius: number;
}): { readonly left: number; readonly right: number } {
  const detail = detailRadius > 0 ? 2 * detailRadius + 8 : 0;
  if (style === 'narrow') return { left: edge + Math.max(detail, 8), right: edge + 8 };
  let left = 8;
  let right = 8;
  const beside = dimensions.filter((one) => besideSection.has(one.of) && one.to > 0).length;
  for (const one of dimensions) {
    const isFront = !aboveSection.has(one.of) && !besideSection.has(one.of);
    if (isFront && (style === 'columns' || isShort(one, s))) left = Math.max(left, one.width + clear);
    if (besideSection.has(one.of)) right = Math.max(right, 32 + 20 * beside + one.width);
    if (aboveSection.has(one.of) && (style === 'columns' || isShort(one, s)))
      right = Math.max(right, one.width + clear);
  }
  return { left: left + edge, right: right + edge };
}
