import { chooseScale, type DrawingScale } from './choose-scale.ts';
import {
  arrowHead,
  drawDimension,
  joinLabel,
  leader,
  line,
  n,
  type Point,
  turnAbout,
} from './dimension-lines.ts';
import { type Box, partLabels, type WantedLabel } from './part-labels.ts';

/** One dimension as the layout sees it: where on the gear it lies, and how much room its words take. */
export interface LaidDimension {
  readonly key: string;
  readonly of: string;
  /** Half the measured length, mm (of the front view or along the side view's height); for lengths of the side view from and to */
  readonly from: number;
  readonly to: number;
  /** How far its line is turned about the axis, counter-clockwise, rad */
  readonly turn: number;
  /** Width of its label, CSS pixels */
  readonly width: number;
}

export interface LayoutAsked {
  readonly width: number;
  readonly height: number;
  /** Half the front view's width and its reach up and down from the axis, mm */
  readonly halfWidth: number;
  readonly up: number;
  readonly down: number;
  /** The side view's length, mm; it stands as high as the front view */
  readonly sectionLength: number;
  readonly isRound: boolean;
  readonly dimensions: readonly LaidDimension[];
  readonly hasDetail: boolean;
  readonly titleHeight: number;
  /** Set on paper: the scale to use where it fits */
  readonly mostPxPerMm?: number | undefined;
}

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

const labelHeight = 48;
const edge = 8;
const between = 40;
/** Below these the side view is left out, or labels stand in columns beside the gear instead of rows above it. */
const narrowBelow = 560;
const lowBelow = 540;

/** Labels on a narrow sheet: two above the gear and two below. */
const mostNarrow = 4;
/** The words beside a detail, CSS pixels. */
export const captionWidth = 152;

const aboveFront = new Set(['span', 'outside', 'rack-pitch']);
const belowFront = new Set(['root', 'over-pins']);
const noted = new Set(['teeth', 'tooth-depth']);
const aboveSection = new Set(['face-width', 'overall-length']);
const besideSection = new Set(['bore', 'shaft', 'hub-diameter']);

/** The room that a label's words take, CSS pixels: measured averages of the page's type at 16 px, with a margin. */
export function labelWidth(name: string, value: string | undefined): number {
  return Math.max(labelHeight, Math.ceil(Math.max(name.length * 7.4, (value?.length ?? 0) * 8.8)) + 12);
}

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

/** Labels on their dimension lines; in columns beside the views with leaders; two in a row above and below. */
type Style = 'rows' | 'columns' | 'narrow';

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
    placeOne({ asked, one, dimensions, style, gap, front, section, s, top, bottomLabels, band }),
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

/** From the gear's rim to a label beside it. */
const clear = 16;

/** Too short to carry its label between its arrows. */
function isShort(one: LaidDimension, s: number): boolean {
  return noted.has(one.of) || (one.to - one.from) * s < one.width + 56;
}

interface PlaceAsked {
  readonly asked: LayoutAsked;
  readonly one: LaidDimension;
  readonly dimensions: readonly LaidDimension[];
  readonly style: Style;
  readonly gap: number;
  readonly front: { readonly x: number; readonly y: number };
  readonly section: { readonly x: number; readonly y: number } | undefined;
  readonly s: number;
  readonly top: number;
  readonly bottomLabels: number;
  readonly band: number;
}

interface Wanted extends WantedLabel {
  readonly draw: (label: Box) => { readonly lines: string; readonly arrows: string };
}

