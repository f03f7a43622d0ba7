import { capitalize, type DriveReport, type Job, type TrainDrawing } from '../../index.ts';
import type { Certainty } from '../slip/Verdict.tsx';
import { nameShaft, nameWheel } from '../words/name-wheel.ts';

/** What the train does, in one sentence, how sure that is, and what else stands. */
export interface TrainWords {
  readonly sentence: string;
  readonly certainty: Certainty;
  /** In place of the certainty's own word */
  readonly word: string;
  readonly more: readonly string[];
}

export function tellTrain(report: DriveReport, job: Job): TrainWords {
  const count = job.wheels?.length ?? 0;
  const { sentence, isKnown } = tellWhatItDoes(report, job, count);
  const more = tellWanted(report);
  const bad = report.meshes.find((mesh) => mesh.verdict === 'jams');
  if (bad) {
    const pair = `${nameWheel(job, bad.driver)} and ${nameWheel(job, bad.driven)}`;
    return {
      sentence: `It jams: ${pair} can't turn together.`,
      certainty: 'nothing-fits',
      word: 'rolled',
      more: [sentence, ...more],
    };
  }
  if (report.troubles.some((trouble) => trouble.kind === 'contradiction'))
    return {
      sentence: "These gears can't all turn together.",
      certainty: 'nothing-fits',
      word: 'worked out from the counts',
      more,
    };
  if (!isKnown) return { sentence, certainty: 'undecided', word: "can't tell yet", more };
  if (report.meshes.some((mesh) => mesh.verdict === 'rough'))
    return { sentence, certainty: 'likely', word: 'it runs rough', more };
  const rolled = report.meshes.filter((mesh) => mesh.verdict === 'turns').length;
  const toothed = report.meshes.filter((mesh) => mesh.kind === 'teeth').length;
  if (toothed === 0) return { sentence, certainty: 'likely', word: 'worked out from the counts', more };
  return rolled === toothed
    ? { sentence, certainty: 'certain', word: 'every pair rolled: it turns', more }
    : { sentence, certainty: 'likely', word: `${rolled} of ${toothed} pairs could be rolled`, more };
}

function tellWhatItDoes(
  report: DriveReport,
  job: Job,
  count: number,
): { readonly sentence: string; readonly isKnown: boolean } {
  const { ratio, from, to, travelMmPerTurn } = report;
  if (from !== null && travelMmPerTurn !== null) {
    const bar = report.racks.find((one) => one.id === to || one.travelMmPerTurn !== null);
    const name = bar ? nameWheel(job, bar.id) : 'the bar';
    return {
      sentence: `One turn of ${nameShaft(job, from)} moves ${name} ${tellNumber(Math.abs(travelMmPerTurn))} mm.`,
      isKnown: true,
    };
  }
  if (ratio && from !== null && to !== null) {
    const way =
      report.direction === null
        ? ''
        : report.direction === 'same'
          ? ', the same way round'
          : ', the other way round';
    const [a, b] = [nameShaft(job, from), nameShaft(job, to)];
    const sentence =
      ratio.value >= 1
        ? `${tellNumber(ratio.value)} ${ratio.value === 1 ? 'turn' : 'turns'} of ${a} give one turn of ${b}${way}.`
        : `One turn of ${a} gives ${tellNumber(1 / ratio.value)} turns of ${b}${way}.`;
    return { sentence, isKnown: true };
  }
  if (count === 0) return { sentence: 'No gear yet.', isKnown: false };
  if (count === 1) return { sentence: "One gear alone: it can't drive anything yet.", isKnown: false };
  return { sentence: "Can't tell yet what it does.", isKnown: false };
}

function tellWanted({ wanted }: DriveReport): string[] {
  if (!wanted) return [];
  const { errorPercent, within, directionHolds, effects, tolerancePercent } = wanted;
  const way = directionHolds === false ? ['It turns the wrong way round.'] : [];
  if (Math.abs(errorPercent) < 1e-9) return ['That is what is wanted, exactly.', ...way];
  const size = `${Number(Math.abs(errorPercent).toPrecision(3))} % ${errorPercent > 0 ? 'slower' : 'faster'} than wanted`;
  const judged = within
    ? `near enough: ${tellNumber(tolerancePercent)} % is allowed`
    : `too much: ${tellNumber(tolerancePercent)} % is allowed`;
  return [
    `${capitalize(size)}, ${judged}.`,
    ...effects.slice(0, 2).map((one) => `${capitalize(one.words)}.`),
    ...way,
  ];
}

/** What stands at a post of the drawing: what sits there, and how fast it turns. */
export function tellPost(
  post: TrainDrawing['posts'][number],
  drawing: TrainDrawing,
  job: Job,
): { readonly name: string; readonly speed: string } {
  const name = post.wheels.map((id) => nameWheel(job, id)).join(', ') || post.id;
  const wheels = drawing.wheels.filter((wheel) => post.wheels.includes(wheel.id));
  const bar = wheels.find((wheel) => wheel.form === 'rack');
  if (bar) return { name, speed: bar.travel === null ? '' : `${tellNumber(Math.abs(bar.travel))} mm a turn` };
  const speeds = [...new Set(wheels.flatMap((wheel) => (wheel.rpm === null ? [] : [tellSpeed(wheel.rpm)])))];
  if (speeds.length > 0) return { name, speed: `${speeds.join(', ')} rpm` };
  const turns = wheels.find((wheel) => wheel.turns !== null)?.turns;
  if (turns == null) return { name, speed: '' };
  const count = tellNumber(Math.abs(turns));
  return { name, speed: count === '1' ? '1 turn' : `${count} turns` };
}

function tellSpeed(rpm: number): string {
  return String(Number(Math.abs(rpm).toPrecision(4)));
}

/** Four digits that matter, no more zeros than needed. */
export function tellNumber(value: number): string {
  return String(Number(value.toPrecision(5)));
}
