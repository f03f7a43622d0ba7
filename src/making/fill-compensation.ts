import type { Compensation } from './compensation.ts';

/** Figures as a person may state them: any may be left out. */
export type StatedCompensation = { readonly [Key in keyof Compensation]?: Compensation[Key] | undefined };

/** All figures of a compensation: 0 where nothing was stated, the teeth's as the outsides'. */
export function fillCompensation(stated: StatedCompensation | undefined): Compensation {
  return {
    scalePercent: stated?.scalePercent ?? 0,
    outsidePerSideMm: stated?.outsidePerSideMm ?? 0,
    teethPerSideMm: stated?.teethPerSideMm ?? stated?.outsidePerSideMm ?? 0,
    holesPerSideMm: stated?.holesPerSideMm ?? 0,
    firstLayerPerSideMm: stated?.firstLayerPerSideMm ?? 0,
  };
}
