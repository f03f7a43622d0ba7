/**
 * A sentence as lines of at most 80 columns, the first led by `lead`, the others indented as far. Words longer than
 * a line stay whole. Control characters, which a job may hold and a terminal would obey, are left out.
 *
 * @example wrapText('one two', '  - ') = ['  - one two']
 */
export function wrapText(text: string, lead = ''): string[] {
  const indent = ' '.repeat(lead.length);
  const lines: string[] = [];
  let line = lead;
  let isEmpty = true;
  for (const word of text.split(/[\s\p{Cc}]+/u).filter((one) => one !== '')) {
    if (!isEmpty && line.length + 1 + word.length > columns) {
      lines.push(line);
      line = indent;
      isEmpty = true;
    }
    line += isEmpty ? word : ` ${word}`;
    isEmpty = false;
  }
  lines.push(line);
  return lines;
}

export const columns = 80;
