import { type Caution, cautions } from '../../gear-library/cautions.ts';

/** What can hurt someone who makes a part that way of that material, those that always hold first. */
export function listCautions(process: string, material: string): readonly Caution[] {
  const holds = ({ when }: Caution): boolean =>
    'always' in when ||
    ('processes' in when ? when.processes.includes(process) : when.materials.includes(material));
  return [...cautions].filter(holds).sort((a, b) => Number('always' in b.when) - Number('always' in a.when));
}
