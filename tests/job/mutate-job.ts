import type { Random } from '../../src/numeric/random.ts';
import { fullJob } from './full-job.ts';

type Path = readonly (string | number)[];

export interface Mutation {
  readonly kind: string;
  readonly bytes: Uint8Array;
  /** Refused for certain: the change breaks a type, a limit or the text. */
  readonly mustFail: boolean;
  /** Where, if one field was changed. */
  readonly path: Path | undefined;
}

/** One way of spoiling a job, drawn at random: its fields, its text or its bytes. */
export function mutateJob(job: unknown, random: Random): Mutation {
  const mutators = [
    retype,
    retype,
    retype,
    makeHuge,
    dropField,
    nest,
    addUnknown,
    truncate,
    flipBytes,
    insertUnicode,
    swapPieces,
  ];
  return pick(mutators, random)(job, random);
}

function retype(job: unknown, random: Random): Mutation {
  const path = pick(listPlaces(job), random);
  const old = valueAt(job, path);
  const wrong = wrongValues(old, path);
  return changed('retype', job, path, pick(wrong, random), true);
}

/** Values of another type than the field's; `mm` may also be a list, a tip diameter also null. */
function wrongValues(old: unknown, path: Path): unknown[] {
  const key = String(path.at(-1));
  const numbers = [7, -1, 1e308];
  const texts = ['12.44', '12,44', '', '\u0000', 'NaN', '🦷'];
  const others = [{}, { mm: 3 }, [['1']], ['x'], [{}]];
  if (typeof old === 'number') {
    return [...texts, true, false, ...others, ...(key === 'tipDiameterMm' ? [] : [null])];
  }
  if (old === null) return [...texts, true, ...others];
  if (typeof old === 'string') return [...numbers, true, null, ...others];
  if (typeof old === 'boolean') return [...numbers, ...texts, null, ...others];
  if (Array.isArray(old)) return [...texts, true, null, {}, { 0: 3 }, ...(key === 'mm' ? [] : numbers)];
  return [...numbers, ...texts, true, null, []];
}

function makeHuge(job: unknown, random: Random): Mutation {
  const path = pick(
    listPlaces(job).filter((place) => typeof valueAt(job, place) === 'number'),
    random,
  );
  return changed(
    'huge',
    job,
    path,
    pick([1e308, -1e308, 1e18, -1e9, 5e-324 * -1, 1.7e308], random),
    (value) =>
      // A few signed fields hold a vanishing negative number.
      Math.abs(value) > 1,
  );
}

function dropField(job: unknown, random: Random): Mutation {
  const path = pick(listPlaces(job), random);
  const copy = structuredClone(job);
  const holder = valueAt(copy, path.slice(0, -1)) as Record<string | number, unknown>;
  const key = path.at(-1) as string | number;
  if (Array.isArray(holder)) holder.splice(Number(key), 1);
  else delete holder[key];
  const needed = path.length === 1 && (key === 'format' || key === 'version');
  return { kind: 'drop', bytes: encode(copy), mustFail: needed, path };
}

function nest(job: unknown, random: Random): Mutation {
  const depth = 1 + Math.floor(random.uniform() * 4000);
  const text = JSON.stringify(job).slice(0, -1);
  const inside = random.uniform() < 0.5 ? ['[', ']'] : ['{"a":', '}'];
  const bytes = new TextEncoder().encode(
    `${text},"deep":${inside[0].repeat(depth)}1${inside[1].repeat(depth)}}`,
  );
  return { kind: 'nest', bytes, mustFail: depth > 60, path: undefined };
}

function addUnknown(job: unknown, random: Random): Mutation {
  const holders = [[], ...listPlaces(job)].filter((path) => {
    const value = valueAt(job, path);
    return typeof value === 'object' && value !== null && !Array.isArray(value);
  });
  const path = [
    ...pick(holders, random),
    pick(['x-mine', 'Größe', '__proto__', 'toString', '', '🦷'], random),
  ];
  const copy = structuredClone(job);
  const holder = valueAt(copy, path.slice(0, -1)) as Record<string, unknown>;
  Object.defineProperty(holder, path.at(-1) as string, {
    value: pick([1, 'text', null, [1, [2]], { mm: '3' }], random),
    enumerable: true,
    configurable: true,
    writable: true,
  });
  return { kind: 'unknown', bytes: encode(copy), mustFail: false, path };
}

