import {
  describeFail,
  drawCounts,
  drawSpec,
  drawWheel,
  Fail,
  identify,
  kindOf,
  parseJob,
} from '../../index.ts';
import { isKnownBySpec } from '../state/is-specified.ts';
import { slotOf } from '../state/slot.ts';
import type { DriveName } from './answer-drive.ts';
import type { MakingName } from './answer-making.ts';
import type { Asks, WorkerReply, WorkerRequest, WorkerStop } from './asks.ts';
import { drawnChordError } from './drawn-chord-error.ts';

/**
 * The page's worker: answers one request after another. Of requests with the same name the page wants the last one
 * only, and drops older replies itself.
 */
/** Requests that are to end with the best so far. */
const stopped = new Set<number>();

/** Making is a file of its own, loaded when it is first asked about. */
function isMakingName(name: string): name is MakingName {
  return ['design', 'folder', 'sheet', 'coupon', 'compensation', 'machine', 'made', 'record'].includes(name);
}

/** What needs rolling, searching or solids: another file of its own, so that a first answer doesn't wait for it. */
function isDriveName(name: string): name is DriveName {
  return ['train', 'pair', 'parts', 'fits', 'solid'].includes(name);
}

self.onmessage = async ({ data }: MessageEvent<WorkerRequest | WorkerStop>): Promise<void> => {
  if ('stop' in data) {
    stopped.add(data.stop);
    return;
  }
  const transfer: ArrayBuffer[] = [];
  let reply: WorkerReply;
  try {
    reply = {
      id: data.id,
      answer: isMakingName(data.name)
        ? await (await import('./answer-making.ts')).answerMaking(data, async (progress) => {
            self.postMessage({ id: data.id, progress } satisfies WorkerReply);
            // The page shows it before the next step begins.
            await new Promise((next) => setTimeout(next));
          })
        : isDriveName(data.name)
          ? await (await import('./answer-drive.ts')).answerDrive(data, transfer, stopped)
          : answer(data, transfer),
    };
  } catch (error) {
    reply =
      error instanceof Fail
        ? { id: data.id, fail: describeFail(error) }
        : { id: data.id, broken: error instanceof Error ? error.message : String(error) };
  }
  self.postMessage(reply, { transfer });
};

function answer(
  request: WorkerRequest,
  transfer: ArrayBuffer[],
): Asks[Exclude<typeof request.name, DriveName | MakingName>]['answer'] {
  switch (request.name) {
    case 'identify':
      return identifyAndDraw(request.ask as Asks['identify']['ask'], transfer);
    case 'lay': {
      const { tipDiameterMm, counts } = request.ask as Asks['lay']['ask'];
      return drawCounts(tipDiameterMm, counts, drawnChordError);
    }
    case 'open':
      return parseJob((request.ask as Asks['open']['ask']).bytes);
    default:
      throw new Error(`${request.name} is answered elsewhere`);
  }
}

function identifyAndDraw(
  { job, wheelId, slots }: Asks['identify']['ask'],
  transfer: ArrayBuffer[],
): Asks['identify']['answer'] {
  const [report] = identify(job, { wheelId }).wheels;
  const own = report.next.filter((next) => next.wheel === undefined);
  const asked = [...own.map(slotOf), ...slots];
  const wheel = job.wheels?.find((one) => one.id === wheelId);
  const kind = wheel ? kindOf(wheel) : 'external';
  const drawing =
    wheel?.spec && isKnownBySpec(wheel)
      ? drawSpec(wheel.spec, kind, drawnChordError)
      : drawWheel(report, kind, asked, drawnChordError);
  for (const gear of drawing.gears) {
    if (gear.outline.buffer instanceof ArrayBuffer) transfer.push(gear.outline.buffer);
  }
  return { report, drawing, asked };
}
