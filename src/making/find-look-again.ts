import { lookAgain } from '../../gear-library/lasting.ts';

/** How long a material is to be trusted before someone looks again, and why. A plain Error for a key that is none. */
export function findLookAgain(material: string): (typeof lookAgain)[number] {
  const found = lookAgain.find(({ materials }) => materials.includes(material));
  if (found) return found;
  throw new Error(`nothing says when to look at ${material} again`);
}
