import { Fail } from '../../index.ts';
import { Overtaken } from './ask-worker.ts';

/** What to do with what the worker says. */
export interface Hearing<Answer> {
  readonly onAnswer: (answer: Answer) => void;
  /** What a person can mend; left out, it is told as any other trouble */
  readonly onFail?: (fail: Fail) => void;
  readonly onTrouble: (error: unknown) => void;
}

/**
 * Hands on what a question brings until what comes back is called, as an effect's clean-up is: an answer that comes
 * later, or was overtaken, is nobody's any more.
 */
export function hearOut<Answer>(asked: Promise<Answer>, hearing: Hearing<Answer>): () => void {
  let isCurrent = true;
  asked.then(
    (answer) => {
      if (isCurrent) hearing.onAnswer(answer);
    },
    (error: unknown) => {
      if (!isCurrent || error instanceof Overtaken) return;
      if (hearing.onFail && error instanceof Fail) hearing.onFail(error);
      else hearing.onTrouble(error);
    },
  );
  return () => {
    isCurrent = false;
  };
}