function truncate(job: unknown, random: Random): Mutation {
  const text = JSON.stringify(job, null, 2);
  const bytes = new TextEncoder().encode(text.slice(0, Math.floor(random.uniform() * (text.length - 1))));
  return { kind: 'truncate', bytes, mustFail: true, path: undefined };
}

function flipBytes(job: unknown, random: Random): Mutation {
  const bytes = encode(job);
  const count = 1 + Math.floor(random.uniform() * 4);
  for (let k = 0; k < count; k++) {
    bytes[Math.floor(random.uniform() * bytes.length)] = Math.floor(random.uniform() * 256);
  }
  return { kind: 'flip', bytes, mustFail: false, path: undefined };
}

function insertUnicode(job: unknown, random: Random): Mutation {
  const text = JSON.stringify(job);
  const at = Math.floor(random.uniform() * text.length);
  const strange = pick(
    ['\u00a0', '\u200b', '\ufeff', 'é', '🦷', '“', '\u0000', '\u2028', '٣', '\ud800'],
    random,
  );
  const bytes = new TextEncoder().encode(text.slice(0, at) + strange + text.slice(at));
  return { kind: 'unicode', bytes, mustFail: false, path: undefined };
}

function swapPieces(job: unknown, random: Random): Mutation {
  const text = JSON.stringify(job);
  const [a, b, c] = [random.uniform(), random.uniform(), random.uniform()]
    .map((part) => Math.floor(part * text.length))
    .sort((one, other) => one - other);
  const swapped = text.slice(0, a) + text.slice(b, c) + text.slice(a, b) + text.slice(c);
  return { kind: 'swap', bytes: new TextEncoder().encode(swapped), mustFail: false, path: undefined };
}

function changed(
  kind: string,
  job: unknown,
  path: Path,
  value: unknown,
  mustFail: boolean | ((value: number) => boolean),
): Mutation {
  const copy = structuredClone(job);
  (valueAt(copy, path.slice(0, -1)) as Record<string | number, unknown>)[path.at(-1) as string] = value;
  const fails = typeof mustFail === 'boolean' ? mustFail : mustFail(value as number);
  return { kind, bytes: encode(copy), mustFail: fails, path };
}

/** Every field and list entry of a value, by path. */
export function listPlaces(value: unknown, path: Path = []): Path[] {
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => {
    const place = [...path, Array.isArray(value) ? Number(key) : key];
    return [place, ...listPlaces(inner, place)];
  });
}

export function valueAt(root: unknown, path: Path): unknown {
  let value = root;
  for (const part of path) value = (value as Record<string | number, unknown>)[part];
  return value;
}

/**
 * What types each field has in the job that holds them all, by path without indices. A parsed job with another type
 * in one of these places was accepted in silence. Made from the example, not from the schema.
 */
const typesByPlace = new Map<string, Set<string>>();
for (const path of listPlaces(fullJob)) {
  const place = path.filter((part) => typeof part === 'string').join('.');
  const types = typesByPlace.get(place) ?? new Set();
  types.add(typeOf(valueAt(fullJob, path)));
  typesByPlace.set(place, types);
}
for (const types of typesByPlace.values()) if (types.has('null')) types.add('number');

/** Places of a parsed job that hold a type which the field never has. */
export function listWrongTypes(job: unknown): string[] {
  return listPlaces(job).flatMap((path) => {
    const place = path.filter((part) => typeof part === 'string').join('.');
    const known = typesByPlace.get(place);
    return !known || known.has(typeOf(valueAt(job, path))) ? [] : [place];
  });
}

function typeOf(value: unknown): string {
  if (value === null) return 'null';
  return Array.isArray(value) ? 'list' : typeof value;
}

function pick<T>(list: readonly T[], random: Random): T {
  return list[Math.floor(random.uniform() * list.length)];
}

function encode(value: unknown): Uint8Array {
  return new TextEncoder().encode(JSON.stringify(value));
}
