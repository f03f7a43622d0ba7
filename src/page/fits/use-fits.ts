import { useCallback, useEffect, useState } from 'react';
import { Fail, type Job, type SubstituteProgress, type SubstitutesReport } from '../../index.ts';
import { usePage, useStoreOfPage } from '../state/use-page.ts';
import { Overtaken } from '../worker/ask-worker.ts';

export interface Fits {
  /** Of the job as it was asked about last; the one before stays until the new one is there */
  readonly report: SubstitutesReport | undefined;
  readonly isWorking: boolean;
  readonly progress: SubstituteProgress | undefined;
  readonly isStopped: boolean;
  readonly fail: Fail | undefined;
  readonly stop: () => void;
  readonly again: () => void;
}

/** What fits a gear, looked for in a worker of its own; it can be stopped and begun again. */
export function useFits(job: Job, wheelId: string): Fits {
  const store = useStoreOfPage();
  const parts = usePage((state) => state.parts);
  const [round, setRound] = useState(0);
  const [report, setReport] = useState<SubstitutesReport>();
  const [progress, setProgress] = useState<SubstituteProgress>();
  const [fail, setFail] = useState<Fail>();
  const [phase, setPhase] = useState<'working' | 'stopped' | 'done'>('working');
  // biome-ignore lint/correctness/useExhaustiveDependencies: another round asks the same again
  useEffect(() => {
    let isCurrent = true;
    setPhase('working');
    setProgress(undefined);
    setFail(undefined);
    store.searcher
      .ask(
        'fits',
        { job, wheelId, parts: parts.map((one) => one.bytes) },
        'fits',
        (told) => isCurrent && setProgress(told),
      )
      .then(
        (came) => {
          if (!isCurrent) return;
          setReport(came);
          setPhase('done');
        },
        (error: unknown) => {
          if (!isCurrent) return;
          setPhase(error instanceof Overtaken ? 'stopped' : 'done');
          if (error instanceof Fail) setFail(error);
          else if (!(error instanceof Overtaken)) store.fail(error);
        },
      );
    return () => {
      isCurrent = false;
      store.searcher.cancel();
    };
  }, [store, job, wheelId, parts, round]);
  return {
    report,
    progress,
    fail,
    isWorking: phase === 'working',
    isStopped: phase === 'stopped',
    stop: useCallback(() => store.searcher.cancel(), [store]),
    again: useCallback(() => setRound((was) => was + 1), []),
  };
}
