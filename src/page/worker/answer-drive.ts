import {
  checkDrive,
  drawPair,
  drawTrain,
  type PartsFile,
  parseParts,
  type SolidDrawing,
  searchSubstitutes,
  shapePart,
} from '../../index.ts';
import type { Asks, WorkerReply, WorkerRequest } from './asks.ts';
import { drawnChordError } from './drawn-chord-error.ts';

export type DriveName = 'train' | 'pair' | 'parts' | 'fits' | 'solid';

const ownParts = readParts();

/**
 * The worker's answers about the whole drive, what fits in it and solids. `stopped` holds the requests that are to end
 * with the best so far.
 */
export async function answerDrive(
  request: WorkerRequest,
  transfer: ArrayBuffer[],
  stopped: Set<number>,
): Promise<Asks[DriveName]['answer']> {
  switch (request.name) {
    case 'fits':
      return findFits(request, stopped);
    case 'solid': {
      const { job, ...options } = request.ask as Asks['solid']['ask'];
      const { mesh: _, ...part } = shapePart(job, options);
      transfer.push(...buffersOf(part.whole), ...buffersOf(part.cut));
      return part;
    }
    case 'train': {
      const { job } = request.ask as Asks['train']['ask'];
      const report = checkDrive(job);
      const drawing = drawTrain(job, report, drawnChordError);
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
    default:
      throw new Error(`${request.name} is answered elsewhere`);
  }
}

/**
 * A long search step by step: it tells how far it is, and looks between two steps whether it is to end with the best so
 * far.
 */
async function findFits({ id, ask }: WorkerRequest, stopped: Set<number>): Promise<Asks['fits']['answer']> {
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

function buffersOf(drawing: SolidDrawing & { readonly cap?: SolidDrawing['faces'] }): ArrayBuffer[] {
  const { faces, edges, cap } = drawing;
  const arrays = [faces.positions, faces.triangles, edges.sharp, edges.bent];
  if (cap) arrays.push(cap.positions, cap.triangles);
  return arrays.flatMap(({ buffer }) => (buffer instanceof ArrayBuffer ? [buffer] : []));
}
