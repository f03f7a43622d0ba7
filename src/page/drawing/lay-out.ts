import { chooseScale, type DrawingScale } from './choose-scale.ts';
import { type Box, partLabels, type WantedLabel } from './part-labels.ts';

/** One dimension as the layout sees it: where on the gear it lies, and how much room its words take. */
export interface LaidDimension {
  readonly key: string;
  readonly of: string;
  /** Half the measured length, mm (of the front view or along the side view's height); for lengths of the side view from and to */
  readonly from: number;
  readonly to: number;
  /** Characters of its longest line */
  readonly letters: number;
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
const edge = 16;
const between = 64;
/** Below these the side view is left out, or labels stand in columns beside the gear instead of rows above it. */
const narrowBelow = 560;
const lowBelow = 540;

const aboveFront = new Set(['span', 'outside', 'rack-pitch']);
const belowFront = new Set(['root', 'over-pins', 'tooth-depth']);
const aboveSection = new Set(['face-width', 'overall-length']);
const besideSection = new Set(['bore', 'shaft', 'hub-diameter']);

export function labelWidth(letters: number): number {
  return Math.max(labelHeight, Math.round(letters * 8.3) + 16);
}

/**
 * Where everything stands on a sheet of that size: the largest standard scale at which the views and their labels
 * fit, front view and side view on one axis, dimensions nearest the gear that are shortest, labels that never overlap.
 * A label without room is left out; the more important ones come first.
 */
export function layOut(asked: LayoutAsked): Layout {
  const isNarrow = asked.width < narrowBelow;
  const isLow = asked.height < lowBelow;
  const style = isNarrow ? 'narrow' : isLow ? 'columns' : 'rows';
  const gap = style === 'rows' ? labelHeight : 18;
  const dimensions = isNarrow
    ? asked.dimensions.filter((one) => !aboveSection.has(one.of) && one.of !== 'hub-diameter').slice(0, 5)
    : asked.dimensions;
  const count = (set: ReadonlySet<string>): number => dimensions.filter((one) => set.has(one.of)).length;
  const rowsUp = Math.max(count(aboveFront), isNarrow ? 0 : count(aboveSection));
  const rowsDown = count(belowFront);
  const widest = Math.max(0, ...dimensions.map((one) => labelWidth(one.letters)));
  const detailRadius = asked.hasDetail ? (isNarrow ? 44 : style === 'rows' ? 72 : 60) : 0;
  const labelRows = style === 'narrow' ? Math.ceil(dimensions.length / 2) : 0;
  const topLabels = Math.ceil(labelRows / 2) * labelHeight;
  const bottomLabels =
    style === 'narrow' ? Math.max(0, labelRows - Math.ceil(labelRows / 2)) * labelHeight : 0;
  const band = Math.max(asked.titleHeight, style === 'rows' && asked.hasDetail ? 2 * detailRadius + 24 : 0);
  const top = edge / 2 + topLabels + rowsUp * gap + 8;
  const bottom = band + bottomLabels + rowsDown * gap + 16;
  const hasSection = !isNarrow;
  const rightLabels = hasSection
    ? dimensions.some((one) => besideSection.has(one.of))
      ? widest + 64
      : 32
    : 0;
  const leftLabels = style === 'columns' ? widest : style === 'rows' ? Math.min(widest * 0.6, 96) : 0;
  const roomForDetail = isNarrow && asked.hasDetail ? 2 * detailRadius + 8 : 0;
  const spareWidth =
    asked.width - 2 * edge - leftLabels - rightLabels - roomForDetail - (hasSection ? between : 0);
  const spareHeight = asked.height - top - bottom;
  const widthMm = 2 * asked.halfWidth + (hasSection ? asked.sectionLength : 0);
  const heightMm = asked.up + asked.down;
  const scale = chooseScale(
    (s) =>
      widthMm * s <= spareWidth &&
      heightMm * s <= spareHeight &&
      s <= (asked.mostPxPerMm ?? Infinity) * 1.0001,
  );
  const s = scale.pxPerMm;
  const left = edge + leftLabels + roomForDetail + Math.max(0, (spareWidth - widthMm * s) / 2);
  const front = {
    x: left + asked.halfWidth * s,
    y: top + Math.max(0, spareHeight - heightMm * s) / 2 + asked.up * s,
  };
  const section = hasSection ? { x: front.x + asked.halfWidth * s + between, y: front.y } : undefined;
  const detail = asked.hasDetail
    ? {
        x: edge + detailRadius,
        y: isNarrow
          ? front.y + asked.down * s - detailRadius
          : asked.height - 8 - detailRadius - (style === 'columns' ? 0 : 0),
        radius: detailRadius,
      }
    : undefined;
  const wanted = dimensions.flatMap((one) =>
    placeOne({ asked, one, dimensions, style, gap, front, section, s, top, bottomLabels, band }),
  );
  const bounds = { left: 0, right: asked.width, top: 0, bottom: asked.height - asked.titleHeight };
  const taken: Box[] = detail
    ? [
        {
          x: detail.x - detail.radius - 8,
          y: detail.y - detail.radius - 8,
          width: 2 * detail.radius + 16,
          height: 2 * detail.radius + 16,
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

interface PlaceAsked {
  readonly asked: LayoutAsked;
  readonly one: LaidDimension;
  readonly dimensions: readonly LaidDimension[];
  readonly style: 'narrow' | 'columns' | 'rows';
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
  const width = labelWidth(one.letters);
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
    const isShort = x1 - x0 < width + 40;
    const box =
      style === 'rows'
        ? isShort
          ? center(x0 - 24 - width / 2, lineY)
          : center((x0 + x1) / 2, lineY)
        : slotBox();
    const startY = one.of === 'span' ? rim + (isUp ? 4 : -4) : front.y + (isUp ? -6 : 6);
    return [
      {
        key: one.key,
        box,
        draw: (label) => {
          const dimension = drawDimension(x0, x1, lineY, x1 - x0 < 28);
          return {
            lines: `M${n(x0)} ${n(startY)}V${n(lineY + (isUp ? -6 : 6))}M${n(x1)} ${n(startY)}V${n(lineY + (isUp ? -6 : 6))}${dimension.lines}${joinLabel(label, x0, x1, lineY)}`,
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
    const isShort = x1 - x0 < width + 40;
    const box = style === 'rows' ? center(isShort ? x1 + 24 + width / 2 : (x0 + x1) / 2, lineY) : slotBox();
    return [
      {
        key: one.key,
        box,
        draw: (label) => {
          const dimension = drawDimension(x0, x1, lineY, x1 - x0 < 28);
          const start = section.y - asked.up * s - 4;
          return {
            lines: `M${n(x0)} ${n(start)}V${n(lineY - 6)}M${n(x1)} ${n(start)}V${n(lineY - 6)}${dimension.lines}${joinLabel(label, x0, x1, lineY)}`,
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
  // What has no dimension line gets a leader: the count to the rim, a hole that isn't measured to the middle.
  const isTeeth = one.of === 'teeth';
  const angle = isTeeth ? Math.PI * 1.22 : Math.PI * 1.75;
  const radius = isTeeth ? asked.halfWidth * s : Math.max(one.to * s, 4);
  const tipX = asked.isRound ? front.x + radius * Math.cos(angle) : front.x - asked.halfWidth * s * 0.7;
  const tipY = asked.isRound ? front.y - radius * Math.sin(angle) : front.y - asked.up * s * 0.5;
  const box =
    style !== 'rows'
      ? slotBox()
      : isTeeth
        ? center(tipX - 24 - width / 2, tipY + 20)
        : section && besideSection.has(one.of)
          ? {
              x: section.x + asked.sectionLength * s + 28,
              y: front.y + (one.of === 'hub-diameter' ? 40 : -96),
              width,
              height: labelHeight,
            }
          : center(tipX + 24 + width / 2, tipY);
  const isOnSection = !isTeeth && section !== undefined && besideSection.has(one.of);
  const goalX = isOnSection ? section.x + asked.sectionLength * s : tipX;
  const goalY = isOnSection ? front.y + (one.of === 'hub-diameter' ? asked.up * s * 0.3 : 0) : tipY;
  return [
    {
      key: one.key,
      box,
      draw: (label) => leader(label, goalX, goalY),
    },
  ];
}

/** Places in columns beside the gear, or two in a row above and below it on a narrow sheet. */
function columnBox({ asked, one, dimensions, style, band }: PlaceAsked, width: number): Box {
  if (style === 'narrow') {
    const order = [...dimensions].sort((a, b) => rank(a.of) - rank(b.of));
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
    .sort((a, b) => rank(a.of) - rank(b.of));
  return {
    x: isRight ? asked.width - 8 - width : 8,
    y: 8 + column.indexOf(one) * (labelHeight + 4),
    width,
    height: labelHeight,
  };
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

function drawDimension(
  x0: number,
  x1: number,
  y: number,
  isTight: boolean,
): { lines: string; arrows: string } {
  // Between lines too close for arrows these stand outside and point in (ISO 129-1).
  return isTight
    ? {
        lines: `M${n(x0 - 18)} ${n(y)}H${n(x1 + 18)}`,
        arrows: arrowHead(x0, y, 1, 0) + arrowHead(x1, y, -1, 0),
      }
    : {
        lines: `M${n(x0)} ${n(y)}H${n(x1)}`,
        arrows: arrowHead(x0, y, -1, 0) + arrowHead(x1, y, 1, 0),
      };
}

/** A filled arrow head whose point stands at x, y and looks along dx, dy. */
function arrowHead(x: number, y: number, dx: number, dy: number): string {
  const length = 10;
  const half = 2;
  const bx = x - dx * length;
  const by = y - dy * length;
  return `M${n(x)} ${n(y)}L${n(bx - dy * half)} ${n(by + dx * half)}L${n(bx + dy * half)} ${n(by - dx * half)}Z`;
}

/** From a dimension line to its label: nothing where the label stands on it. */
function joinLabel(label: Box, x0: number, x1: number, y: number): string {
  const middle = label.y + label.height / 2;
  const isLevel = Math.abs(middle - y) < 1;
  if (isLevel && label.x < x1 && label.x + label.width > x0) return '';
  const isLeft = label.x + label.width / 2 < (x0 + x1) / 2;
  const end = isLeft ? x0 : x1;
  if (isLevel) return `M${n(isLeft ? label.x + label.width : label.x)} ${n(y)}H${n(end)}`;
  return drawLeader(label, end, y);
}

function leader(label: Box, x: number, y: number): { lines: string; arrows: string } {
  return {
    lines: drawLeader(label, x, y),
    arrows: `M${n(x - 2.5)} ${n(y)}a2.5 2.5 0 1 0 5 0a2.5 2.5 0 1 0 -5 0Z`,
  };
}

/** A thin line from a label's nearer side. */
function drawLeader(label: Box, x: number, y: number): string {
  if (x > label.x + label.width)
    return `M${n(label.x + label.width)} ${n(label.y + label.height / 2)}h8L${n(x)} ${n(y)}`;
  if (x < label.x) return `M${n(label.x)} ${n(label.y + label.height / 2)}h-8L${n(x)} ${n(y)}`;
  const isBelow = y > label.y + label.height / 2;
  return `M${n(label.x + label.width / 2)} ${n(isBelow ? label.y + label.height : label.y)}L${n(x)} ${n(y)}`;
}

function n(value: number): number {
  return Math.round(value * 10) / 10;
}
