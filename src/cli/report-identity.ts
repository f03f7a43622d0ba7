import {
  type CandidateReport,
  capitalize,
  findPitchGap,
  type IdentityReport,
  type Job,
  namePitch,
  nameReading,
  tellAngleOdds,
  tellAnswerOdds,
  tellOdds,
  tellSlip,
  type WheelReport,
} from '../index.ts';
import { wrapText } from './wrap-text.ts';

/**
 * What the wheels are, how sure that is, what does not agree and what to measure next: plain text, 80 columns at
 * most. The expected value of a reading is shown for readings that were taken, never for one still to come.
 */
export function reportIdentity(report: IdentityReport, job: Job): string[] {
  const lines = report.wheels.flatMap((wheel) => [...reportWheel(wheel, job), '']);
  return lines.slice(0, -1);
}

function reportWheel(wheel: WheelReport, job: Job): string[] {
  const lead = wheel.candidates[0];
  return [
    ...wrapText(`${wheel.name === undefined ? wheel.id : `${wheel.id}, ${wheel.name}`}`),
    ...tellAnswer(wheel, lead).flatMap((sentence) => wrapText(sentence, '  ')),
    ...section('It could also be', listRivals(wheel)),
    ...section('Readings', lead ? tabulateReadings(wheel, lead, job) : []),
    ...section(
      "Doesn't agree",
      wheel.suspect.flatMap((one) => wrapText(tellSlip(wheel, one, job), '    ')),
    ),
    ...section(
      wheel.verdict === 'certain' ? 'Nothing more is needed for the size. For the rest' : 'Measure next',
      listNext(wheel),
    ),
    ...section(
      undefined,
      tellEnding(wheel).flatMap((sentence) => wrapText(sentence, '  ')),
    ),
    ...section(
      undefined,
      wheel.notes.flatMap((note) => wrapText(`Note: ${note}.`, '  ')),
    ),
  ];
}

/** A blank line, a title and its lines; nothing where there are no lines. */
function section(title: string | undefined, lines: readonly string[]): string[] {
  if (lines.length === 0) return [];
  return ['', ...(title === undefined ? [] : [`  ${title}`]), ...lines];
}

function tellAnswer(wheel: WheelReport, lead: CandidateReport | undefined): string[] {
  if (!lead && wheel.verdict === 'nothing-fits') {
    return [
      'No gear I know gives these readings.',
      'They contradict each other: take them again, one by one.',
    ];
  }
  if (!lead && wheel.pitch.length > 0) {
    const [pitch] = wheel.pitch;
    return [
      `Can't tell yet how many teeth. Its mates say ${namePitch(pitch)}: ${tellOdds(pitch.probability)}.`,
    ];
  }
  if (!lead) return [wheel.ending === 'stop-here' ? 'Stop here.' : "Can't tell yet."];
  if (wheel.verdict === 'nothing-fits') {
    return [
      'No gear I know gives these readings.',
      `The nearest would be ${namePitch(lead)}, ${lead.teeth} teeth. Look at the readings again.`,
    ];
  }
  const pitch = wheel.pitch[0];
  const odds = tellAnswerOdds(wheel);
  const size = `${namePitch(pitch)}, ${lead.teeth} teeth`;
  const how =
    wheel.verdict === 'undecided'
      ? `Can't tell yet. Most likely ${size}: ${odds}.`
      : `${capitalize(size)}: ${wheel.verdict}, ${odds}.`;
  return [how, tellAngle(wheel, lead), tellSizes(lead), ...tellSameTeeth(wheel)];
}

function tellAngle(wheel: WheelReport, lead: CandidateReport): string {
  return `Flanks at ${lead.pressureAngleDeg} degrees (pressure angle): ${tellAngleOdds(wheel)}.`;
}

function tellSizes(lead: CandidateReport): string {
  const { tipDiameterMm: tip, rootDiameterMm: root, referenceDiameterMm: reference } = lead.derived;
  const parts: string[] = [];
  if (tip !== null) parts.push(`across the tips ${tip.toFixed(2)} mm`);
  if (root !== null) parts.push(`bottom of the teeth ${root.toFixed(2)} mm`);
  if (reference !== null) parts.push(`reference circle ${reference.toFixed(2)} mm`);
  if (parts.length === 0) parts.push(`tooth to tooth ${(lead.moduleMm * Math.PI).toFixed(3)} mm`);
  const shift = lead.spec.profileShift;
  const { profileShift: doubt } = lead.specU;
  const kind = shift > 0 ? 'fat teeth' : 'thin teeth';
  if (Math.abs(shift) >= 0.05) {
    const signed = `${shift > 0 ? '+' : '-'}${Math.abs(shift).toFixed(2)}`;
    parts.push(`${kind}, ${signed} (profile shift), give or take ${doubt.toFixed(2)}`);
  }
  return `As made: ${parts.join('; ')}.`;
}

