export type Path = readonly (string | number)[];

/**
 * A place in a job as a person writes it.
 *
 * @example formatPath(['wheels', 0, 'readings', 2, 'mm']) = 'wheels[0].readings[2].mm'
 */
export function formatPath(path: Path): string {
  let text = '';
  for (const part of path) {
    if (typeof part === 'number') text += `[${part}]`;
    else if (/^[A-Za-z_$][\w$-]*$/.test(part)) text += text === '' ? part : `.${part}`;
    else text += `[${JSON.stringify(part.length > 40 ? `${part.slice(0, 40)}…` : part)}]`;
  }
  return text;
}
