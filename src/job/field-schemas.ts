import { z } from 'zod/mini';
import { counts, type Limit, type LimitKey, limits } from './limits.ts';

// No code is generated at run time: a page with a strict content policy reads jobs too.
z.config({ jitless: true });

/**
 * A schema's type without the index signature of loose objects: unknown fields are kept in the value, but code that
 * reads a job sees the known ones only, and readings can be told apart by `of`.
 */
export type Known<T> = T extends readonly unknown[]
  ? { readonly [I in keyof T]: Known<T[I]> }
  : T extends object
    ? { readonly [K in keyof T as string extends K ? never : K]: Known<T[K]> }
    : T;

/** A number within a limit; the limit's key travels with the refusal, so that its reason can be told. */
export function numberWithin(key: LimitKey): z.ZodMiniNumber<number> {
  const limit: Limit = limits[key];
  return z
    .number()
    .check(z.refine((value) => isWithin(value, limit), { params: { limit: key }, abort: true }));
}

/** One length, or several takings of it. */
export function takings(
  key: LimitKey,
): z.ZodMiniUnion<readonly [z.ZodMiniNumber<number>, z.ZodMiniArray<z.ZodMiniNumber<number>>]> {
  return z.union([
    numberWithin(key),
    z.array(numberWithin(key)).check(z.minLength(1), z.maxLength(counts.takings.greatest)),
  ]);
}

/** A name that other fields point to: 1 to 100 characters, none of them a control character. */
export const identifier = z
  .string()
  .check(z.minLength(1), z.maxLength(counts.idLength.greatest), z.regex(/^\P{Cc}+$/u));

function isWithin(value: number, limit: Limit): boolean {
  return value >= limit.least && value <= limit.greatest && (!limit.whole || Number.isInteger(value));
}
