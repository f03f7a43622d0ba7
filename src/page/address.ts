/** The questions of the frame that are built, in their order and words. */
export const questions = [
  { key: 'what-is-it', words: 'What is it?' },
  { key: 'how-to-make-it', words: 'How to make it' },
] as const;

export type QuestionKey = (typeof questions)[number]['key'];

/** Where the page is: `#/<job>/<gear>/<question>`. Without a job, the start. */
export interface Place {
  readonly jobId?: string | undefined;
  readonly wheelId?: string | undefined;
  readonly question: QuestionKey;
}

/** Reads an address; what it doesn't know it leaves out, so that an old or mistyped link still opens something. */
export function readAddress(hash: string): Place {
  const [jobId, wheelId, question] = hash
    .replace(/^#\/?/, '')
    .split('/')
    .map((part) => tryDecode(part));
  const found = questions.find((one) => one.key === question);
  return {
    jobId: jobId || undefined,
    wheelId: wheelId || undefined,
    question: found?.key ?? 'what-is-it',
  };
}

export function writeAddress(place: Place): string {
  if (!place.jobId) return '#/';
  const parts = [place.jobId, place.wheelId ?? '', place.question].map((part) => encodeURIComponent(part));
  return `#/${parts.join('/')}`;
}

function tryDecode(part: string): string {
  try {
    return decodeURIComponent(part);
  } catch {
    return '';
  }
}
