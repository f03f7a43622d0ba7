import { type Process, processes, usualProcess } from '../../gear-library/processes.ts';
import { Fail } from '../fail.ts';

/**
 * The process of a key, the usual one where none was said. Throws Fail `bad-usage` for a key that there is not.
 *
 * @param field what to name where the key is wrong
 */
export function findProcess(key: string = usualProcess, field = 'process'): Process {
  const found = processes.find((process) => process.key === key);
  if (found) return found;
  throw new Fail(
    'bad-usage',
    field,
    `no process is called "${key}"`,
    `Use one of: ${processes.map((process) => process.key).join(', ')}.`,
    { key },
  );
}
