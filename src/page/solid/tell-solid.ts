import type { ShapedPart } from '../../index.ts';
import { formatLength } from '../words/format-length.ts';

/** What the picture of the solid shows, in a sentence or two: for who can't see it, and as its caption. */
export function tellSolid(
  part: Pick<ShapedPart, 'form' | 'isTrial'>,
  isCut: boolean,
  unit: 'mm' | 'in',
): string {
  const { kind, teeth, tipDiameter, faceWidth, helixAngle, rimDiameter } = part.form;
  const length = (mm: number): string => `${formatLength(mm, unit)} ${unit}`;
  const degrees = Math.round((Math.abs(helixAngle) * 180) / Math.PI);
  const parts = [
    `${part.isTrial ? 'Trial part: ' : ''}${teeth} ${degrees === 0 ? 'teeth' : `teeth, slanted ${degrees}° to the ${helixAngle > 0 ? 'right' : 'left'}`}`,
    kind === 'rack' ? `${length(tipDiameter)} long` : `${length(tipDiameter)} across the tips`,
    `${length(faceWidth)} wide`,
  ];
  if (kind === 'internal') parts.push(`teeth inside a ring of ${length(rimDiameter ?? 0)}`);
  if (kind === 'external') parts.push(tellBore(part.form.bore, length), ...tellHubs(part.form.hubs, length));
  return `${parts.join(', ')}.${isCut ? ` ${cutSentences[kind]}` : ''}`;
}

const cutSentences = {
  external: 'Cut open along its axis; hatched where it is cut.',
  internal: 'Cut open along its axis; hatched where it is cut.',
  rack: 'Cut across its middle; hatched where it is cut.',
} as const;

function tellBore(bore: ShapedPart['form']['bore'], length: (mm: number) => string): string {
  switch (bore.shape) {
    case 'none':
      return 'no bore';
    case 'round':
      return `bore ${length(bore.diameter)}`;
    case 'd':
      return `D bore ${length(bore.diameter)}, ${length(bore.flat)} from the flat`;
    case 'double-d':
      return `bore ${length(bore.diameter)} with two flats ${length(bore.flat)} apart`;
    case 'hex':
      return `six-sided bore ${length(bore.acrossFlats)} across its flats`;
    case 'square':
      return `square bore ${length(bore.acrossFlats)} across its flats`;
    case 'spline':
      return `bore ${length(bore.diameter)} across its ${bore.count} grooves`;
    case 'knurl':
      return `bore ${length(bore.diameter)} with ${bore.count} notches for a knurled shaft`;
  }
}

function tellHubs(hubs: ShapedPart['form']['hubs'], length: (mm: number) => string): string[] {
  if (hubs.length === 0) return ['no hub'];
  return hubs.map(
    (hub) =>
      `hub ${hub.side === 'top' ? 'above' : 'below'} ${length(hub.diameter)} across and ${length(hub.length)} long`,
  );
}
