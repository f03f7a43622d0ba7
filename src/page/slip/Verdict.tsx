import './verdict.css';
import type { ReactNode } from 'react';

/** How sure an answer is, as its line: wide for certain, narrow for likely, the rivals' line where it is open. */
export type Certainty = 'certain' | 'likely' | 'undecided' | 'nothing-fits';

const lineOf: Readonly<Record<Certainty, string>> = {
  certain: 'line-known',
  likely: 'line-thin',
  undecided: 'line-rival',
  'nothing-fits': 'line-hidden',
};

const wordOf: Readonly<Record<Certainty, string>> = {
  certain: 'certain',
  likely: 'likely',
  undecided: "can't tell yet",
  'nothing-fits': 'no gear I know',
};

/** The one verdict of every question: a sentence, its odds, a sample of the line that says how sure. */
export function Verdict(props: {
  readonly sentence: ReactNode;
  readonly odds?: string | undefined;
  readonly certainty: Certainty;
  /** In place of the certainty's own word, where the question is not what a gear is */
  readonly word?: string | undefined;
  readonly isWorking: boolean;
  readonly children?: ReactNode;
}): ReactNode {
  const { sentence, odds, certainty, isWorking, children } = props;
  const word = props.word ?? wordOf[certainty];
  return (
    <div className={isWorking ? 'verdict verdict-working' : 'verdict'}>
      <p className="verdict-sentence" data-testid="answer">
        {sentence}
      </p>
      <p className="verdict-odds">
        <svg width="72" height="16" viewBox="0 0 72 16" aria-hidden="true">
          <path className={lineOf[certainty]} d="M0 8H72" />
        </svg>
        <span>{odds === undefined ? word : `${odds} · ${word}`}</span>
      </p>
      {children}
    </div>
  );
}
