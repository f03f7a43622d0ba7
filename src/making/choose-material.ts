import { type Material, materials } from '../../gear-library/materials.ts';
import type { Process } from '../../gear-library/processes.ts';
import { Fail } from '../fail.ts';
import { findMaterial } from '../strength/find-material.ts';

/** The material of a key or common name. Throws Fail `bad-value` for one that there is not. */
export function readMaterial(key: string): Material {
  const found = findMaterial(key);
  if (found) return found;
  throw new Fail(
    'bad-value',
    'material',
    `no material is called "${key}"`,
    `Use one of: ${materials.map((material) => material.key).join(', ')}.`,
    { key },
  );
}

/** The old wheel's own material where the process makes gears of it, else the first that it makes gears of. */
export function chooseUsualMaterial(old: Material | undefined, process: Process): Material {
  if (old && process.materials.includes(old.key)) return old;
  const first = findMaterial(process.materials[0]);
  if (!first) throw new Error(`no material for ${process.key}`);
  return first;
}