function placeOne(all: PlaceAsked): Wanted[] {
  const { asked, one, dimensions, style, gap, front, section, s } = all;
  const { width } = one;
  const at = (set: ReadonlySet<string>): number => {
    // The shorter a dimension, the nearer the gear it stands, so that no line crosses another's.
    const same = dimensions.filter((other) => set.has(other.of));
    return [...same].sort((a, b) => a.to - a.from - (b.to - b.from)).indexOf(one);
  };
  const center = (x: number, y: number): Box => ({
    x: x - width / 2,
    y: y - labelHeight / 2,
    width,
    height: labelHeight,
  });
  const slotBox = (): Box => columnBox(all, width);
  if (aboveFront.has(one.of) || belowFront.has(one.of)) {
    const isUp = aboveFront.has(one.of);
    const row = at(isUp ? aboveFront : belowFront);
    const rim = isUp ? front.y - asked.up * s : front.y + asked.down * s;
    const lineY = isUp ? rim - 8 - gap * (row + 0.5) : rim + 8 + gap * (row + 0.5);
    const x0 = front.x + one.from * s;
    const x1 = front.x + one.to * s;
    const box =
      style === 'rows'
        ? isShort(one, s)
          ? center(front.x - asked.halfWidth * s - clear - width / 2, lineY)
          : center((x0 + x1) / 2, lineY)
        : slotBox();
    const startY = one.of === 'span' ? rim + (isUp ? 4 : -4) : front.y + (isUp ? -6 : 6);
    const beyond = lineY + (isUp ? -6 : 6);
    // Teeth can't all stand upright: a line over k of them is turned as they are.
    const turned = (x: number, y: number): Point => turnAbout(front, { x, y }, -one.turn);
    const p0 = turned(x0, lineY);
    const p1 = turned(x1, lineY);
    return [
      {
        key: one.key,
        box,
        draw: (label) => {
          const dimension = drawDimension(p0, p1, x1 - x0 < 28);
          const extensions =
            line(turned(x0, startY), turned(x0, beyond)) + line(turned(x1, startY), turned(x1, beyond));
          return {
            lines: `${extensions}${dimension.lines}${joinLabel(label, p0, p1)}`,
            arrows: dimension.arrows,
          };
        },
      },
    ];
  }
  if (aboveSection.has(one.of)) {
    if (!section) return [];
    const row = at(aboveSection);
    const lineY = section.y - asked.up * s - 8 - gap * (row + 0.5);
    const x0 = section.x + one.from * s;
    const x1 = section.x + one.to * s;
    const box =
      style === 'rows'
        ? center(
            isShort(one, s) ? section.x + asked.sectionLength * s + clear + width / 2 : (x0 + x1) / 2,
            lineY,
          )
        : slotBox();
    return [
      {
        key: one.key,
        box,
        draw: (label) => {
          const p0 = { x: x0, y: lineY };
          const p1 = { x: x1, y: lineY };
          const dimension = drawDimension(p0, p1, x1 - x0 < 28);
          const start = section.y - asked.up * s - 4;
          return {
            lines: `M${n(x0)} ${n(start)}V${n(lineY - 6)}M${n(x1)} ${n(start)}V${n(lineY - 6)}${dimension.lines}${joinLabel(label, p0, p1)}`,
            arrows: dimension.arrows,
          };
        },
      },
    ];
  }
  if (besideSection.has(one.of) && section && one.to > 0) {
    const same = dimensions.filter((other) => besideSection.has(other.of) && other.to > 0);
    const row = [...same].sort((a, b) => a.to - b.to).indexOf(one);
    const x = section.x + asked.sectionLength * s + 24 + 20 * row;
    const half = one.to * s;
    const far = section.x + asked.sectionLength * s + 24 + 20 * same.length + 4;
    const wish: Box = {
      x: far,
      y: front.y - labelHeight / 2 + (row - (same.length - 1) / 2) * 56,
      width,
      height: labelHeight,
    };
    return [
      {
        key: one.key,
        box: wish,
        draw: (label) => {
          const y = label.y + labelHeight / 2;
          const isTight = half < 14;
          const arrows =
            arrowHead(x, front.y - half, 0, isTight ? 1 : -1) +
            arrowHead(x, front.y + half, 0, isTight ? -1 : 1);
          const low = Math.min(front.y - half - (isTight ? 16 : 0), y);
          const high = Math.max(front.y + half + (isTight ? 16 : 0), y);
          const start = section.x + asked.sectionLength * s + 4;
          return {
            lines: `M${n(start)} ${n(front.y - half)}H${n(x + 6)}M${n(start)} ${n(front.y + half)}H${n(x + 6)}M${n(x)} ${n(low)}V${n(high)}M${n(x)} ${n(y)}H${n(label.x)}`,
            arrows,
          };
        },
      },
    ];
  }
  // What has no dimension line gets a leader: the count to the rim, what isn't measured to where it lies.
  if (noted.has(one.of)) {
    const low = front.y + Math.max(48, asked.isRound ? asked.halfWidth * s * 0.5 : 0);
    const box = style === 'rows' ? center(front.x - asked.halfWidth * s - clear - width / 2, low) : slotBox();
    return [
      {
        key: one.key,
        box,
        draw: (label) => {
          if (!asked.isRound) return leader(label, front.x - asked.halfWidth * s * 0.83, front.y);
          const angle = Math.atan2(label.y + label.height / 2 - front.y, label.x + width / 2 - front.x);
          const radius = asked.halfWidth * s * 0.97;
          return leader(label, front.x + radius * Math.cos(angle), front.y + radius * Math.sin(angle));
        },
      },
    ];
  }
  if (section === undefined) {
    const radius = Math.max(one.to * s, 3);
    return [
      {
        key: one.key,
        box: slotBox(),
        draw: (label) => {
          const angle = Math.atan2(label.y + label.height / 2 - front.y, label.x + width / 2 - front.x);
          return leader(label, front.x + radius * Math.cos(angle), front.y + radius * Math.sin(angle));
        },
      },
    ];
  }
  const isHub = one.of === 'hub-diameter';
  const x = section.x + asked.sectionLength * s;
  return [
    {
      key: one.key,
      box: { x: x + 28, y: front.y - labelHeight / 2 + (isHub ? 56 : -56), width, height: labelHeight },
      draw: (label) => leader(label, x, front.y + (isHub ? Math.min(asked.up * s * 0.3, 40) : 0)),
    },
  ];
}

