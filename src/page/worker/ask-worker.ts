import { Fail, type PlainFail } from '../../index.ts';
import type { AskName, Asks, Progress, WorkerReply, WorkerRequest, WorkerStop } from './asks.ts';
import { startWorker } from './start-worker.ts';

/** Answers that were overtaken by a newer question of the same name, or cancelled. */
export class Overtaken extends Error {}

/** One worker for the page: newer questions of a name overtake older ones. */
export interface AnswerWorker {
  readonly ask: <Name extends AskName>(
    name: Name,
    ask: Asks[Name]['ask'],
    /** Questions of one lane overtake each other; the name where left out */
    lane?: string,
    /** What the worker tells while it is at work, as it comes */
    onProgress?: (progress: Progress<Name>) => void,
  ) => Promise<Asks[Name]['answer']>;
  /** Ends what is being worked out with the best so far, where it can be ended so */
  readonly stop: () => void;
  /** Gives up what is being worked out: the worker is stopped and a new one started. */
  readonly cancel: () => void;
}

interface Waiting {
  readonly lane: string;
  readonly request: WorkerRequest;
  readonly resolve: (answer: never) => void;
  readonly reject: (reason: Error) => void;
  readonly onProgress?: ((progress: never) => void) | undefined;
}

/**
 * Sends one question at a time, so that one overtaken before it was sent costs nothing. A worker that dies is
 * started again, and the question at work is told of it.
 */
export function createAnswerWorker(
  options: {
    readonly start?: () => Worker;
    /** Started before it is asked anything; else with its first question */
    readonly isEager?: boolean;
  } = {},
): AnswerWorker {
  const { start = startWorker, isEager = true } = options;
  let worker: Worker | undefined;
  let number = 0;
  let atWork: Waiting | undefined;
  let queue: Waiting[] = [];

  const send = (): void => {
    if (atWork || queue.length === 0) return;
    atWork = queue.shift();
    worker ??= listen(start());
    worker.postMessage(atWork?.request);
  };
  const finish = (settle: (waiting: Waiting) => void): void => {
    const waiting = atWork;
    atWork = undefined;
    if (waiting) settle(waiting);
    send();
  };
  const listen = (fresh: Worker): Worker => {
    fresh.onmessage = ({ data }: MessageEvent<WorkerReply>) => {
      if (data.id !== atWork?.request.id) return;
      if ('progress' in data) {
        atWork.onProgress?.(data.progress as never);
        return;
      }
      finish(({ lane, resolve, reject }) => {
        if (queue.some((other) => other.lane === lane)) reject(new Overtaken(lane));
        else if ('answer' in data) resolve(data.answer as never);
        else if ('fail' in data) reject(failOf(data.fail));
        else reject(new Error(data.broken));
      });
    };
    fresh.onerror = (event) => {
      event.preventDefault();
      fresh.terminate();
      worker = undefined;
      finish(({ reject }) => reject(new Error(event.message || 'the worker stopped')));
    };
    return fresh;
  };
  // It reads its own script while the page opens its storage.
  if (isEager) worker = listen(start());
  return {
    ask(name, ask, lane = name, onProgress) {
      for (const old of queue.filter((one) => one.lane === lane)) old.reject(new Overtaken(lane));
      queue = queue.filter((one) => one.lane !== lane);
      const request: WorkerRequest = { id: ++number, name, ask };
      return new Promise((resolve, reject) => {
        queue.push({ lane, request, resolve: resolve as (answer: never) => void, reject, onProgress });
        send();
      });
    },
    stop() {
      if (atWork) worker?.postMessage({ stop: atWork.request.id } satisfies WorkerStop);
    },
    cancel() {
      worker?.terminate();
      worker = undefined;
      const stopped = [...(atWork ? [atWork] : []), ...queue];
      atWork = undefined;
      queue = [];
      for (const { lane, reject } of stopped) reject(new Overtaken(lane));
    },
  };
}

function failOf({ code, field, message, remedy, details }: PlainFail): Fail {
  return new Fail(code, field, message, remedy, { ...details });
}
