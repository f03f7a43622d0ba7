import type { Job, SubstituteRow, WheelSubstitutes } from '../../index.ts';
import type { Certainty } from '../slip/Verdict.tsx';
import { withNames } from '../words/with-names.ts';

/** The kinds of thing that fit, in the order of their use, each with what it is called over its rows. */
export const fitKinds: readonly { readonly kind: SubstituteRow['kind']; readonly words: string }[] = [
  { kind: 'exact', words: 'The same teeth, goes in as it is' },
  { kind: 'rework', words: 'The same teeth, after some work' },
  { kind: 'made', words: 'Made again as it was' },
  { kind: 'made-to-distance', words: 'Made for the distance as measured' },
  { kind: 'other-teeth', words: 'Other teeth that the distance allows' },
  { kind: 'look-alike', words: 'Looks like it and will not run' },
];

export interface FitWords {
  readonly sentence: string;
  readonly certainty: Certainty;
  readonly word: string;
  readonly more: readonly string[];
}

/** The best thing that fits, and how sure that is. */
export function tellFits(found: WheelSubstitutes, job: Job): FitWords {
  if (!found.need) {
    const [why = 'not enough is known of it'] = found.notes;
    return {
      sentence: 'Can’t tell yet what fits.',
      certainty: 'undecided',
      word: "can't tell yet",
      more: [asSentence(withNames(why, job))],
    };
  }
  const best = found.rows.find((row) => row.fits);
  // What lies in the person's own drawers has a place of its own on the page.
  const notes = found.notes.filter((note) => !note.startsWith('your own spares'));
  const more = notes.map((note) => asSentence(withNames(note, job)));
  if (!best) {
    return {
      sentence: 'Nothing here fits.',
      certainty: 'nothing-fits',
      word: 'nothing that was rolled turns',
      more,
    };
  }
  const rolled = best.verdict === null ? 'by its numbers, not rolled' : 'rolled: it turns';
  const certainty: Certainty = !found.need.isSure
    ? 'undecided'
    : best.verdict === 'turns'
      ? 'certain'
      : 'likely';
  const word = found.need.isSure ? rolled : `${rolled}, if the answer about the old one holds`;
  return { sentence: bestSentence(best), certainty, word, more };
}

function bestSentence(row: SubstituteRow): string {
  const size = `${row.teeth} teeth, ${sizeOf(row)}`;
  const work = row.reworks.length === 0 ? '' : ', after some work';
  switch (row.from) {
    case 'own':
      return `One from your own drawer fits${work}: ${size}.`;
    case 'range':
      return `A gear that is sold fits${work}: ${size}.`;
    default:
      return `Nothing bought fits, but it can be made: ${size}.`;
  }
}

/** The size in the page's words. */
export function sizeOf({ pitch }: SubstituteRow): string {
  const size = Number(pitch.size.toFixed(4));
  if (pitch.system === 'diametral-pitch') return `inch size ${size}`;
  if (pitch.system === 'circular-pitch') return `inch size by tooth distance ${size}`;
  return `metric size ${Number(pitch.moduleMm.toFixed(4))}`;
}

/** How a row runs, in few words: for the list, where rows are compared. */
export function tellRuns(row: SubstituteRow): string {
  const verdict =
    row.verdict === 'turns'
      ? 'turns'
      : row.verdict === 'rough'
        ? 'runs rough'
        : row.verdict === 'jams'
          ? 'jams'
          : 'not rolled';
  const tightest = row.meshes.reduce<number | undefined>(
    (least, mesh) => (least === undefined || mesh.backlashMinMm < least ? mesh.backlashMinMm : least),
    undefined,
  );
  return tightest === undefined || row.verdict === 'jams'
    ? verdict
    : `${verdict}, ${tightest.toFixed(2)} mm of play`;
}

/** What a row does to the speed of what comes out. */
export function tellSpeed({ speed }: SubstituteRow): string {
  if (!speed) return 'speed: not known';
  if (Math.abs(speed.changePercent) < 1e-9) return 'same speed';
  const size = Number(Math.abs(speed.changePercent).toPrecision(3));
  const way = speed.changePercent > 0 ? 'faster' : 'slower';
  const judged = speed.isWithin === null ? '' : speed.isWithin ? ', near enough' : ', too far off';
  return `${size} % ${way}${judged}`;
}

/** The work that a row needs. */
export function tellWork({ reworks, from, kind }: SubstituteRow): string {
  if (from === 'made') return 'to make';
  if (kind === 'look-alike') return 'will not run';
  if (reworks.length === 0) return 'nothing to alter';
  return reworks.map((one) => workWords[one.kind] ?? one.kind).join(', ');
}

const workWords: Readonly<Record<string, string>> = {
  ream: 'ream the bore',
  drill: 'drill the bore',
  bush: 'bush the bore',
  shorten: 'shorten it',
  'fix-hub': 'fix the hub',
  join: 'join it to its other half',
  flat: 'file a flat',
};

/** Where a row comes from. */
export function tellFrom(row: SubstituteRow): string {
  if (row.from === 'own') return ['yours', row.part?.kept ?? ''].filter((one) => one !== '').join(', ');
  if (row.from === 'made') return row.processes[0]?.name ?? 'too fine for any process here';
  const count = row.part?.count;
  return count && count > 1 ? `sold, ${count} in a bag` : 'sold one by one';
}

export function asSentence(text: string): string {
  const plain = text.trim();
  return `${plain.charAt(0).toUpperCase()}${plain.slice(1)}${/[.!?]$/.test(plain) ? '' : '.'}`;
}
