import { capitalize, Fail, parseLength } from '../../index.ts';

/** What a length field holds: the lengths in mm, or what is wrong with the text and what to do. */
export type FieldContent = { readonly lengths: readonly number[] } | { readonly wrong: string };

/** Reads a length field; a number without a unit is in the field's own unit. */
export function readField(text: string, unit: 'mm' | 'in'): FieldContent {
  const hasUnit = /mm|in|["″”]|''/i.test(text);
  try {
    return { lengths: parseLength(unit === 'in' && !hasUnit ? `${text} in` : text) };
  } catch (error) {
    if (error instanceof Fail) return { wrong: `${capitalize(error.message)}. ${error.remedy}` };
    throw error;
  }
}

/** One number as the job file holds several: alone where there is one. */
export function asTakings(lengths: readonly number[]): number | readonly number[] {
  return lengths.length === 1 ? lengths[0] : lengths;
}

/** A taken reading as text for its field again. */
export function textOf(mm: number | readonly number[] | undefined, unit: 'mm' | 'in'): string {
  if (mm === undefined) return '';
  const list = typeof mm === 'number' ? [mm] : mm;
  return list.map((one) => String(unit === 'mm' ? one : Number((one / 25.4).toPrecision(7)))).join(' ');
}
