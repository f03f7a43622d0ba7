import type { Job } from './job-schema.ts';

/**
 * A job as text: two spaces a level, what fits on a line of 110 kept on one, a newline at the end. The same job
 * always gives the same bytes, and reading the text gives the same job, unknown fields and their order included
 * (fields named by whole numbers come first, as they do everywhere in JavaScript; whole numbers of more than 15
 * digits in unknown fields are rounded when read).
 *
 * Throws a plain Error where a number is not finite or a value is none that JSON has.
 */
export function formatJob(job: Job): string {
  return `${format(job, '', 0)}\n`;
}

const width = 110;

/** `used` counts what stands before the value on its line. */
function format(value: unknown, indent: string, used: number): string {
  if (typeof value !== 'object' || value === null) return formatPlain(value);
  const parts: [string, unknown][] = Array.isArray(value)
    ? value.map((element) => ['', element])
    : Object.entries(value)
        .filter(([, inner]) => inner !== undefined)
        .map(([key, inner]) => [`${JSON.stringify(key)}: `, inner]);
  const [open, close] = Array.isArray(value) ? ['[', ']'] : ['{', '}'];
  if (parts.length === 0) return open + close;
  const short = formatOnOneLine(value, width - used);
  // The job itself always stands open, so that its fields can be seen.
  if (short !== undefined && indent !== '') return short;
  if (short !== undefined && used > 0) return short;
  const inner = `${indent}  `;
  const lines = parts.map(
    ([key, part]) => `${inner}${key}${format(part, inner, inner.length + key.length + 1)}`,
  );
  return `${open}\n${lines.join(',\n')}\n${indent}${close}`;
}

/** The value on one line, or undefined where it needs more than `room`. */
function formatOnOneLine(value: unknown, room: number): string | undefined {
  if (typeof value !== 'object' || value === null) {
    const text = formatPlain(value);
    return text.length <= room ? text : undefined;
  }
  const isList = Array.isArray(value);
  let text = '';
  for (const [key, inner] of Object.entries(value)) {
    if (inner === undefined && !isList) continue;
    const lead = `${text === '' ? '' : ', '}${isList ? '' : `${JSON.stringify(key)}: `}`;
    const part = formatOnOneLine(inner, room - text.length - lead.length - 4);
    if (part === undefined) return undefined;
    text += lead + part;
  }
  if (text === '') return isList ? '[]' : '{}';
  const whole = isList ? `[${text}]` : `{ ${text} }`;
  return whole.length <= room ? whole : undefined;
}

function formatPlain(value: unknown): string {
  if (typeof value === 'number' && !Number.isFinite(value)) throw new Error(`a job can't hold ${value}`);
  const text = JSON.stringify(value);
  if (text === undefined) throw new Error(`a job can't hold a ${typeof value}`);
  return text;
}
