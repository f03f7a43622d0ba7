import type { PairChoice } from './list-half.ts';

interface NamedChoice {
  readonly driver: number;
  readonly driven: number;
  readonly newWheels: readonly string[];
  readonly takes?: readonly string[];
}

/** The choices of all posts with numbers in place of names: the same name, the same number, on every post. */
export function numberWheels(
  posts: readonly (readonly NamedChoice[])[],
): (PairChoice & { readonly takes: readonly number[] })[][] {
  const numbers = new Map<string, number>();
  const numberOf = (name: string): number => {
    const known = numbers.get(name) ?? numbers.size;
    numbers.set(name, known);
    return known;
  };
  return posts.map((choices) =>
    choices.map(({ driver, driven, newWheels, takes = [] }) => ({
      driver,
      driven,
      newWheels: newWheels.map(numberOf),
      takes: takes.map(numberOf),
    })),
  );
}
