import type { FoundCompensation } from '../../index.ts';

type Figures = FoundCompensation['figures'];

/** What a machine adds, in sentences: a side and on a diameter, always labelled which, mm. */
export function tellFigures(figures: Figures, uncertainty: Partial<Figures> | undefined): string[] {
  const line = (
    what: string,
    value: number,
    give: number | undefined,
    more: string,
    less: string,
  ): string => {
    const size = Math.abs(value).toFixed(2);
    const sure = give === undefined ? '' : `, give or take ${give.toFixed(2)}`;
    if (size === '0.00') return `${what}: as drawn${sure}.`;
    const twice = (2 * Math.abs(value)).toFixed(2);
    return `${what}: ${size} mm ${value > 0 ? more : less} a side (${twice} on a diameter)${sure}.`;
  };
  return [
    line('Outsides', figures.outsidePerSideMm, uncertainty?.outsidePerSideMm, 'larger', 'smaller'),
    line('Teeth', figures.teethPerSideMm, uncertainty?.teethPerSideMm, 'fatter', 'thinner'),
    line('Holes', figures.holesPerSideMm, uncertainty?.holesPerSideMm, 'smaller', 'larger'),
    ...(figures.firstLayerPerSideMm === 0
      ? []
      : [
          line(
            'First-layer bulge',
            figures.firstLayerPerSideMm,
            uncertainty?.firstLayerPerSideMm,
            'wider',
            'narrower',
          ),
        ]),
    ...(Math.abs(figures.scalePercent) < 0.005
      ? []
      : [
          `All of it: ${Math.abs(figures.scalePercent).toFixed(2)} % ${figures.scalePercent > 0 ? 'larger' : 'smaller'}.`,
        ]),
  ];
}
