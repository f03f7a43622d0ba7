/** A library name without what follows its comma, for the middle of a sentence. */
export function shortName({ name }: { readonly name: string }): string {
  return name.split(',')[0];
}