/** Places in columns beside the gear, or two in a row above and below it on a narrow sheet. */
function columnBox(
  { asked, one, dimensions, style, band, front, section, s }: PlaceAsked,
  width: number,
): Box {
  if (style === 'narrow') {
    const order = [...dimensions].sort(topDown);
    const index = order.indexOf(one);
    const rows = Math.ceil(order.length / 2);
    const topRows = Math.ceil(rows / 2);
    const row = Math.floor(index / 2);
    const isLeft = index % 2 === 0;
    const y = row < topRows ? 4 + row * labelHeight : asked.height - band - (rows - row) * labelHeight;
    return { x: isLeft ? 8 : asked.width - 8 - width, y, width, height: labelHeight };
  }
  const isRight = aboveSection.has(one.of) || besideSection.has(one.of);
  const column = dimensions
    .filter((other) => (aboveSection.has(other.of) || besideSection.has(other.of)) === isRight)
    .sort(topDown);
  // Round the gear's height, so that leaders are short, and clear of the detail below.
  const half = (column.length * (labelHeight + 4)) / 2;
  const floor = asked.height - (isRight || !asked.hasDetail ? asked.titleHeight : 2 * 56 + 16) - 8;
  const lowest = floor - half;
  const isOverLabels = aboveSection.has(one.of);
  const sideX = section ? section.x + asked.sectionLength * s + clear : asked.width;
  if (isOverLabels) {
    const row = column.filter((other) => aboveSection.has(other.of)).indexOf(one);
    const rows = column.filter((other) => aboveSection.has(other.of)).length;
    const rim = front.y - asked.up * s;
    return {
      x: Math.min(sideX, asked.width - 8 - width),
      y: Math.max(4, rim - (rows - row) * (labelHeight + 4)),
      width,
      height: labelHeight,
    };
  }
  return {
    x: isRight ? asked.width - 8 - width : Math.max(8, front.x - asked.halfWidth * s - 3 * clear - width),
    y:
      Math.max(8, Math.min(front.y, lowest) - (column.length * (labelHeight + 4)) / 2) +
      column.indexOf(one) * (labelHeight + 4),
    width,
    height: labelHeight,
  };
}

/** From the top of the drawing down; above the gear the longer line stands higher, below it lower. */
function topDown(a: LaidDimension, b: LaidDimension): number {
  const isUp = aboveFront.has(a.of) && aboveFront.has(b.of);
  const isDown = belowFront.has(a.of) && belowFront.has(b.of);
  const longer = b.to - b.from - (a.to - a.from);
  return isUp ? longer : isDown ? -longer : rank(a.of) - rank(b.of);
}

/** From the top of the drawing down, so that leaders don't cross. */
function rank(of: string): number {
  return [
    'outside',
    'rack-pitch',
    'span',
    'overall-length',
    'face-width',
    'shaft',
    'bore',
    'hub-diameter',
    'teeth',
    'root',
    'tooth-depth',
    'over-pins',
  ].indexOf(of);
}
