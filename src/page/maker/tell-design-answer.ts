import { type Fail, type Job, tellDesign } from '../../index.ts';
import type { Certainty } from '../slip/Verdict.tsx';
import { withNames } from '../words/with-names.ts';
import type { Asks } from '../worker/asks.ts';
import { tellOnPage } from './tell-made-by.ts';

export interface DesignAnswer {
  readonly sentence: string;
  readonly certainty: Certainty;
  readonly word: string;
  readonly more: readonly string[];
}

/** Whether the part will last, in one sentence, with what governs and how unsure that is. */
export function tellDesignAnswer(handed: Asks['design']['answer']['handed'], job: Job): DesignAnswer {
  const { part } = handed;
  const { design } = part;
  const size = `${part.spec.teeth} teeth, size ${Number(part.spec.moduleMm.toFixed(4))} (module)`;
  const trial = part.isTrial
    ? ["The answer is not sure enough to rely on, or a reading doesn't agree: try it by hand first."]
    : [];
  if (!design) {
    return {
      sentence: `To buy: ${size}.`,
      certainty: part.isTrial ? 'undecided' : 'certain',
      word: 'a copy of the old gear',
      more: [...trial, 'The message names the sizes to ask for. What fits? looks through what is sold.'],
    };
  }
  // Of the lead the first line is how it is made, which stands under Do next.
  const more = [
    ...trial,
    ...tellDesign(design)
      .lead.slice(1)
      .map((line) => withNames(line, job)),
  ];
  const kind = part.isTrial ? 'A trial part' : 'A part';
  switch (design.strength.after.verdict) {
    case 'holds':
      return {
        sentence: `${kind} of ${size}, that should hold.`,
        certainty: part.isTrial ? 'undecided' : 'certain',
        word: 'should hold',
        more,
      };
    case 'doubtful':
      return {
        sentence: `${kind} of ${size}, that may hold.`,
        certainty: part.isTrial ? 'undecided' : 'likely',
        word: 'may hold, not surely',
        more,
      };
    case 'fails':
      return {
        sentence: `${kind} of ${size}, that is likely to break.`,
        certainty: 'nothing-fits',
        word: 'likely to break',
        more: [...more, 'Another material, another maker or wider teeth would bear more.'],
      };
    default:
      return {
        sentence: `${kind} of ${size}.`,
        certainty: part.isTrial ? 'undecided' : 'likely',
        word: part.isTrial ? "can't tell yet" : 'its load is not known',
        more,
      };
  }
}

/** Why there is no part for this maker, and what is nearest. */
export function tellDesignFail(fail: Fail, job: Job): DesignAnswer {
  return {
    sentence: `Not yet: ${withNames(fail.message, job).replace(/\.$/, '')}.`,
    certainty: fail.code === 'not-identified' ? 'undecided' : 'nothing-fits',
    word: fail.code === 'not-identified' ? "can't tell yet" : 'not so',
    more: [tellOnPage(withNames(fail.remedy, job))],
  };
}
