import {
  capitalize,
  type SubstituteRow,
  type SubstitutesReport,
  type TrainRow,
  type TrainsReport,
} from '../index.ts';
import { wrapText } from './wrap-text.ts';

/** What fits, wheel by wheel: what works first, each with what to do and to check, then the traps. 80 columns at most. */
export function reportSubstitutes(report: SubstitutesReport): string[] {
  return [
    ...tellWheels(report),
    ...(report.trains ? tellTrains(report.trains) : []),
    ...(report.notes.length === 0
      ? []
      : ['', ...report.notes.flatMap((note) => wrapText(`${capitalize(note)}.`))]),
  ];
}

function tellWheels(report: SubstitutesReport): string[] {
  return report.wheels.flatMap((wheel, index) => {
    const head = [
      ...(index === 0 ? [] : ['']),
      ...wrapText(`${wheel.id}${wheel.name ? `, ${wheel.name}` : ''}`),
    ];
    if (!wheel.need)
      return [...head, ...wheel.notes.flatMap((note) => wrapText(`${capitalize(note)}.`, '  '))];
    const { spec, mates } = wheel.need;
    const against = mates.map(
      ({ id, centerMm, uMm }) => `${id} at ${centerMm.toFixed(2)} mm, give or take ${uMm.toFixed(2)}`,
    );
    return [
      ...head,
      ...wrapText(
        `Wanted: ${spec.teeth} teeth, module ${trim(spec.moduleMm)}, ${trim(spec.pressureAngleDeg)} degrees${against.length > 0 ? `, to run against ${against.join(' and ')}` : ''}.`,
        '  ',
      ),
      ...tellRows(
        'What works',
        wheel.rows.filter(({ fits }) => fits),
        shown,
      ),
      ...(wheel.rows.some(({ fits }) => fits) ? [] : ['', '  Nothing was found that goes in as it should.']),
      ...tellRows(
        'What comes near',
        wheel.rows.filter(({ fits }) => !fits),
        4,
      ),
      ...tellRows('Traps: they look like it', wheel.traps, 3),
      ...(wheel.notes.length === 0 ? [] : ['', '  To know']),
      ...wheel.notes.flatMap((note) => wrapText(`${capitalize(note)}.`, '    - ')),
    ];
  });
}

/** Rows of what works that a person reads; the rest is in the JSON. */
const shown = 8;

function tellRows(title: string, rows: readonly SubstituteRow[], most: number): string[] {
  if (rows.length === 0) return [];
  const more = rows.length - most;
  return [
    '',
    `  ${title}`,
    ...rows.slice(0, most).flatMap((row, index) => {
      const checks = checksOf(row);
      const like = rows.findIndex((one) => checksOf(one) === checks);
      return tellRow(row, `    ${index + 1}. `, checks === '' || like === index ? undefined : like + 1);
    }),
    ...(more > 0 ? [`    and ${more} more, with --json`] : []),
  ];
}

function tellTrains(trains: TrainsReport): string[] {
  const wanted = trains.isWanted ? 'the ratio that is wanted' : 'the ratio that the drive had';
  const proof =
    trains.space === 0
      ? 'No train of the wheels there are stands on these shafts'
      : trains.proven
        ? `Proven: of ${count(trains.space)} trains on these shafts none is nearer`
        : `Best so far: ${trains.searchedPercent.toFixed(0)} % of ${count(trains.space)} trains searched`;
  return [
    '',
    ...wrapText(
      `Trains that keep ${wanted}, shafts where they are; ${trains.changing.join(', ')} may change.`,
    ),
    ...wrapText(`${proof}.`, '  '),
    ...(trains.rows.length === 0 && trains.space > 0 ? ['  None was found.'] : []),
    ...trains.rows.slice(0, shown).flatMap((row, index) => tellTrain(row, `  ${index + 1}. `)),
    ...(trains.rows.length > shown ? [`  and ${trains.rows.length - shown} more, with --json`] : []),
    ...trains.notes.flatMap((note) => wrapText(`${capitalize(note)}.`, '  - ')),
  ];
}

