import { Fail } from '../fail.ts';
import { limits } from './limits.ts';

/**
 * The lengths that a person typed into a field or a CSV cell, in mm: one, or several takings separated by spaces
 * or semicolons. A comma is a decimal comma; a comma that ends a number separates. A unit (mm, in, ") may follow
 * each number, or stand once at the end for all before it; none means mm. Inches may be a fraction.
 *
 * Throws Fail `bad-value` with the field given where anything is left that is not a length above 0 and within the
 * job file's limit, or where a comma and a point stand in one number.
 *
 * Source: 1 in = 25.4 mm exactly, ISO 80000-3.
 *
 * @param field what the text was typed into, for the message
 * @example parseLength('12.44 12.46 12,43') = [12.44, 12.46, 12.43]
 * @example parseLength('0.49"') = [12.446]
 */
export function parseLength(text: string, field = ''): number[] {
  const lengths: number[] = [];
  const waiting: string[] = [];
  const settle = (inches: boolean): void => {
    for (const number of waiting) lengths.push(readNumber(number, inches, text, field));
    waiting.length = 0;
  };
  for (const token of listTokens(text, field)) {
    if (token.number !== '') waiting.push(token.number);
    if (token.unit === '') continue;
    if (waiting.length === 0) throw refuse(text, field, `there is no number before "${token.unit}"`);
    settle(token.unit !== 'mm');
  }
  settle(false);
  if (lengths.length === 0) throw refuse(text, field, 'there is no number');
  return lengths;
}

interface Token {
  readonly number: string;
  readonly unit: string;
}

function listTokens(text: string, field: string): Token[] {
  if (text.length > longest) throw refuse(text, field, 'the text is too long for lengths');
  const words = text.split(/[\s;]+/).filter((word) => word !== '');
  return words.map((word): Token => {
    const found = /^(\d+(?:[.,]\d+)?|[.,]\d+|\d+\/\d+)?(mm|in|inch|inches|"|″|”|'')?,?$/i.exec(word);
    const number = found?.[1] ?? '';
    const unit = found?.[2]?.toLowerCase() ?? '';
    if (found && (number !== '' || unit !== '')) return { number, unit };
    if (/\d[.,]\d+[.,]\d/.test(word)) {
      throw refuse(text, field, `"${clip(word)}" has more than one point or comma`);
    }
    if (/^[-−–]/.test(word)) throw refuse(text, field, `"${clip(word)}" is below zero`);
    throw refuse(text, field, `"${clip(word)}" is not a length`);
  });
}

function readNumber(number: string, inches: boolean, text: string, field: string): number {
  const [over, under] = number.split('/');
  if (under !== undefined && !inches) throw refuse(text, field, 'a fraction is read in inches only');
  const value = under === undefined ? Number(number.replace(',', '.')) : Number(over) / Number(under);
  // Twelve digits keep what was typed and drop what the product of two binary numbers adds.
  const length = inches ? Number((value * 25.4).toPrecision(12)) : value;
  const { least, greatest } = limits.length;
  if (length >= least && length <= greatest) return length;
  throw refuse(text, field, `${clip(number)} is not between ${least} and ${greatest} mm`);
}

// Twenty takings with their units; anything longer is not a field's content.
const longest = 500;

function refuse(text: string, field: string, message: string): Fail {
  return new Fail(
    'bad-value',
    field,
    message,
    'Type a length such as 12.44 or 12,44, several with spaces between; add in or " for inches.',
    { typed: text.slice(0, longest) },
  );
}

function clip(text: string): string {
  return text.length > 24 ? `${text.slice(0, 24)}…` : text;
}
