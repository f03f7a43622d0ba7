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

export const labelHeight = 48;

export const aboveFront = new Set(['span', 'outside', 'rack-pitch']);

export const belowFront = new Set(['root', 'over-pins']);

export const noted = new Set(['teeth', 'tooth-depth']);

export const aboveSection = new Set(['face-width', 'overall-length']);

export const besideSection = new Set(['bore', 'shaft', 'hub-diameter']);

/** Labels on their dimension lines; in columns beside the views with leaders; two in a row above and below. */
export type Style = 'rows' | 'columns' | 'narrow';

/** From the gear's rim to a label beside it. */
export const clear = 16;

/** Too short to carry its label between its arrows. */
export function isShort(one: LaidDimension, s: number): boolean {
  return noted.has(one.of) || (one.to - one.from) * s < one.width + 56;
}

/** The room that a label's words take, CSS pixels: measured averages of the page's type at 16 px, with a margin. */
export function labelWidth(name: string, value: string | undefined): number {
  return Math.max(labelHeight, Math.ceil(Math.max(name.length * 7.4, (value?.length ?? 0) * 8.8)) + 12);
}
