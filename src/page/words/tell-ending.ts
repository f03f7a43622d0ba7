import { findPitchGap, type WheelReport } from '../../index.ts';

/** How a question ends where nothing more can be learned: what it means, and what to do. */
export interface EndingWords {
  readonly title: string;
  readonly text: string;
  /** A trial plate is the way on */
  readonly makesPlate: boolean;
}

const far = 'This is as far as your tools can tell.';

export function tellEnding(report: WheelReport): EndingWords | undefined {
  switch (report.ending) {
    case 'same-teeth':
      return {
        title: far,
        text: 'Two names, same teeth: it makes no difference.',
        makesPlate: false,
      };
    case 'either-runs-slowly':
      return {
        title: far,
        text: `They differ by ${findPitchGap(report).toFixed(3)} mm from tooth to tooth: either will run slowly. That is judged from the numbers; nothing was rolled.`,
        makesPlate: false,
      };
    case 'make-both':
      return {
        title: far,
        text: 'Make both and try: the trial plate holds each as a thin gear on the measured shaft, marked with one, two, three holes. Roll each by hand against the mate; smooth, bumps or jams is a reading like any other.',
        makesPlate: true,
      };
    case 'stop-here':
      return {
        title: 'Stop here.',
        text: 'With these tools nothing more can be learned about this gear. A scan, a gear of the same kind from another machine, or its maker would tell more.',
        makesPlate: false,
      };
    default:
      return undefined;
  }
}
