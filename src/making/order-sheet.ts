import { formatMm } from './format-mm.ts';
import type { MakingSheet } from './making-sheet.ts';

/** An order to a machine shop or print service: a line each, to print or to paste into a message. */
export interface OrderSheet {
  readonly subject: string;
  readonly rows: readonly { readonly what: string; readonly value: string }[];
  /** What must not happen to the part, and what decides whether it is taken */
  readonly terms: readonly string[];
}

/**
 * The order for so many pieces of a making sheet's part: how many, material, unit, the sizes that matter with their
 * limits, and what not to do. A count that is no whole number above 0 is a plain Error.
 */
export function writeOrder(sheet: MakingSheet, copies: number): OrderSheet {
  if (!Number.isInteger(copies) || copies < 1) throw new Error(`${copies} copies`);
  const { title, gearData, inspections, runout } = sheet;
  const read = (key: string): string => {
    const row = gearData.find((one) => one.key === key);
    if (!row) return '';
    return typeof row.value === 'number' ? String(Number(row.value.toFixed(row.digits))) : row.value;
  };
  const isRack = read('kind') === 'rack';
  const helix = read('hand') === 'spur' ? 'spur' : `helix ${read('helixAngle')} deg, ${read('hand')} hand`;
  return {
    subject: `${copies} x ${title.part} (${read('kind')}, ${read('teeth')} teeth, module ${read('module')} mm)`,
    rows: [
      { what: 'How many', value: String(copies) },
      { what: 'Part', value: `${title.part}, number ${title.number}, ${title.state}` },
      { what: 'Material', value: title.material.name },
      { what: 'Made by', value: title.process.name },
      { what: 'Unit', value: 'millimeters throughout' },
      {
        what: 'Teeth',
        value: `${read('teeth')}, module ${read('module')} mm, ${read('pressureAngle')} deg, ${helix}, profile shift ${read('profileShift')}`,
      },
      ...inspections.map(({ what, value, low, high, basis }) => ({
        what,
        value: `${formatMm(value)} mm (${formatMm(low)} to ${formatMm(high)}; ${basis})`,
      })),
      ...(isRack
        ? []
        : [{ what: 'Runout of the teeth', value: `at most ${formatMm(runout)} mm, against the bore` }]),
      { what: 'Flanks', value: sheet.flanks },
    ],
    terms: [
      'Do not scale the drawing or the file; the check bar on the sheet is 50 mm long.',
      'Do not repair, smooth or round the teeth; break sharp rims by 0.1 mm at most.',
      'Sizes with limits decide; what has none follows the gear data table.',
      'Teeth that are too thick jam: when in doubt, stay near the lower limit of the span.',
      'Ask before you change the material.',
    ],
  };
}
