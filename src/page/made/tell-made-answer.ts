import { type Job, type MadeReport, tellMade, tellOdds } from '../../index.ts';
import type { Certainty } from '../slip/Verdict.tsx';
import { nameWheel } from '../words/name-wheel.ts';

export interface MadeAnswer {
  readonly sentence: string;
  readonly odds: string | undefined;
  readonly certainty: Certainty;
  readonly word: string;
  readonly more: readonly string[];
}

const sentences: Readonly<Record<MadeReport['verdict'], string>> = {
  fits: 'The new one fits.',
  tight: 'The new one is tight.',
  loose: 'The new one is loose.',
  warped: 'The new one is warped.',
  unread: 'Measure the new one, as you measured the old.',
};

/** Whether the made part fits, which size is off and by how much, and how it runs. */
export function tellMadeAnswer(report: MadeReport, job: Job): MadeAnswer {
  const { verdict, chance, proof } = report;
  // The first line is the verdict, the last one what to take back, which stands under Do next.
  const lines = tellMade(report).slice(1, -1);
  const more = proof
    ? lines.map((line) => line.replace(`against ${proof.mate} `, `against ${nameWheel(job, proof.mate)} `))
    : lines;
  if (verdict === 'unread')
    return {
      sentence: sentences.unread,
      odds: undefined,
      certainty: 'undecided',
      word: "can't tell yet",
      more: [],
    };
  const certainty = chance >= 0.99 ? 'certain' : chance >= 0.8 ? 'likely' : 'undecided';
  return {
    sentence:
      chance < 0.8
        ? sentences[verdict].replace(' is ', ' may be ').replace(' fits', ' may fit')
        : sentences[verdict],
    odds: tellOdds(chance),
    certainty: verdict === 'fits' ? certainty : 'nothing-fits',
    word: verdict,
    more,
  };
}
