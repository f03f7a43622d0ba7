import { useEffect, useState } from 'react';
import { Fail, type Job } from '../../index.ts';
import { useStoreOfPage } from '../state/use-page.ts';
import { Overtaken } from '../worker/ask-worker.ts';
import type { Asks } from '../worker/asks.ts';

export interface FoundMade {
  readonly found: Asks['made']['answer'] | undefined;
  readonly fail: Fail | undefined;
  readonly isWorking: boolean;
}

/** Whether the part made for a gear fits; the last answer stays while a newer one is worked out. */
export function useMade(job: Job, wheelId: string, isMade: boolean): FoundMade {
  const store = useStoreOfPage();
  const [came, setCame] = useState<{
    readonly job: Job;
    readonly found: Asks['made']['answer'] | undefined;
    readonly fail: Fail | undefined;
  }>();
  useEffect(() => {
    if (!isMade) return;
    let isCurrent = true;
    store.worker.ask('made', { job, wheelId }).then(
      (found) => isCurrent && setCame({ job, found, fail: undefined }),
      (error: unknown) => {
        if (!isCurrent || error instanceof Overtaken) return;
        if (error instanceof Fail) setCame({ job, found: undefined, fail: error });
        else store.fail(error);
      },
    );
    return () => {
      isCurrent = false;
    };
  }, [store, job, wheelId, isMade]);
  const isWorking = isMade && came?.job !== job;
  return { found: isMade ? came?.found : undefined, fail: isWorking ? undefined : came?.fail, isWorking };
}
