import { useEffect, useState } from 'react';
import type { Fail, Job } from '../../index.ts';
import { useStoreOfPage } from '../state/use-page.ts';
import type { Asks, MakingAsk } from '../worker/asks.ts';
import { hearOut } from '../worker/hear-out.ts';
import type { MakingWish } from './making-wish.ts';

export interface FoundDesign {
  /** The last one that came, while a newer one is worked out */
  readonly design: Asks['design']['answer'] | undefined;
  readonly fail: Fail | undefined;
  readonly isWorking: boolean;
  /** What was asked; undefined while nobody makes it */
  readonly ask: MakingAsk | undefined;
}

/** The part of a gear as its maker is given it, worked out again whenever the job or the wish changes. */
export function useDesign(job: Job, wheelId: string, wish: MakingWish): FoundDesign {
  const store = useStoreOfPage();
  const [came, setCame] = useState<{
    readonly job: Job;
    readonly key: string;
    readonly design: Asks['design']['answer'] | undefined;
    readonly fail: Fail | undefined;
  }>();
  const { maker, process, material, machine } = wish;
  const key = `${maker?.key} ${process?.key} ${material} ${JSON.stringify(machine?.file)}`;
  const ask: MakingAsk | undefined = maker && {
    job,
    wheelId,
    maker: maker.key,
    process: process?.key,
    material,
    machine: machine?.file,
    answer: store.answerOf(job, wheelId),
  };
  // biome-ignore lint/correctness/useExhaustiveDependencies: the wish is known by its key
  useEffect(() => {
    if (!ask) return;
    return hearOut(store.worker.ask('design', ask), {
      onAnswer: (design) => setCame({ job, key, design, fail: undefined }),
      onFail: (fail) => setCame({ job, key, design: undefined, fail }),
      onTrouble: store.fail,
    });
  }, [store, job, wheelId, key]);
  const isWorking = ask !== undefined && (came?.job !== job || came.key !== key);
  return {
    design: ask ? came?.design : undefined,
    fail: ask && !isWorking ? came?.fail : undefined,
    isWorking,
    ask,
  };
}
