import { namePitch, tellOdds, type WheelReport } from '../../index.ts';

/** A size is out once it is less likely than this; it was in while it was more likely. */
const outBelow = 0.01;
/** Sizes that one sentence can name. */
const mostNamed = 2;

/**
 * The drawing in one sentence, and what the last reading changed: "Now metric size 0.5 (module), 19 in 20; inch size
 * 48 (DP) is out." Without an earlier report: what it could be.
 */
export function tellFocus(before: WheelReport | undefined, now: WheelReport): string {
  const lead = now.pitch[0];
  if (!lead || now.verdict === 'nothing-fits') return 'No gear I know gives these readings.';
  const teeth = now.candidates[0]?.teeth;
  const others = now.pitch.slice(1).filter((one) => one.probability >= outBelow);
  const name = `${namePitch(lead)}${teeth === undefined ? '' : `, ${teeth} teeth`}`;
  const odds = tellOdds(lead.probability);
  if (lead.probability < 0.5) {
    const kept = others.length;
    return `Can't tell yet: ${namePitch(lead)} leads, ${odds}; ${kept} other ${kept === 1 ? 'size' : 'sizes'} could be it.`;
  }
  const out = (before?.pitch ?? []).filter(
    (one) => one.probability >= outBelow && !isStillIn(one, now) && !isSame(one, lead),
  );
  if (before && out.length > 0) {
    const named = out.slice(0, mostNamed).map(namePitch);
    const more = out.length - named.length;
    const list = more > 0 ? [...named, `${more} more`] : named;
    return `Now ${name}, ${odds}; ${join(list)} ${list.length === 1 ? 'is' : 'are'} out.`;
  }
  const start = before ? (isSame(before.pitch[0], lead) ? 'Still' : 'Now') : 'Drawn as';
  if (others.length === 0) return `${start} ${name}, ${odds}.`;
  return `${start} ${name}, ${odds}; it could also be ${join(others.slice(0, mostNamed).map(namePitch), 'or')}.`;
}

type Pitch = WheelReport['pitch'][number];

function isSame(a: Pitch | undefined, b: Pitch): boolean {
  return a !== undefined && a.system === b.system && (a.system === 'free' || a.size === b.size);
}

function isStillIn(pitch: Pitch, now: WheelReport): boolean {
  return now.pitch.some((one) => isSame(one, pitch) && one.probability >= outBelow);
}

function join(words: readonly string[], last = 'and'): string {
  return words.length < 2
    ? words.join('')
    : `${words.slice(0, -1).join(', ')} ${last} ${words[words.length - 1]}`;
}
