import { type Material, materials } from '../../gear-library/materials.ts';

/**
 * The material that a person means by a key or a common name, in any case; undefined where none is held or nothing is
 * said. Nylon alone is taken for PA66, the commoner in gears.
 *
 * @example findMaterial('Acetal')?.key is 'pom'
 */
export function findMaterial(text: string | undefined): Material | undefined {
  const name = text?.trim().toLowerCase();
  return materials.find(({ key, alsoCalled }) => key === name || alsoCalled.some((other) => other === name));
}
