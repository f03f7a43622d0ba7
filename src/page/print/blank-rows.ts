/** One line of the blank sheet: what to measure, and what is to be filled in beside the figures. */
export interface BlankRow {
  /** Marks the place on the sketch; none where the sketch can't show it */
  readonly mark?: string | undefined;
  readonly name: string;
  readonly trade?: string | undefined;
  /** A small box within the name: how many teeth, which pin */
  readonly extra?: string | undefined;
  readonly boxes: number;
}

/** In the order in which one takes them: what says most comes first. Three places each, as their spread tells too. */
export const blankRows: readonly BlankRow[] = [
  { name: 'caliper closed shows', boxes: 1 },
  { mark: '1', name: 'teeth, counted', boxes: 1 },
  { mark: '2', name: 'across the tips', trade: 'outside', boxes: 3 },
  { mark: '3', name: 'bottom of the teeth', trade: 'root', boxes: 3 },
  { mark: '4', name: 'across some teeth', trade: 'span', extra: 'teeth', boxes: 3 },
  { mark: '4', name: 'across more teeth', trade: 'span', extra: 'teeth', boxes: 3 },
  { mark: '5', name: 'over two pins', extra: 'pin', boxes: 3 },
  { mark: '6', name: 'bore', trade: 'hole', boxes: 3 },
  { name: 'shaft it sat on', boxes: 3 },
  { mark: '7', name: 'tooth width', trade: 'face width', boxes: 3 },
  { mark: '8', name: 'hub', boxes: 3 },
  { mark: '9', name: 'overall length', boxes: 3 },
  { name: 'distance of the posts', trade: 'center distance', boxes: 3 },
];

/** What can't be made up for later. Common practice, no published source. */
export const beforeApart: readonly string[] = [
  'Unplug it.',
  'Photograph it from above.',
  'Mark the upper face and the tooth at 12 o’clock of each gear with a pen.',
  'Keep every crumb.',
];
