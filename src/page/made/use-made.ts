import { useEffect, useState } from 'react';
import type { Fail, Job } from '../../index.ts';
import { useStoreOfPage } from '../state/use-page.ts';
import type { Asks } from '../worker/asks.ts';
import { hearOut } from '../worker/hear-out.ts';

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
    return hearOut(store.worker.ask('made', { job, wheelId }), {
      onAnswer: (found) => setCame({ job, found, fail: undefined }),
      onFail: (fail) => setCame({ job, found: undefined, fail }),
      onTrouble: store.fail,
    });
  }, [store, job, wheelId, isMade]);
  const isWorking = isMade && came?.job !== job;
  return { found: isMade ? came?.found : undefined, fail: isWorking ? undefined : came?.fail, isWorking };
}
