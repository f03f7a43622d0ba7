import type { PairDrawing } from '../../index.ts';

/** What the picture of a rolled pair shows, in words that stand beside it. */
export interface PairWords {
  /** How it runs at the measured distance */
  readonly verdict: string;
  /** Where it binds, or how much play there is where it is tightest */
  readonly spot: string;
  /** At which distances it runs */
  readonly distance: string;
  readonly cycle: string;
}

export function tellPair(pair: PairDrawing): PairWords {
  const { centerMm, uMm, freeFromMm, smoothFromMm, binds, figures, play } = pair;
  const at = `${centerMm.toFixed(2)} mm`;
  const verdict =
    pair.verdict === 'turns'
      ? `Turns at ${at}.`
      : pair.verdict === 'rough'
        ? `Runs rough at ${at}.`
        : `Jams at ${at}.`;
  const spot = binds
    ? `Binds here: ${whereWords[binds.where] ?? 'the teeth stand in each other'}, by ${binds.depthMm.toFixed(3)} mm.`
    : `Tightest here: ${figures.backlashLeast.toFixed(3)} mm of play.`;
  const give = uMm > 0 ? `, give or take ${uMm.toFixed(2)}` : '';
  const distance =
    freeFromMm === undefined
      ? `Free at no distance before the teeth part (measured: ${at}${give}).`
      : freeFromMm !== centerMm
        ? `Measured ${at}${give}. Turns from ${freeFromMm.toFixed(2)} mm${smoothly(smoothFromMm, freeFromMm)}.`
        : smoothFromMm === centerMm
          ? `Measured ${at}${give}: runs smoothly there.`
          : `Measured ${at}${give}: turns there${smoothly(smoothFromMm, freeFromMm)}.`;
  const passing = play.pitches === 1 ? 'one tooth passes' : `all ${play.pitches} meetings of teeth pass`;
  const cycle = `Play while ${passing}, mm: ${
    binds ? 'where the lines have crossed, marked above, nothing is left of it' : 'free between the two lines'
  }.`;
  return { verdict, spot, distance, cycle };
}

function smoothly(smoothFromMm: number | undefined, freeFromMm: number): string {
  if (smoothFromMm === undefined) return ', but smoothly at no distance';
  return smoothFromMm === freeFromMm ? '' : `, smoothly from ${smoothFromMm.toFixed(2)} mm`;
}

const whereWords: Readonly<Record<string, string>> = {
  'tip-root': 'a tip stands on the bottom of a gap',
  'tip-fillet': 'a tip runs into the curve at a tooth’s foot',
  'both-flanks': 'a tooth is too fat for its gap',
};
