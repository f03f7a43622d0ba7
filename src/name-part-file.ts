/** A part's file name without its ending. */
export function namePartFile(id: string, isTrial: boolean): string {
  return `${nameFile(id, 'wheel')}${isTrial ? '-trial' : ''}`;
}

/** Letters, digits, dots and dashes; what else an id holds becomes a dash. `otherwise` where nothing is left. */
export function nameFile(id: string, otherwise: string): string {
  return id.replace(/[^A-Za-z0-9.-]+/g, '-').replace(/^[.-]+/, '') || otherwise;
}
