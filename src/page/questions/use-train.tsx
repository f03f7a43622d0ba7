import { useState } from 'react';
import { isCovered, type Job, type WheelReport } from '../../index.ts';
import { Verdict } from '../slip/Verdict.tsx';
import { isSpecified } from '../state/is-specified.ts';
import { usePage, useStoreOfPage } from '../state/use-page.ts';
import { listTrainActs, type TrainAct } from '../train/choose-train-next.ts';
import { EmptyTrain } from '../train/EmptyTrain.tsx';
import { MeshRolled } from '../train/MeshRolled.tsx';
import { TrainNextPart } from '../train/TrainNextPart.tsx';
import { TrainSheet } from '../train/TrainSheet.tsx';
import { TrainWhy } from '../train/TrainWhy.tsx';
import { tellTrain } from '../train/tell-train.ts';
import { useTrainAnswer } from '../train/use-train-answer.ts';
import type { QuestionParts } from './question.ts';

/** *What is it?* for the whole train: what it does, the most useful thing to do about it, mesh by mesh why. */
export function useTrain(job: Job): QuestionParts {
  const store = useStoreOfPage();
  const answers = usePage((state) => state.answers);
  const isExample = usePage((state) => state.isExample);
  const { unit } = usePage((state) => state.settings);
  const [opened, setOpened] = useState<TrainAct>();
  const [seen, setSeen] = useState<{ readonly wheelId: string; readonly mate: string }>();
  const answer = useTrainAnswer(job);
  const isWorking = answer?.job !== job;
  const reports: Record<string, WheelReport | undefined> = {};
  for (const { id } of job.wheels ?? []) reports[id] = store.answerOf(job, id) ?? answers[id]?.report;
  const words = answer && tellTrain(answer.report, job);
  const known = new Set(
    (job.wheels ?? []).flatMap((wheel) => {
      const verdict = reports[wheel.id]?.verdict;
      const isSaid = isSpecified(wheel) || !isCovered(wheel);
      return isSaid || verdict === 'certain' || verdict === 'likely' ? [wheel.id] : [];
    }),
  );
  const onAct = (act: TrainAct): void => {
    if (act.of === 'see') setSeen({ wheelId: act.wheelId, mate: act.mate });
    else setOpened(act);
  };
  return {
    drawing: seen ? (
      <MeshRolled
        job={job}
        {...seen}
        moduleMm={answer?.drawing.wheels.find((wheel) => wheel.id === seen.wheelId)?.moduleMm ?? 1}
        onClose={() => setSeen(undefined)}
      />
    ) : answer && answer.drawing.wheels.length > 0 ? (
      <TrainSheet
        job={job}
        drawing={answer.drawing}
        known={known}
        isWorking={isWorking}
        unit={unit}
        sentence={`The gear train from above, to scale. ${words?.sentence ?? ''}`}
        note={isExample ? 'An invented example' : job.invented ? 'Invented' : undefined}
        onWheel={(wheelId) => store.turnTo({ wheelId }, 'what-is-it')}
        onPost={(wheelId) => setOpened({ of: 'seat', wheelId })}
      />
    ) : (
      <EmptyTrain isWorking={isWorking} />
    ),
    answer: (
      <Verdict
        sentence={words?.sentence ?? 'Working it out.'}
        certainty={words?.certainty ?? 'undecided'}
        word={words?.word ?? 'working'}
        isWorking={isWorking}
      >
        {words?.more.map((line) => (
          <p key={line} className="verdict-more">
            {line}
          </p>
        ))}
      </Verdict>
    ),
    next: (
      <TrainNextPart
        job={job}
        report={answer?.report}
        acts={listTrainActs(job, answer?.report, reports)}
        opened={opened}
        onOpen={setOpened}
      />
    ),
    why: <TrainWhy job={job} report={answer?.report} drawing={answer?.drawing} unit={unit} onAct={onAct} />,
  };
}