function tellTrain(row: TrainRow, lead: string): string[] {
  const indent = ' '.repeat(lead.length);
  const error = Math.abs(row.errorPercent);
  const off =
    error < 5e-7
      ? 'the ratio exactly'
      : `${error.toFixed(error < 0.01 ? 5 : 3)} % ${row.errorPercent > 0 ? 'slower' : 'faster'}`;
  const parts = `${row.newParts} new ${row.newParts === 1 ? 'part' : 'parts'}`;
  const run = { turns: 'turns', rough: 'runs roughly', jams: 'jams' }[row.verdict];
  return [
    ...wrapText(
      `${capitalize(off)}, ${parts}, ${row.backlashMm.toFixed(2)} mm of play in all; rolled, it ${run}${row.fits || row.verdict !== 'turns' ? '' : ', but the speed is off by more than is wanted'}.`,
      lead,
    ),
    ...row.meshes.flatMap(({ driver, driven, centerMm }) =>
      wrapText(
        `${driver.wheelId}: ${driver.name}. ${driven.wheelId}: ${driven.name}. ${centerMm.toFixed(2)} mm apart.`,
        `${indent}- `,
      ),
    ),
  ];
}

/** A count that can be read aloud. */
function count(value: number): string {
  return value < 1e6 ? String(value) : `about ${value.toPrecision(2)}`;
}

function checksOf(row: SubstituteRow): string {
  return row.checks.map(({ words }) => words).join('; ');
}

/** @param like the number of the row that the same is to be checked on */
function tellRow(row: SubstituteRow, lead: string, like: number | undefined): string[] {
  const indent = ' '.repeat(lead.length);
  const isTrap = row.kind === 'look-alike';
  const price = row.part?.price ? `; ${row.part.price}` : '';
  const pack =
    row.from === 'range' && !isTrap && row.part?.count
      ? `; sold ${row.part.count === 1 ? 'singly' : `in bags of ${row.part.count}`}`
      : '';
  const kinds = {
    exact: 'goes on as it is',
    rework: 'the same wheel after some work',
    'other-teeth': 'other teeth that run here',
    'look-alike': 'will not do',
    made: 'to make',
    'made-to-distance': 'to make, fitted to the distance',
  } as const;
  const { speed } = row;
  const speeds =
    speed && !isTrap && Math.abs(speed.changePercent) > 1e-9
      ? [
          `Speed: ${Math.abs(speed.changePercent).toFixed(2)} % ${speed.changePercent > 0 ? 'faster' : 'slower'} than with the original${speed.isWithin === false ? ', which is not what is wanted' : ''}.`,
        ]
      : [];
  const isMade = row.from === 'made';
  return [
    ...wrapText(`${capitalize(row.name)}: ${kinds[row.kind]}${price}${pack}.`, lead),
    ...wrapText(`${capitalize(row.why)}.`, indent),
    ...speeds.flatMap((line) => wrapText(line, indent)),
    ...(row.kind === 'look-alike'
      ? []
      : row.reworks.flatMap(({ words }) => wrapText(`do: ${words}`, `${indent}- `))),
    ...row.doubts.flatMap((doubt) => wrapText(`mind: ${doubt}`, `${indent}- `)),
    ...(like === undefined
      ? row.checks.flatMap(({ words }) => wrapText(`check: ${words}`, `${indent}- `))
      : wrapText(`check: as ${like}`, `${indent}- `)),
    ...(row.from === 'range' && row.kind !== 'look-alike'
      ? wrapText(`search for: ${row.search}`, `${indent}- `)
      : []),
    ...(isMade
      ? wrapText(
          `fine enough: ${row.processes.map(({ name }) => name).join('; ') || 'no process that is listed'}`,
          `${indent}- `,
        )
      : []),
  ];
}

function trim(value: number): string {
  return String(Number(value.toFixed(4)));
}
