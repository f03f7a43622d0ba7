import type { ReactNode } from 'react';
import type { Job, Wheel } from '../../index.ts';
import { tellFocus } from '../drawing/tell-focus.ts';
import { BlankSheet } from '../print/BlankSheet.tsx';
import { PrintSheet } from '../print/PrintSheet.tsx';
import type { QuestionParts } from '../questions/question.ts';
import { Slip } from '../slip/Slip.tsx';
import { usePage } from '../state/use-page.ts';
import { titleBlockOf } from '../words/title-block-of.ts';
import { Over } from './Over.tsx';

/** What a question supplies, on the sheet and the slip; without a gear it is about the whole train. */
export function View(props: {
  readonly parts: QuestionParts;
  readonly job: Job;
  readonly wheel: Wheel | undefined;
}): ReactNode {
  const { parts, job, wheel } = props;
  const over = usePage((state) => state.over);
  return (
    <>
      <main className="frame-main" id="sheet-and-slip">
        <section className="frame-sheet" aria-label="Sheet">
          {over ? <Over job={job} wheel={wheel} over={over} /> : parts.drawing}
        </section>
        <aside className="frame-slip" aria-label="Slip">
          <Slip answer={parts.answer} next={parts.next} why={parts.why} />
        </aside>
      </main>
      {wheel && <OfGear job={job} wheel={wheel} />}
    </>
  );
}

/** What is said of a gear's drawing to those who don't see it, and what stands on paper. */
function OfGear({ job, wheel }: { readonly job: Job; readonly wheel: Wheel }): ReactNode {
  const answer = usePage((state) => state.answers[wheel.id]);
  const { unit, paper } = usePage((state) => state.settings);
  const isExample = usePage((state) => state.isExample);
  const printed = usePage((state) => state.printed);
  return (
    <>
      <p className="unseen" aria-live="polite" data-testid="focus">
        {answer ? tellFocus(answer.before, answer.report) : ''}
      </p>
      {printed === 'blank' ? (
        <BlankSheet paper={paper} />
      ) : (
        <PrintSheet
          wheel={wheel}
          report={answer?.report}
          drawing={answer?.drawing}
          asked={answer?.asked ?? []}
          unit={unit}
          paper={paper}
          titleBlock={titleBlockOf(job, wheel, isExample || job.invented ? 'An invented example' : undefined)}
        />
      )}
    </>
  );
}
