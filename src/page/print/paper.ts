/** A sheet of paper, upright, mm, and the margins of its frame (ISO 5457: 20 mm at the filing edge, 10 mm elsewhere). */
export interface Paper {
  readonly width: number;
  readonly height: number;
}

export const papers: Readonly<Record<'a4' | 'letter', Paper>> = {
  a4: { width: 210, height: 297 },
  letter: { width: 215.9, height: 279.4 },
};

export const filingMargin = 20;
export const margin = 10;

/** What lies inside the frame, mm. */
export function insideFrame(paper: Paper): Paper {
  return { width: paper.width - filingMargin - margin, height: paper.height - 2 * margin };
}
