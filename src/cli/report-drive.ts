import { capitalize, type DriveReport, type Job } from '../index.ts';
import { wrapText } from './wrap-text.ts';

type MeshReport = DriveReport['meshes'][number];

/**
 * What the drive does, in sentences that can be read aloud: what is wrong first, then the ratio, how it stands to what
 * was wanted, every shaft, every mesh. Plain text, 80 columns at most.
 */
export function reportDrive(report: DriveReport, job: Job): string[] {
  const nameOf = (id: string): string => {
    const name = job.wheels?.find((wheel) => wheel.id === id)?.name;
    return name === undefined ? id : `${id} (${name})`;
  };
  return [
    ...(job.title === undefined ? [] : wrapText(job.title)),
    ...report.troubles.flatMap(({ message, remedy }) => [
      ...wrapText(`${capitalize(message)}.`, '  '),
      ...wrapText(remedy, '    '),
    ]),
    ...tellRatio(report).flatMap((sentence) => wrapText(sentence, '  ')),
    ...tellWanted(report).flatMap((sentence) => wrapText(sentence, '  ')),
    ...section('Shafts', report.shafts.flatMap(tellShaft)),
    ...section('Bars', report.racks.flatMap(tellRack)),
    ...section(
      'Meshes',
      report.meshes.flatMap((mesh) => tellMesh(mesh, nameOf)),
    ),
    ...section(
      undefined,
      report.notes.flatMap((note) => wrapText(`Note: ${note}.`, '  ')),
    ),
  ];
}

/** A blank line, a title and its lines; nothing where there are no lines. */
function section(title: string | undefined, lines: readonly string[]): string[] {
  if (lines.length === 0) return [];
  return ['', ...(title === undefined ? [] : [`  ${title}`]), ...lines];
}

function tellRatio(report: DriveReport): string[] {
  const { ratio, from, to, travelMmPerTurn, direction } = report;
  if (travelMmPerTurn !== null) return [`One turn of ${from} moves ${to} by ${tell(travelMmPerTurn)} mm.`];
  if (!ratio) return ["The ratio can't be said yet."];
  const how =
    direction === null ? '' : direction === 'same' ? ', the same way round' : ', the other way round';
  const exactly = ratio.num === null || ratio.den === 1 ? '' : ` (exactly ${ratio.num} to ${ratio.den})`;
  return [
    ratio.value >= 1
      ? `${capitalize(turns(ratio.value))} of ${from} for one of ${to}${exactly}${how}.`
      : `One turn of ${from} for ${tell(1 / ratio.value)} of ${to}${exactly}${how}.`,
  ];
}

function turns(value: number): string {
  return value === 1 ? 'one turn' : `${tell(value)} turns`;
}

function tellWanted({ wanted }: DriveReport): string[] {
  if (!wanted) return [];
  const { errorPercent, tolerancePercent, within, directionHolds, effects } = wanted;
  const size = tell(Math.abs(errorPercent));
  const off = `${size} % ${errorPercent > 0 ? 'slow' : 'fast'}`;
  const found = within
    ? `That is within the ${tolerancePercent} % allowed of what was wanted: ${off}.`
    : `That is not what was wanted: ${off}, where ${tolerancePercent} % is allowed.`;
  return [
    effects.length === 0 ? 'That is exactly what was wanted.' : found,
    ...(effects.length === 0 ? [] : [`It comes to: ${effects.map((effect) => effect.words).join('; ')}.`]),
    ...(directionHolds === false ? ['It turns the wrong way round.'] : []),
  ];
}

