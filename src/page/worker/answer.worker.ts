import {
  checkDrive,
  describeFail,
  drawCounts,
  drawPair,
  drawSpec,
  drawTrain,
  drawWheel,
  Fail,
  identify,
  kindOf,
  type PartsFile,
  parseJob,
  parseParts,
  type SolidDrawing,
  searchSubstitutes,
  shapePart,
} from '../../index.ts';
import { isKnownBySpec } from '../state/is-specified.ts';
import { slotOf } from '../state/slot.ts';
import type { MakingName } from './answer-making.ts';
import type { Asks, WorkerReply, WorkerRequest, WorkerStop } from './asks.ts';

/**
 * The page's worker: answers one request after another. Of requests with the same name the page wants the last one
 * only, and drops older replies itself.
 */
const ownParts = readParts();
/** Requests that are to end with the best so far. */
const stopped = new Set<number>();

/** Making is a file of its own, loaded when it is first asked about. */
function isMakingName(name: string): name is MakingName {
  return ['design', 'folder', 'sheet', 'coupon', 'compensation', 'machine', 'made', 'record'].includes(name);
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
        : data.name === 'fits'
          ? await findFits(data)
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

/**
 * A long search step by step: it tells how far it is, and looks between two steps whether it is to end with the best so
 * far.
 */
async function findFits({ id, ask }: WorkerRequest): Promise<Asks['fits']['answer']> {
  const { job, parts, ...options } = ask as Asks['fits']['ask'];
  const search = searchSubstitutes(job, {
    ...options,
    parts: parts.flatMap((one) => ownParts(one).parts),
  });
  let told = Number.NEGATIVE_INFINITY;
  let step = search.next();
  while (!step.done) {
    if (performance.now() - told > progressEvery) {
      self.postMessage({ id, progress: step.value } satisfies WorkerReply);
      // A message that came meanwhile is heard here.
      await new Promise((next) => setTimeout(next));
      told = performance.now();
    }
    step = search.next(stopped.has(id) ? 'stop' : undefined);
  }
  stopped.delete(id);
  return step.value;
}

/** Milliseconds: faster than that nobody reads a figure, and each time costs a turn of the worker's own loop. */
const progressEvery = 60;

function answer(
  request: WorkerRequest,
  transfer: ArrayBuffer[],
): Asks[Exclude<typeof request.name, 'fits' | MakingName>]['answer'] {
  switch (request.name) {
    case 'identify':
      return identifyAndDraw(request.ask as Asks['identify']['ask'], transfer);
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
    case 'parts': {
      const { parts, badRows, notices } = ownParts((request.ask as Asks['parts']['ask']).bytes);
      return { count: parts.length, badRows, notices };
    }
    case 'open':
      return parseJob((request.ask as Asks['open']['ask']).bytes);
    default:
      throw new Error(`${request.name} is answered elsewhere`);
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
  const own = report.next.filter((next) => next.wheel === undefined);
  const asked = [...own.map(slotOf), ...slots];
  const wheel = job.wheels?.find((one) => one.id === wheelId);
  const kind = wheel ? kindOf(wheel) : 'external';
  const drawing =
    wheel?.spec && isKnownBySpec(wheel)
      ? drawSpec(wheel.spec, kind, chordError)
      : drawWheel(report, kind, asked, chordError);
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
