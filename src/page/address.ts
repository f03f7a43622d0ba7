/** What a question is asked about: one gear, or the whole gear train. */
export type Subject = 'gear' | 'train';

/** The questions of the frame that are built, in their order and words, and which subjects each can be asked about. */
export const questions = [
  { key: 'what-is-it', words: 'What is it?', of: ['gear', 'train'] },
  { key: 'what-fits', words: 'What fits?', of: ['gear', 'train'] },
  { key: 'how-to-make-it', words: 'How to make it', of: ['gear'] },
] as const satisfies readonly {
  readonly key: string;
  readonly words: string;
  readonly of: readonly Subject[];
}[];

export type QuestionKey = (typeof questions)[number]['key'];

/** Where the page is: `#/<job>/<gear or train>/<question>`. Without a job, the start. */
export interface Place {
  readonly jobId?: string | undefined;
  readonly subject: Subject;
  /** The gear that is looked at; with the whole train, none */
  readonly wheelId?: string | undefined;
  readonly question: QuestionKey;
}

/** Reads an address; what it doesn't know it leaves out, so that an old or mistyped link still opens something. */
export function readAddress(hash: string): Place {
  const [jobId, about = '', question] = hash
    .replace(/^#\/?/, '')
    .split('/')
    .map((part) => tryDecode(part));
  const subject: Subject = about === trainPart ? 'train' : 'gear';
  const wheelId = about.startsWith(ownIdMark) ? about.slice(ownIdMark.length) : about;
  return {
    jobId: jobId || undefined,
    subject,
    wheelId: subject === 'train' ? undefined : wheelId || undefined,
    question: questions.find((one) => one.key === question && isAskedOf(one, subject))?.key ?? 'what-is-it',
  };
}

export function writeAddress({ jobId, subject, wheelId = '', question }: Place): string {
  if (!jobId) return '#/';
  const own = wheelId === trainPart || wheelId.startsWith(ownIdMark) ? `${ownIdMark}${wheelId}` : wheelId;
  const about = subject === 'train' ? trainPart : own;
  return `#/${[jobId, about, question].map((part) => encodeURIComponent(part)).join('/')}`;
}

/** The same place asked about another subject; a question that can't be asked there gives way to the first. */
export function turnTo(place: Place, to: { readonly wheelId: string } | 'train'): Place {
  const subject: Subject = to === 'train' ? 'train' : 'gear';
  const known = questions.find((one) => one.key === place.question);
  return {
    ...place,
    subject,
    wheelId: to === 'train' ? undefined : to.wheelId,
    question: known && isAskedOf(known, subject) ? known.key : 'what-is-it',
  };
}

export function isAskedOf(question: { readonly of: readonly Subject[] }, subject: Subject): boolean {
  return question.of.includes(subject);
}

const trainPart = 'train';
/** A gear whose id could be taken for the train's own word is written behind this. */
const ownIdMark = '~';

function tryDecode(part: string): string {
  try {
    return decodeURIComponent(part);
  } catch {
    return '';
  }
}
