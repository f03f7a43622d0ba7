import type { Wheel, WheelDrawing } from '../../index.ts';
import { type LaidDimension, labelWidth } from './laid-dimension.ts';
import type { Dimension } from './list-dimensions.ts';
import { placeJaws } from './place-jaws.ts';
import type { Section } from './section-profile.ts';
import { traceRack } from './trace-path.ts';

/** The room that the views need, mm, and where each dimension lies on them. */
export interface Views {
  readonly halfWidth: number;
  readonly up: number;
  readonly down: number;
  readonly sectionLength: number;
  readonly isRound: boolean;
  readonly dimensions: readonly LaidDimension[];
}

export function measureViews(
  wheel: Wheel,
  drawing: WheelDrawing,
  kind: 'external' | 'internal' | 'rack',
  section: Section,
  dimensions: readonly Dimension[],
): Views {
  const lead = drawing.gears[0];
  const laid = dimensions.map((one): LaidDimension => {
    const [from, to] = findExtent(one);
    const turn = one.slot.of === 'span' ? (placeJaws(lead, one.slot, kind, wheel)?.angle ?? 0) : 0;
    return { key: one.key, of: one.slot.of, from, to, turn, width: labelWidth(one.name, one.value) };
  });
  const size = { sectionLength: section.length, dimensions: laid };
  if (kind === 'rack') {
    const piece = traceRack(lead);
    return { ...size, halfWidth: piece.halfLength, up: piece.tip, down: -piece.back, isRound: false };
  }
  const radius = Math.max(section.radius, ...drawing.gears.map((gear) => gear.tipDiameterMm / 2));
  return { ...size, halfWidth: radius, up: radius, down: radius, isRound: true };

  function findExtent({ slot }: Dimension): readonly [number, number] {
    switch (slot.of) {
      case 'face-width':
        return [0, section.faceWidth];
      case 'overall-length':
        return [0, section.length];
      case 'hub-diameter':
        return [0, section.hubRadius ?? 0];
      case 'bore':
      case 'shaft':
        return [0, (section.boreDiameter ?? 0) / 2];
      case 'outside':
        return [-lead.tipDiameterMm / 2, lead.tipDiameterMm / 2];
      case 'root':
        return [-lead.rootDiameterMm / 2, lead.rootDiameterMm / 2];
      case 'span':
      case 'over-pins':
      case 'rack-pitch': {
        const opening = placeJaws(lead, slot, kind, wheel)?.opening ?? lead.referenceDiameterMm;
        return [-opening / 2, opening / 2];
      }
      default:
        return [0, 0];
    }
  }
}
