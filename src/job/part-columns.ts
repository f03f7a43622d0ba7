/** What a column of a parts file holds; `other` is kept and not used. */
export type ColumnMeaning =
  | 'teeth'
  | 'module'
  | 'diametral-pitch'
  | 'circular-pitch'
  | 'pitch'
  | 'outside'
  | 'bore'
  | 'width'
  | 'material'
  | 'kept'
  | 'price'
  | 'count'
  | 'angle'
  | 'shift'
  | 'kind'
  | 'name'
  | 'notes'
  | 'other';

export interface PartColumn {
  /** As it stands in the file */
  readonly heading: string;
  readonly meaning: ColumnMeaning;
  /** What a bare number in it is in; a cell's own unit goes before */
  readonly unit: 'mm' | 'in';
}

/**
 * The columns that a row of headings names, or undefined where it is no row of headings: it must name the teeth and at
 * least one more. Order, case, brackets, underscores and units (`bore (in)`, `OD mm`) don't matter; a meaning named twice
 * counts the first time.
 */
export function findColumns(cells: readonly string[]): readonly PartColumn[] | undefined {
  const seen = new Set<ColumnMeaning>();
  const columns = cells.map((heading): PartColumn => {
    const { words, unit } = splitUnit(heading);
    const found = meanings.get(words) ?? 'other';
    const meaning = seen.has(found) ? 'other' : found;
    seen.add(meaning);
    return { heading, meaning, unit };
  });
  seen.delete('other');
  return seen.has('teeth') && seen.size > 1 ? columns : undefined;
}

/** Wordings as people use them and as the trade's symbols have them, all lower case. */
const wordings: Readonly<Record<Exclude<ColumnMeaning, 'other'>, string>> = {
  teeth:
    'teeth|tooth|z|t|n|tooth count|teeth count|number of teeth|no of teeth|nr of teeth|count of teeth|# teeth|num teeth',
  module: 'module|mod|m|mn|m n|metric size|metric module|module size',
  'diametral-pitch': 'dp|d p|diametral pitch|inch size|diametralpitch|teeth per inch|pitch dp|dp pitch',
  'circular-pitch': 'cp|circular pitch',
  pitch: 'pitch|size|gear size|module or dp|pitch or module|module or pitch',
  outside:
    'od|o d|outside|outside diameter|outer diameter|outside dia|outer dia|tip diameter|tip dia|across tips|across the tips|da|d a|diameter|dia|ø|⌀',
  bore: 'bore|hole|bore diameter|bore dia|hole diameter|hole dia|id|i d|inside diameter|shaft|shaft diameter|for shaft|axle',
  width: 'width|face width|face|tooth width|thickness|b|w|fw',
  material: 'material|made of|mat|matl',
  kept: 'where kept|kept|where|location|loc|drawer|box|place|bin|shelf|kept in|stored',
  price: 'price|cost|price each|unit price|each',
  count: 'count|qty|quantity|pcs|pieces|how many|in stock|amount|pack|pack quantity|number',
  angle: 'angle|pressure angle|pa|α|alpha|press angle',
  shift: 'shift|profile shift|x|addendum modification',
  kind: 'kind|type|gear type',
  name: 'name|part|item|description|label|part name|what',
  notes: 'notes|note|remark|remarks|comment|comments|source|from|out of|donor',
};

const meanings: ReadonlyMap<string, ColumnMeaning> = new Map(
  Object.entries(wordings).flatMap(([meaning, words]) =>
    words.split('|').map((word): [string, ColumnMeaning] => [word, meaning as ColumnMeaning]),
  ),
);

function splitUnit(heading: string): { words: string; unit: 'mm' | 'in' } {
  const plain = heading
    .normalize('NFKC')
    .toLowerCase()
    .replace(/["”″]/g, ' in ')
    .replace(/[^\p{L}\p{N}#]+/gu, ' ')
    .trim();
  const found = /^(.+?) (mm|in|inch|inches|millimeters?|millimetres?|deg|degrees)$/.exec(plain);
  if (!found) return { words: plain, unit: 'mm' };
  return { words: found[1], unit: found[2].startsWith('in') ? 'in' : 'mm' };
}