function tellSameTeeth(wheel: WheelReport): string[] {
  const same = wheel.sameTeeth.find((group) => group.includes(0));
  if (!same) return [];
  const names = same.slice(0, 3).map((index) => nameCandidate(wheel.candidates[index]));
  return [`${capitalize(joinWords(names))} are names for the same teeth: it makes no difference which.`];
}

/** Rivals that a person could still meet: one in two hundred and more, six at most. */
function listRivals(wheel: WheelReport): string[] {
  if (wheel.verdict === 'nothing-fits') return [];
  return wheel.candidates
    .slice(1, 7)
    .filter((candidate) => candidate.probability >= 0.005)
    .flatMap((candidate) =>
      wrapText(`${nameCandidate(candidate)}: ${tellOdds(candidate.probability)}`, '    '),
    );
}

function nameCandidate(candidate: CandidateReport): string {
  return `${namePitch(candidate)}, ${candidate.teeth} teeth, ${candidate.pressureAngleDeg} degrees`;
}

function tabulateReadings(wheel: WheelReport, lead: CandidateReport, job: Job): string[] {
  const readings = job.wheels?.find((one) => one.id === wheel.id)?.readings ?? [];
  const suspects = new Set(wheel.suspect.map((one) => one.reading));
  const rows = lead.residuals.map((residual) => {
    const reading = readings[residual.reading];
    const name = nameReading(reading?.of === undefined ? residual : { ...reading, of: reading.of });
    const off = Math.abs(residual.read - residual.expected);
    const doubt = residual.sigmas === 0 ? 0 : off / Math.abs(residual.sigmas);
    const words = doubt < 0.005 ? '' : `give or take ${doubt.toFixed(2)}`;
    return [
      name.length > widestName ? `${name.slice(0, widestName - 1)}…` : name,
      residual.read.toFixed(2),
      residual.expected.toFixed(2),
      suspects.has(residual.reading) ? "doesn't agree" : words,
    ];
  });
  if (rows.length === 0) return [];
  const named = Math.max(...rows.map((row) => row[0].length));
  const figures = Math.max(8, ...rows.flatMap((row) => [row[1].length, row[2].length]));
  const head = `    ${' '.repeat(named)}  ${'read'.padStart(figures)}  ${'expected'.padStart(figures)}   mm`;
  return [
    head,
    ...rows.map(([name, read, expected, words]) =>
      `    ${name.padEnd(named)}  ${read.padStart(figures)}  ${expected.padStart(figures)}   ${words}`.trimEnd(),
    ),
  ];
}

// Leaves room for two figures and the words behind them within 80 columns.
const widestName = 34;

/** What tells most, three at most, with why; nothing that would tell next to nothing. */
function listNext(wheel: WheelReport): string[] {
  const worth = wheel.next
    .filter((one) => one.gainBits >= leastGain || one.of === 'teeth' || asksForLost.has(one.of))
    .slice(0, asksForLost.has(wheel.next[0]?.of ?? '') ? 6 : 3);
  return worth.flatMap((one, index) =>
    wrapText(`${capitalize(nameNext(one))}: ${one.why}.`, `    ${index + 1}. `),
  );
}

/** Asked whatever they tell of the size: what was lost has to be known in other ways too. */
const asksForLost: ReadonlySet<string> = new Set(['crumbs', 'post', 'neighbors', 'rows', 'speed-wanted']);

function nameNext(next: WheelReport['next'][number]): string {
  return next.wheel === undefined ? nameReading(next) : `on ${next.wheel}, ${nameReading(next)}`;
}

// Below this a reading changes the odds by less than the words for them can say.
const leastGain = 0.02;

function tellEnding(wheel: WheelReport): string[] {
  const far = 'This is as far as your tools can tell.';
  switch (wheel.ending) {
    case 'same-teeth':
      return [`${far} Two names, same teeth: it makes no difference.`];
    case 'either-runs-slowly':
      return [
        `${far} They differ by ${findPitchGap(wheel).toFixed(3)} mm from tooth to tooth: either will run slowly. That is a judgment from the numbers; nothing was rolled.`,
      ];
    case 'make-both':
      return [
        `${far} Make both and try: "sparetooth make" writes a trial plate. Roll each gear on it by hand against the mate, and put into the job whether it felt smooth, bumps or jams (hand-roll).`,
      ];
    case 'stop-here':
      return wheel.candidates.length === 0
        ? []
        : [
            'Stop here. With these tools nothing more can be learned about this gear. A scan, a gear of the same kind from another machine, or its maker would tell more.',
          ];
    default:
      return [];
  }
}

function joinWords(words: readonly string[]): string {
  return words.length < 2 ? (words[0] ?? '') : `${words.slice(0, -1).join('; ')} and ${words.at(-1)}`;
}
