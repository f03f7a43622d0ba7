import { materials, processes } from '../../index.ts';
import { splitMaterial } from '../maker/tell-made-by.ts';

/** What is kept of a machine is of one material, and is called after both. */
export function nameMachine(machine: string, material: string | undefined): string {
  const found = materials.find(({ key }) => key === material)?.name;
  return found === undefined ? machine : `${machine}, ${splitMaterial(found)[0]}`;
}

/** A machine that nobody has named is called after what it is. */
export function usualMachineName(process: string | undefined): string {
  return `my ${processes.find(({ key }) => key === process)?.name ?? 'machine'}`;
}