function tellShaft(shaft: DriveReport['shafts'][number]): string[] {
  const parts: string[] = [];
  if (shaft.rpm !== null) parts.push(`${tell(Math.abs(shaft.rpm))} turns a minute`);
  else if (shaft.turns) parts.push(`${turns(Math.abs(shaft.turns.value))} for one of the input`);
  if (shaft.turns && shaft.turns.value === 0) return wrapText(`${shaft.id}: stands still`, '    ');
  if (shaft.turns && shaft.turns.value < 0) parts.push('backward');
  if (shaft.turns && !shaft.isDirectionKnown) parts.push('either way round');
  if (shaft.torqueNmm !== null) parts.push(`${tell(shaft.torqueNmm)} N mm with the motor at standstill`);
  if (shaft.runningTorqueNmm !== null) parts.push(`${tell(shaft.runningTorqueNmm)} N mm at its speed`);
  if (shaft.travelMmPerTurn !== undefined)
    parts.push(`a turn of it moves the bar ${tell(shaft.travelMmPerTurn)} mm`);
  return wrapText(`${shaft.id}: ${parts.length === 0 ? 'speed not known' : parts.join(', ')}`, '    ');
}

function tellRack(rack: DriveReport['racks'][number]): string[] {
  const { travelMmPerTurn: travel, mmPerMinute } = rack;
  if (travel === null) return wrapText(`${rack.id}: travel not known`, '    ');
  const speed = mmPerMinute === null ? '' : `, ${tell(mmPerMinute)} mm a minute`;
  return wrapText(`${rack.id}: ${tell(travel)} mm for one turn of the input${speed}`, '    ');
}

const verdicts = { turns: 'turns', rough: 'runs rough', jams: 'jams' } as const;
const ways = { teeth: '', worm: ', worm and wheel', belt: ' by a belt' } as const;

function tellMesh(mesh: MeshReport, nameOf: (id: string) => string): string[] {
  const apart = mesh.centerMm === null ? '' : `, ${tell(mesh.centerMm)} mm apart`;
  const verdict = mesh.verdict === null ? '' : `: ${verdicts[mesh.verdict]}`;
  return [
    ...wrapText(
      `${nameOf(mesh.driver)} drives ${nameOf(mesh.driven)}${ways[mesh.kind]}${apart}${verdict}.`,
      '    ',
    ),
    ...tellFigures(mesh).flatMap((sentence) => wrapText(sentence, '      ')),
    ...mesh.notes.flatMap((note) => wrapText(`${capitalize(note)}.`, '      ')),
  ];
}

function tellFigures(mesh: MeshReport): string[] {
  const { backlashMinMm: least, backlashMaxMm: greatest, range, contactRatio, transmissionErrorMm } = mesh;
  if (mesh.verdict === null || mesh.verdict === 'jams' || least === null) return [];
  return [
    `Play ${tellSpan(least, greatest)} (backlash)${tellRange(range)}.`,
    ...(contactRatio === null ? [] : [`Teeth that share the load: ${tell(contactRatio)} (contact ratio).`]),
    ...(transmissionErrorMm === null
      ? []
      : [`Unevenness ${tellFine(transmissionErrorMm)} mm (transmission error).`]),
  ];
}

function tellRange(range: MeshReport['range']): string {
  if (!range || range.backlashMinMm === null || range.centerLeastMm === range.centerGreatestMm) return '';
  if (range.backlashMinMm < 0) return ', none where the shafts stand nearer than measured, as they may';
  return `, ${tellSpan(range.backlashMinMm, range.backlashMaxMm)} as far as the distance may be off`;
}

function tellSpan(least: number, greatest: number | null): string {
  if (greatest === null) return `${tellFine(least)} mm and more`;
  const [one, other] = [tellFine(least), tellFine(greatest)];
  return one === other ? `${one} mm` : `${one} to ${other} mm`;
}

/** Thousandths of a millimeter: finer than any play at a bench. */
function tellFine(value: number): string {
  return Math.abs(value) < 0.001 ? 'under 0.001' : value.toFixed(3);
}

/** Four figures; six from a thousand on. */
function tell(value: number): string {
  const rounded = Number(value.toPrecision(Math.abs(value) >= 1000 ? 6 : 4));
  return String(Math.abs(rounded) < 1e-6 ? 0 : rounded);
}
