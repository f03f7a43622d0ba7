/** What each material is called where there is little room: the name up to its first comma, the trade's words after it. */
export function splitMaterial(name: string): readonly [string, string] {
  const [plain, ...rest] = name.split(', ');
  return [plain, rest.join(', ')];
}

/** A remedy of the core without what only the command line understands. */
export function tellOnPage(text: string): string {
  return text
    .replace(/ \((?:--|"making")[^)]*\)/g, '')
    .replace(/ To try it all the same, switch "fineness" off\./, '')
    .replace(/, or another --for\b/, ', or choose another maker')
    .replace(/\bLeave --process out\./, '');
}
