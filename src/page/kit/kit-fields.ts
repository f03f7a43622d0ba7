import type { Job } from '../../index.ts';
import { readField } from '../entries/read-field.ts';

export type JobKit = NonNullable<Job['kit']>;
export type JobMachine = NonNullable<Job['machine']>;

/** What the page keeps of a kit beside what identification reads; a job keeps fields that it doesn't know. */
export type PageKit = JobKit & {
  readonly scanner?: boolean | undefined;
  readonly printers?: string | undefined;
};

/** Calipers by what they show, with the smallest step in their name. */
export const calipers = [
  { key: 'digital-0.01', word: 'Digital, shows 0.01 mm' },
  { key: 'dial-0.02', word: 'Dial or vernier, 0.02 mm' },
  { key: 'vernier-0.05', word: 'Vernier, 0.05 mm' },
  { key: 'micrometer', word: 'Micrometer, 0.01 mm' },
] as const;

export interface ReadField<T> {
  /** Undefined: left empty */
  readonly value?: T | undefined;
  /** What is wrong and what to do, for under the field */
  readonly wrong?: string | undefined;
}

/** One length from 0 up to `greatest` mm; several takings give their mean. Empty is no value. */
export function readOneLength(text: string, greatest: number): ReadField<number> {
  if (text.trim() === '') return {};
  if (/^0+(?:[.,]0*)?\s*(?:mm)?$/.test(text.trim())) return { value: 0 };
  const read = readLengths(text);
  if (!read.value) return { wrong: read.wrong };
  const mean = Number((read.value.reduce((sum, one) => sum + one, 0) / read.value.length).toPrecision(12));
  return mean <= greatest
    ? { value: mean }
    : { wrong: `${mean} mm is more than ${greatest} mm, too much here. Was it another unit?` };
}

/** A zero reading: a length with its sign, or nothing at all. */
export function readZero(text: string): ReadField<number> {
  const signed = /^\s*([-−–+]?)\s*(.*)$/.exec(text);
  const read = readOneLength(signed?.[2] ?? text, 50);
  if (read.value === undefined) return read;
  const isBelow = signed?.[1] !== '' && signed?.[1] !== '+';
  return { value: isBelow && read.value !== 0 ? -read.value : read.value };
}

/** Lengths in one field, as they were typed. Empty is none. */
function readLengths(text: string): ReadField<readonly number[]> {
  if (text.trim() === '') return {};
  const read = readField(text, 'mm');
  return 'wrong' in read ? read : { value: read.lengths };
}

/** A kit holds no more pins than this; the job file's limit. */
const mostPins = 100;

/** Pin thicknesses, thinnest first, each once. */
export function readPins(text: string): ReadField<readonly number[]> {
  const read = readLengths(text);
  if (!read.value) return read;
  const pins = [...new Set(read.value)].sort((a, b) => a - b);
  return pins.length <= mostPins
    ? { value: pins }
    : { wrong: `${pins.length} pins are more than ${mostPins}. Type those you would use.` };
}

/** A year; a job keeps the decade's first year. */
export function readYear(text: string): ReadField<number> {
  const trimmed = text.trim();
  if (trimmed === '') return {};
  const year = /^(\d{4})s?$/.exec(trimmed);
  const value = Number(year?.[1]);
  return year && value >= 1700 && value <= 2200
    ? { value: Math.floor(value / 10) * 10 }
    : { wrong: `“${trimmed.slice(0, 24)}” is not a year. Type one such as 1984; about is fine.` };
}

/** The job with one field of its kit set; an undefined value takes the field out. */
export function editKit<K extends keyof PageKit>(job: Job, field: K, value: PageKit[K] | undefined): Job {
  return { ...job, kit: setField<PageKit>(job.kit ?? {}, field, value) };
}

/** The job with one field of its machine set; an undefined value takes the field out. */
export function editMachine<K extends keyof JobMachine>(
  job: Job,
  field: K,
  value: JobMachine[K] | undefined,
): Job {
  return { ...job, machine: setField<JobMachine>(job.machine ?? {}, field, value) };
}

function setField<T extends object>(from: T, field: keyof T, value: T[keyof T] | undefined): T {
  const { [field]: _, ...rest } = from;
  return (value === undefined ? rest : { ...rest, [field]: value }) as T;
}
