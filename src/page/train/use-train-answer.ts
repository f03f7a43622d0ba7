import { useEffect, useState } from 'react';
import type { DriveReport, Job, TrainDrawing } from '../../index.ts';
import { useStoreOfPage } from '../state/use-page.ts';
import { Overtaken } from '../worker/ask-worker.ts';

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
    let isCurrent = true;
    store.worker.ask('train', { job }).then(
      (came) => isCurrent && setAnswer({ job, ...came }),
      (error: unknown) => {
        if (isCurrent && !(error instanceof Overtaken)) store.fail(error);
      },
    );
    return () => {
      isCurrent = false;
    };
  }, [store, job]);
  return answer;
}
