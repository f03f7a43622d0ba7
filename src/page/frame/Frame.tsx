import './frame.css';
import { type ReactNode, useEffect } from 'react';
import type { Job, Wheel } from '../../index.ts';
import { tellFocus } from '../drawing/tell-focus.ts';
import { BlankSheet } from '../print/BlankSheet.tsx';
import { PrintSheet } from '../print/PrintSheet.tsx';
import type { QuestionParts } from '../questions/question.ts';
import { useHowToMakeIt } from '../questions/use-how-to-make-it.tsx';
import { useWhatIsIt } from '../questions/use-what-is-it.tsx';
import { Slip } from '../slip/Slip.tsx';
import { usePage, useStoreOfPage } from '../state/use-page.ts';
import { titleBlockOf } from '../words/title-block-of.ts';
import { Over } from './Over.tsx';
import { Said } from './Said.tsx';
import { TrainLine } from './TrainLine.tsx';

/** One subject × one question: the train line, the sheet, the slip. Nothing else stands on the page. */
export function Frame(): ReactNode {
  const open = usePage((state) => state.open);
  const place = usePage((state) => state.place);
  const settings = usePage((state) => state.settings);
  useEffect(() => {
    const root = document.documentElement;
    if (settings.light === 'auto') delete root.dataset.light;
    else root.dataset.light = settings.light;
  }, [settings.light]);
  useDroppedFile();
  const job = open?.job;
  const wheel = job?.wheels?.find((one) => one.id === place.wheelId) ?? job?.wheels?.[0];
  return (
    <div className={settings.mirrored ? 'frame frame-mirrored' : 'frame'}>
      <TrainLine job={job} wheel={wheel} />
      <Said />
      {!job || !wheel ? (
        <EmptyJob isReady={job !== undefined} />
      ) : place.question === 'how-to-make-it' ? (
        <MakeView key={`${open.id} ${wheel.id}`} job={job} wheel={wheel} />
      ) : (
        <KnowView key={`${open.id} ${wheel.id}`} job={job} wheel={wheel} />
      )}
    </div>
  );
}

function KnowView({ job, wheel }: { readonly job: Job; readonly wheel: Wheel }): ReactNode {
  return <View parts={useWhatIsIt(job, wheel)} job={job} wheel={wheel} />;
}

function MakeView({ job, wheel }: { readonly job: Job; readonly wheel: Wheel }): ReactNode {
  return <View parts={useHowToMakeIt(job, wheel)} job={job} wheel={wheel} />;
}

function View(props: { readonly parts: QuestionParts; readonly job: Job; readonly wheel: Wheel }): ReactNode {
  const { parts, job, wheel } = props;
  const over = usePage((state) => state.over);
  const answer = usePage((state) => state.answers[wheel.id]);
  const { unit, paper } = usePage((state) => state.settings);
  const isExample = usePage((state) => state.isExample);
  const printed = usePage((state) => state.printed);
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

/** A file may be dropped anywhere on the page; the menu's Open does the same. */
function useDroppedFile(): void {
  const store = useStoreOfPage();
  useEffect(() => {
    const over = (event: DragEvent): void => event.preventDefault();
    const drop = (event: DragEvent): void => {
      event.preventDefault();
      const file = event.dataTransfer?.files[0];
      if (file) void store.openFile(file, file.name);
    };
    window.addEventListener('dragover', over);
    window.addEventListener('drop', drop);
    return () => {
      window.removeEventListener('dragover', over);
      window.removeEventListener('drop', drop);
    };
  }, [store]);
}

function EmptyJob({ isReady }: { readonly isReady: boolean }): ReactNode {
  const store = useStoreOfPage();
  if (!isReady) return <main className="frame-empty" aria-busy="true" />;
  return (
    <main className="frame-empty">
      <p>This job has no gear yet.</p>
      <button type="button" className="next" onClick={() => store.addGear()}>
        Add a gear
      </button>
    </main>
  );
}
