import { Fail } from '../fail.ts';

/**
 * The tooth counts that a person allows, ascending, each once: a range `12-120`, a list `20, 24, 30`, or both mixed.
 *
 * Throws Fail `bad-value` where the text holds anything else, a range runs backward, or a count is not from 1 (a worm
 * of one start) to 2000.
 *
 * @param field what the text was typed into, for the message
 * @example parseCounts('20, 24-26') = [20, 24, 25, 26]
 */
export function parseCounts(text: string, field = ''): number[] {
  if (text.length > longest) throw refuse(text, field, 'the text is too long for a list of tooth counts');
  const counts = new Set<number>();
  const parts = text
    .trim()
    .replace(/\s*[-–]\s*/g, '-')
    .split(/[,;\s]+/);
  for (const part of parts) {
    const [, from, to = from] = /^(\d{1,6})(?:-(\d{1,6}))?$/.exec(part) ?? [];
    if (from === undefined)
      throw refuse(text, field, `"${part.slice(0, 24)}" is no tooth count and no range`);
    const [least, greatest] = [Number(from), Number(to)];
    if (least > greatest)
      throw refuse(text, field, `the range ${part} runs backward: the smaller count comes first`);
    if (least < 1) throw refuse(text, field, 'a wheel has one tooth at least');
    if (greatest > most) throw refuse(text, field, `${greatest} teeth are more than ${most}`);
    for (let count = least; count <= greatest; count++) counts.add(count);
  }
  return [...counts].sort((a, b) => a - b);
}

// The largest dividing wheels have about as many.
const most = 2000;

const longest = 2000;

function refuse(text: string, field: string, message: string): Fail {
  return new Fail(
    'bad-value',
    field,
    message,
    'Give a range such as 12-120, or counts such as 20,24,30-40.',
    {
      typed: text.slice(0, longest),
    },
  );
}
