/** A part's file name without its ending: letters, digits, dots and dashes; what else an id holds becomes a dash. */
export function namePartFile(id: string, isTrial: boolean): string {
  const plain = id.replace(/[^A-Za-z0-9.-]+/g, '-').replace(/^[.-]+/, '') || 'wheel';
  return `${plain}${isTrial ? '-trial' : ''}`;
}
