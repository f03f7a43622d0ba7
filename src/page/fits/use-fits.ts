import { useCallback, useEffect, useState } from 'react';
import { Fail, type Job, type SubstituteProgress, type SubstitutesReport } from '../../index.ts';
import { usePage, useStoreOfPage } from '../state/use-page.ts';
import { Overtaken } from '../worker/ask-worker.ts';

export interface Fits {
  /** Of the job as it was asked about last; the one before stays until the new one is there */
  readonly report: SubstitutesReport | undefined;
  readonly isWorking: boolean;
  readonly progress: SubstituteProgress | undefined;
  readonly fail: Fail | undefined;
  /** Ends the search with the best so far */
  readonly stop: () => void;
}

/** Nothing may change but the gear itself: its question is about parts, not about other trains. */
const noTrains: readonly string[] = [];

/**
 * What fits a gear, or, without one, every broken gear and which trains keep the ratio (of the gears in `change`, where
 * the person said so). Looked for in a worker of its own, so that the page answers meanwhile.
 */
export function useFits(
  job: Job,
  wheelId: string | undefined,
  change: readonly string[] | undefined = wheelId === undefined ? undefined : noTrains,
): Fits {
  const store = useStoreOfPage();
  const parts = usePage((state) => state.parts);
  const [report, setReport] = useState<SubstitutesReport>();
  const [progress, setProgress] = useState<SubstituteProgress>();
  const [fail, setFail] = useState<Fail>();
  const [isWorking, setIsWorking] = useState(true);
  useEffect(() => {
    let isCurrent = true;
    setIsWorking(true);
    setProgress(undefined);
    setFail(undefined);
    store.searcher
      .ask(
        'fits',
        { job, wheelId, change, parts: parts.map((one) => one.bytes) },
        'fits',
        (told) => isCurrent && setProgress(told),
      )
      .then(
        (came) => {
          if (!isCurrent) return;
          setReport(came);
          setIsWorking(false);
        },
        (error: unknown) => {
          if (!isCurrent || error instanceof Overtaken) return;
          setIsWorking(false);
          if (error instanceof Fail) setFail(error);
          else store.fail(error);
        },
      );
    return () => {
      isCurrent = false;
      store.searcher.cancel();
    };
  }, [store, job, wheelId, change, parts]);
  return { report, progress, fail, isWorking, stop: useCallback(() => store.searcher.stop(), [store]) };
}
