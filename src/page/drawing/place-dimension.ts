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
  noted,
  type Style,
} from './laid-dimension.ts';
import type { Box, WantedLabel } from './part-labels.ts';

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

/** Where a dimension's label would stand, and its lines for wherever it comes to stand; none where it has no place. */
export function placeDimension(all: PlaceAsked): Wanted[] {
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
  // Past the labels of what is measured there.
  const aside = 28 * (1 + dimensions.filter((other) => besideSection.has(other.of) && other.to > 0).length);
  const x = section.x + asked.sectionLength * s;
  return [
    {
      key: one.key,
      box: { x: x + 28, y: front.y - labelHeight / 2 + (isHub ? aside : -aside), width, height: labelHeight },
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
  const step = labelHeight + 4;
  const index = column.indexOf(one);
  let y = Math.max(8, Math.min(front.y, lowest) - (column.length * step) / 2) + index * step;
  if (column.length * step < (asked.up + asked.down) * s) {
    // A large gear: each beside its own line instead of all in the middle.
    const above = column.filter((other) => aboveFront.has(other.of)).length;
    const below = column.filter((other) => belowFront.has(other.of)).length;
    if (index < above) y = front.y - asked.up * s - labelHeight / 2 + index * step;
    else if (index >= column.length - below)
      y = Math.min(front.y + asked.down * s + labelHeight, floor) - (column.length - index) * step;
    else y = front.y + 16 + (index - above) * step;
  }
  return {
    x: isRight ? asked.width - 8 - width : Math.max(8, front.x - asked.halfWidth * s - 3 * clear - width),
    y,
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
