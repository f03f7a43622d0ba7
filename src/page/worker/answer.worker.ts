import {
  describeFail,
  drawCounts,
  drawWheel,
  Fail,
  identify,
  kindOf,
  make,
  parseJob,
  type SolidDrawing,
  shapePart,
} from '../../index.ts';
import { slotOf } from '../state/slot.ts';
import type { Asks, WorkerReply, WorkerRequest } from './asks.ts';

/**
 * The page's worker: answers one request after another. Of requests with the same name the page wants the last one
 * only, and drops older replies itself.
 */
self.onmessage = ({ data }: MessageEvent<WorkerRequest>): void => {
  const transfer: ArrayBuffer[] = [];
  let reply: WorkerReply;
  try {
    reply = { id: data.id, answer: answer(data, transfer) };
  } catch (error) {
    reply =
      error instanceof Fail
        ? { id: data.id, fail: describeFail(error) }
        : { id: data.id, broken: error instanceof Error ? error.message : String(error) };
  }
  self.postMessage(reply, { transfer });
};

function answer(request: WorkerRequest, transfer: ArrayBuffer[]): Asks[typeof request.name]['answer'] {
  switch (request.name) {
    case 'identify':
      return identifyAndDraw(request.ask as Asks['identify']['ask'], transfer);
    case 'make': {
      const { job, ...options } = request.ask as Asks['make']['ask'];
      const part = make(job, options);
      for (const file of part.files)
        if (file.bytes.buffer instanceof ArrayBuffer) transfer.push(file.bytes.buffer);
      return part;
    }
    case 'solid': {
      const { job, ...options } = request.ask as Asks['solid']['ask'];
      const { mesh: _, ...part } = shapePart(job, options);
      transfer.push(...buffersOf(part.whole), ...buffersOf(part.cut));
      return part;
    }
    case 'lay': {
      const { tipDiameterMm, counts } = request.ask as Asks['lay']['ask'];
      return drawCounts(tipDiameterMm, counts, chordError);
    }
    case 'open':
      return parseJob((request.ask as Asks['open']['ask']).bytes);
  }
}

/** A screen shows a fiftieth of a pixel of this at the largest scale; a drawing needs no more. */
const chordError = 0.002;

function identifyAndDraw(
  { job, wheelId, slots }: Asks['identify']['ask'],
  transfer: ArrayBuffer[],
): Asks['identify']['answer'] {
  const [report] = identify(job, { wheelId }).wheels;
  const own = report.next.filter((next) => next.wheel === undefined);
  const asked = [...own.map(slotOf), ...slots];
  const wheel = job.wheels?.find((one) => one.id === wheelId);
  const drawing = drawWheel(report, wheel ? kindOf(wheel) : 'external', asked, chordError);
  for (const gear of drawing.gears) {
    if (gear.outline.buffer instanceof ArrayBuffer) transfer.push(gear.outline.buffer);
  }
  return { report, drawing, asked };
}

function buffersOf(drawing: SolidDrawing & { readonly cap?: SolidDrawing['faces'] }): ArrayBuffer[] {
  const { faces, edges, cap } = drawing;
  const arrays = [faces.positions, faces.triangles, edges.sharp, edges.bent];
  if (cap) arrays.push(cap.positions, cap.triangles);
  return arrays.flatMap(({ buffer }) => (buffer instanceof ArrayBuffer ? [buffer] : []));
}
