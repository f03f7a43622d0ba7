import {
  capitalize,
  type FindTrainsOptions,
  type FoundTrain,
  type TrainAnswer,
  tellSpeedError,
} from '../index.ts';
import { wrapText } from './wrap-text.ts';

/** What was found besides the answer, and is worth a sentence. */
interface Besides {
  /** Of one pair fewer, and as near */
  readonly shorter?: FoundTrain;
  /** Where none came within the tolerance */
  readonly nearest?: FoundTrain;
}

/** Trains for a person, as sentences that can be read aloud: plain text, 80 columns at most. */
export function reportTrains(answer: TrainAnswer, options: FindTrainsOptions, besides: Besides): string[] {
  const { trains } = answer;
  const isPaired = options.reverted === true || options.hunting === true;
  const allExact = trains.length > 1 && trains.every(({ errorRelative }) => errorRelative === 0);
  return [
    ...wrapText(`${capitalize(tellPairs(options))}, for a ratio of ${options.ratio}${tellTurns(answer)}.`),
    '',
    ...(trains.length === 0 ? wrapText(tellNone(answer, options, besides), '  ') : []),
    ...(allExact ? [...wrapText(`These ${trains.length} are all exact:`, '  ')] : []),
    ...trains.flatMap((train, k) => {
      const lead = `  ${String(k + 1).padStart(String(trains.length).length)}. `;
      const ratio = allExact ? '' : `: ${tellRatio(train)}, ${tellSpeedError(train.errorRelative)}`;
      return wrapText(`${tellWheels(train, isPaired)}${ratio}.`, lead);
    }),
    ...(trains.length === 0 ? [] : ['', ...tellStanding(answer, options, besides)]),
  ];
}

/** `about 49 billion`: as few figures as tell the size. */
export function tellCount(count: number): string {
  if (count < 1_000_000) return String(count).replace(/\B(?=(\d{3})+$)/g, ',');
  const [size, name] = sizes.find(([least]) => count >= least) ?? [1, ''];
  const figures = count / size;
  return figures < 1000
    ? `about ${figures < 10 ? Number(figures.toFixed(1)) : Math.round(figures)} ${name}`
    : `about 10 to the power ${Math.round(Math.log10(count))}`;
}

const sizes: readonly (readonly [number, string])[] = [
  [1e15, 'thousand trillion'],
  [1e12, 'trillion'],
  [1e9, 'billion'],
  [1e6, 'million'],
];

/** A share as percent, never rounded up to all or down to nothing. */
export function tellShare(share: number): string {
  const percent = 100 * share;
  if (percent < 0.1) return 'less than 0.1 %';
  return `${percent < 10 ? percent.toFixed(1) : Math.min(99, Math.floor(percent))} %`;
}

function tellPairs({ pairs, teeth, reverted, hunting }: FindTrainsOptions): string {
  const count = numbers[Number(pairs) - 1];
  const range =
    typeof teeth === 'string' ? teeth.trim().replace(/^(\d+)\s*[-–]\s*(\d+)$/, '$1 to $2') : teeth.join(', ');
  const wheels = `${count} ${count === 'one' ? 'pair' : 'pairs'} of ${range} teeth`;
  const onAxes = reverted ? ', all on the same two axes' : '';
  return `${wheels}${onAxes}${hunting ? ', no pair with a common factor' : ''}`;
}

const numbers = ['one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight'];

function tellTurns({ trains }: TrainAnswer): string {
  const [train] = trains;
  if (!train) return '';
  const { num, den } = train.ratio;
  const wanted = num / den / (1 + train.errorRelative);
  if (wanted === 1) return ': input and output turn alike';
  const turns = Number((wanted > 1 ? wanted : 1 / wanted).toPrecision(10));
  const [fast, slow] = wanted > 1 ? ['input', 'output'] : ['output', 'input'];
  return `: the ${fast} turns ${turns} times while the ${slow} turns once`;
}

function tellWheels({ drivers, driven }: FoundTrain, isPaired: boolean): string {
  if (isPaired || drivers.length === 1) {
    return listWords(drivers.map((driver, k) => `${driver} drives ${driven[k]}`));
  }
  return `${listWords(drivers)} drive ${listWords(driven)}`;
}

function listWords(words: readonly (string | number)[]): string {
  const last = words[words.length - 1];
  return words.length === 1 ? String(last) : `${words.slice(0, -1).join(', ')} and ${last}`;
}

function tellRatio({ ratio: { num, den } }: FoundTrain): string {
  if (den === 1) return String(num);
  const value = num / den;
  return value >= 1 ? String(Number(value.toPrecision(8))) : `1 to ${Number((1 / value).toPrecision(8))}`;
}

function tellStanding(answer: TrainAnswer, options: FindTrainsOptions, { shorter }: Besides): string[] {
  const { proven, trains, space, searched } = answer;
  const asked = Number(options.top ?? 20);
  const sentences = [
    proven
      ? `Proven: of ${tellCount(space)} such trains none is better.`
      : `Best so far: ${tellShare(searched)} of ${tellCount(space)} such trains was searched.`,
    ...(proven && trains.length < asked ? ['There are no others.'] : []),
    ...(options.reverted || options.hunting || Number(options.pairs) === 1
      ? []
      : ['Any of the drivers may turn any of the driven.']),
    ...(shorter
      ? [
          `One pair fewer does as well: ${tellWheels(shorter, options.reverted === true || options.hunting === true)}.`,
        ]
      : []),
  ];
  return sentences.flatMap((sentence) => wrapText(sentence, '  '));
}

function tellNone({ proven }: TrainAnswer, options: FindTrainsOptions, { nearest }: Besides): string {
  if (!proven) return 'None found so far.';
  if (options.tolerancePercent === undefined) return 'There is no such train.';
  const near = nearest
    ? ` The nearest: ${tellWheels(nearest, options.reverted === true || options.hunting === true)}, ${tellSpeedError(nearest.errorRelative)}.`
    : '';
  return `None comes within ${String(options.tolerancePercent).replace(/\s*%$/, '')} %.${near}`;
}
