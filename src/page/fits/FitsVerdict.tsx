import type { ReactNode } from 'react';
import { type Certainty, Verdict } from '../slip/Verdict.tsx';
import { Searching } from './Searching.tsx';
import type { Fits } from './use-fits.ts';

/** What fits, in words, or why that can't be said; and how far a search is. */
export function FitsVerdict(props: {
  readonly fits: Fits;
  readonly words:
    | {
        readonly sentence: string;
        readonly certainty: Certainty;
        readonly word: string;
        readonly more: readonly string[];
      }
    | undefined;
  readonly children?: ReactNode;
}): ReactNode {
  const { fits, words, children } = props;
  return (
    <>
      <Verdict
        sentence={
          words?.sentence ?? (fits.fail ? `Not yet: ${fits.fail.message}.` : 'Looking through what there is.')
        }
        certainty={words?.certainty ?? 'undecided'}
        word={words?.word ?? (fits.fail ? "can't tell yet" : 'working')}
        isWorking={fits.isWorking}
      >
        {words?.more.map((line) => (
          <p key={line} className="verdict-more">
            {line}
          </p>
        ))}
        {fits.fail && <p className="verdict-more">{fits.fail.remedy}</p>}
        {children}
      </Verdict>
      <Searching fits={fits} />
    </>
  );
}
