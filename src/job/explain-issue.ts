import type { z } from 'zod/mini';
import { formatPath, type Path } from './format-path.ts';
import { type Limit, type LimitKey, limits } from './limits.ts';
import { parseLength } from './parse-length.ts';

export interface Problem {
  readonly path: Path;
  readonly field: string;
  readonly message: string;
  readonly remedy: string;
}

/**
 * One refusal of the schema in words: which field, what was wrong, what to do.
 *
 * Of a field that may hold several kinds of value (one length or a list), the branch that went furthest into the
 * value speaks; where none went in, the field as a whole does.
 */
export function explainIssue(issue: z.core.$ZodIssue, root: unknown): Problem {
  const path = issue.path.map((part) => (typeof part === 'number' ? part : String(part)));
  const deeper = issue.code === 'invalid_union' ? findDeepest(issue.errors) : undefined;
  if (deeper) return explainIssue({ ...deeper, path: [...issue.path, ...deeper.path] }, root);
  const { message, remedy } = describe(issue, valueAt(root, path));
  return { path, field: formatPath(path), message, remedy };
}

/** The value at a path; undefined where the path leads nowhere. */
function valueAt(root: unknown, path: Path): unknown {
  let value = root;
  for (const part of path) {
    if (typeof value !== 'object' || value === null || !Object.hasOwn(value, part)) return undefined;
    value = (value as Record<string | number, unknown>)[part];
  }
  return value;
}

/** The first issue inside the value, or the one that says the value itself is out of range. */
function findDeepest(branches: readonly (readonly z.core.$ZodIssue[])[]): z.core.$ZodIssue | undefined {
  const all = branches.flat();
  return (
    all.find((issue) => issue.path.length > 0) ??
    all.find((issue) => issue.code !== 'invalid_type') ??
    all.find((issue) => issue.code === 'invalid_type' && issue.expected === 'number')
  );
}

function describe(issue: z.core.$ZodIssue, value: unknown): { message: string; remedy: string } {
  switch (issue.code) {
    case 'custom':
      return describeLimit(issue.params?.limit as LimitKey, value);
    case 'invalid_type':
      return describeType(issue.expected, value);
    case 'invalid_union':
      return describeChoice((issue as { options?: readonly unknown[] }).options ?? [], value);
    case 'invalid_value':
      return describeChoice(issue.values, value);
    case 'too_big':
      return {
        message: `there are more than ${issue.maximum}`,
        remedy: `Keep ${issue.maximum} at most; repeated takings of one length belong into one reading.`,
      };
    case 'too_small':
      return { message: `${show(value)} is empty`, remedy: 'Fill it in, or leave the field out.' };
    case 'invalid_format':
      return {
        message: `${show(value)} holds a character that can't be seen`,
        remedy: 'Use letters, digits, spaces and signs.',
      };
    default:
      return { message: `${show(value)} can't stand here`, remedy: 'Correct it, or leave the field out.' };
  }
}

function describeLimit(key: LimitKey, value: unknown): { message: string; remedy: string } {
  const limit: Limit = limits[key];
  const unit = limit.unit === '' ? '' : ` ${limit.unit}`;
  const range = `${limit.least} to ${limit.greatest}${unit}`;
  if (limit.whole && typeof value === 'number' && !Number.isInteger(value)) {
    return {
      message: `${show(value)} is not a whole number`,
      remedy: `Give ${limit.what}, ${range}, whole.`,
    };
  }
  return {
    message: `${show(value)} is outside ${range}: ${limit.reason}`,
    remedy: `Give ${limit.what} of ${range}, or leave the field out.`,
  };
}

const typeNames: Readonly<Record<string, string>> = {
  number: 'a number',
  string: 'a text in quotation marks',
  boolean: 'true or false',
  array: 'a list in [ ]',
  object: 'a group in { }',
  tuple: 'a list of two numbers in [ ]',
};

function describeType(expected: string, value: unknown): { message: string; remedy: string } {
  const wanted = typeNames[expected] ?? expected;
  if (value === undefined) return { message: 'is missing', remedy: `Put in ${wanted}.` };
  if (value === null) {
    return {
      message: `null stands where ${wanted} belongs`,
      remedy: 'Leave the field out where there is no value.',
    };
  }
  const message = `${show(value)} stands where ${wanted} belongs`;
  if (expected === 'number' && typeof value === 'string') {
    const typed = readPlainNumber(value);
    if (typed !== undefined) return { message, remedy: `Write ${typed}, without quotation marks.` };
  }
  return { message, remedy: `Put ${wanted} there, or leave the field out.` };
}

function describeChoice(options: readonly unknown[], value: unknown): { message: string; remedy: string } {
  const known = options.filter((option) => option !== undefined);
  const list = known.map((option) => JSON.stringify(option)).join(', ');
  if (value === undefined) return { message: 'is missing', remedy: `Put in ${list}.` };
  const one = known.length === 1 ? `Write ${list}.` : `Use one of ${list}.`;
  return { message: `${show(value)} is not known here`, remedy: one };
}

/** What a number in quotation marks was meant to be, one number, as JSON would write it. */
function readPlainNumber(text: string): string | undefined {
  try {
    const lengths = parseLength(text);
    return lengths.length === 1 ? String(lengths[0]) : `[${lengths.join(', ')}]`;
  } catch {
    return undefined;
  }
}

function show(value: unknown): string {
  if (Array.isArray(value)) return value.length === 0 ? 'the empty list' : 'a list';
  if (typeof value === 'object' && value !== null) return 'a group';
  const text = JSON.stringify(value) ?? String(value);
  return text.length > 40 ? `${text.slice(0, 40)}…` : text;
}
