import { type MadePart, type PartFormat, type SheetFormat, tellDesign } from '../index.ts';
import { wrapText } from './wrap-text.ts';

/** What was made: the files and whom they are for, whether it is a part or one to try, and every warning. 80 columns at most. */
export function reportPart(
  part: Omit<MadePart, 'files'> & {
    readonly files: readonly { readonly format: PartFormat | SheetFormat }[];
  },
  paths: readonly string[],
): string[] {
  const { spec } = part;
  const what = part.isTrial ? 'trial part' : 'part';
  const size = `${spec.teeth} teeth, module ${Number(spec.moduleMm.toFixed(4))} mm, ${spec.pressureAngleDeg} degrees`;
  const [, ...others] = part.wheelIds;
  const joined = others.length === 0 ? '' : `, one piece with ${others.join(' and ')}`;
  return [
    ...wrapText(`${part.wheelId}: a ${what} of ${size}${joined}.`),
    ...paths.map((path) => `  ${path}`),
    ...[...new Set(part.files.map(({ format }) => format))].flatMap(({ extension, forWhom }) =>
      wrapText(forWhom, `  .${extension}: `),
    ),
    ...tellMarks(part),
    ...tellChanges(part),
    ...(part.warnings.length === 0 ? [] : ['', 'Before you make it']),
    ...part.warnings.flatMap((warning) => wrapText(warning, '  - ')),
  ];
}

function tellMarks(part: Pick<MadePart, 'trialPlate'>): string[] {
  if (!part.trialPlate) return [];
  return [
    '',
    ...wrapText('The trial plate holds thin gears to roll by hand against the mate:'),
    ...part.trialPlate.marks.flatMap(({ mark, what }) => wrapText(`${mark}: ${what}`, '  ')),
  ];
}

function tellChanges({ design }: Pick<MadePart, 'design'>): string[] {
  if (!design) return [];
  const { lead, made, left } = tellDesign(design);
  const list = (head: string, lines: readonly string[]): string[] =>
    lines.length === 0 ? [] : ['', head, ...lines.flatMap((line) => wrapText(line, '  - '))];
  return [
    '',
    ...lead.flatMap((line) => wrapText(line)),
    ...list('Changed, so that it lasts', made),
    ...list('Left as it was', left),
    ...list('Take care', design.cautions),
  ];
}
