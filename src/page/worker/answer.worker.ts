import {
  checkDrive,
  describeFail,
  drawCounts,
  drawPair,
  drawTrain,
  drawWheel,
  Fail,
  identify,
  kindOf,
  make,
  type PartsFile,
  parseJob,
  parseParts,
  type SolidDrawing,
  searchSubstitutes,
  shapePart,
} from '../../index.ts';
import { slotOf } from '../state/slot.ts';
import type { Asks, WorkerReply, WorkerRequest } from './asks.ts';

/**
 * The page's worker: answers one request after another. Of requests with the same name the page wants the last one
 * only, and drops older replies itself.
 */
const ownParts = readParts();

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
    case 'train': {
      const { job } = request.ask as Asks['train']['ask'];
      const report = checkDrive(job);
      const drawing = drawTrain(job, report, chordError);
      for (const { outline } of drawing.wheels)
        if (outline?.buffer instanceof ArrayBuffer) transfer.push(outline.buffer);
      return { report, drawing };
    }
    case 'pair': {
      const { job, ...pair } = request.ask as Asks['pair']['ask'];
      return drawPair(job, pair, fineChordError);
    }
    case 'fits': {
      const { job, wheelId, parts } = request.ask as Asks['fits']['ask'];
      const search = searchSubstitutes(job, { wheelId, parts: parts.flatMap((one) => ownParts(one).parts) });
      for (;;) {
        const step = search.next();
        if (step.done) return step.value;
        self.postMessage({ id: request.id, progress: step.value } satisfies WorkerReply);
      }
    }
    case 'parts': {
      const { parts, badRows, notices } = ownParts((request.ask as Asks['parts']['ask']).bytes);
      return { count: parts.length, badRows, notices };
    }
    case 'open':
      return parseJob((request.ask as Asks['open']['ask']).bytes);
  }
}

/** A screen shows a fiftieth of a pixel of this at the largest scale; a drawing needs no more. */
const chordError = 0.002;
/** The enlarged picture of a pair is drawn up to a hundred times its size. */
const fineChordError = 0.0003;

/** Reads files of parts; one that was read already is not read again, as a hundred thousand rows take seconds. */
function readParts(): (bytes: Uint8Array) => PartsFile {
  let known: { readonly bytes: Uint8Array; readonly file: PartsFile }[] = [];
  return (bytes) => {
    const found = known.find((one) => isSame(one.bytes, bytes));
    if (found) return found.file;
    const file = parseParts(bytes);
    known = [...known, { bytes, file }].slice(-mostRemembered);
    return file;
  };
}

const mostRemembered = 8;

function isSame(a: Uint8Array, b: Uint8Array): boolean {
  return a.length === b.length && a.every((byte, k) => byte === b[k]);
}

function identifyAndDraw(
  { job, wheelId, slots }: Asks['identify']['ask'],
  transfer: ArrayBuffer[],
): Asks['identify']['answer'] {
  const [report] = identify(job, { wheelId }).wheels;
  const asked = [...report.next.map(slotOf), ...slots];
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
