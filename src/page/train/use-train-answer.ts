import { useEffect, useState } from 'react';
import type { DriveReport, Job, TrainDrawing } from '../../index.ts';
import { useStoreOfPage } from '../state/use-page.ts';
import { hearOut } from '../worker/hear-out.ts';

export interface TrainAnswer {
  readonly job: Job;
  readonly report: DriveReport;
  readonly drawing: TrainDrawing;
}

/** What the worker says of a job's train; the answer before stays until the new one is there. */
export function useTrainAnswer(job: Job): TrainAnswer | undefined {
  const store = useStoreOfPage();
  const [answer, setAnswer] = useState<TrainAnswer>();
  useEffect(() => {
    return hearOut(store.worker.ask('train', { job }), {
      onAnswer: (came) => setAnswer({ job, ...came }),
      onTrouble: store.fail,
    });
  }, [store, job]);
  return answer;
}
