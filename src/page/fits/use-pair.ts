import { useEffect, useState } from 'react';
import type { Fail, Job, PairDrawing, SubstituteRow } from '../../index.ts';
import { useStoreOfPage } from '../state/use-page.ts';
import { hearOut } from '../worker/hear-out.ts';

type Spec = SubstituteRow['accept'][number]['spec'];

export interface RolledPair {
  /** Undefined while nothing was rolled, or nothing can be */
  readonly pair: PairDrawing | undefined;
  readonly isWorking: boolean;
  readonly fail: Fail | undefined;
}

/** A gear, or what might stand in its place, rolled against one of its mates and drawn. */
export function usePair(
  job: Job,
  wheelId: string,
  mateId: string | undefined,
  spec: Spec | undefined,
): RolledPair {
  const store = useStoreOfPage();
  const [came, setCame] = useState<{ key: string; pair: PairDrawing | undefined; fail: Fail | undefined }>();
  const key = `${wheelId} ${mateId} ${JSON.stringify(spec)}`;
  // biome-ignore lint/correctness/useExhaustiveDependencies: the spec is known by what it says
  useEffect(() => {
    if (mateId === undefined) return;
    return hearOut(store.worker.ask('pair', { job, wheelId, mateId, spec }), {
      onAnswer: (pair) => setCame({ key, pair, fail: undefined }),
      onFail: (fail) => setCame({ key, pair: undefined, fail }),
      onTrouble: store.fail,
    });
  }, [store, job, key]);
  const isWorking = mateId !== undefined && came?.key !== key;
  return {
    pair: mateId === undefined ? undefined : came?.pair,
    isWorking,
    fail: isWorking ? undefined : came?.fail,
  };
}
