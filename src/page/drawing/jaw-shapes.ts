import { drawFreehand } from './freehand.ts';
import { hatchRectangle } from './hatch.ts';
import type { JawPlace } from './place-jaws.ts';

/** One jaw in its own axes, mm: its face at x = 0, its body towards +x; the other one is its mirror image. */
export interface JawShape {
  readonly outline: string;
  /** The face that touches, hatched behind */
  readonly hatch: string;
  /** The body stands on the far side of the face: jaws that open into a hole */
  readonly isInside: boolean;
}

/** `side`: 1 for the jaw on the direction's side. `px`: one CSS pixel, mm. `tipRadius`: how far the teeth reach, mm. */
export function shapeJaw(
  place: JawPlace,
  side: 1 | -1,
  moduleMm: number,
  tipRadius: number,
  px: number,
): JawShape {
  switch (place.shape) {
    case 'span':
      return shapeSpanJaw(place, moduleMm, tipRadius, px);
    case 'blade':
    case 'inside-blade':
      return { ...shapeBlade(place, moduleMm, px), isInside: place.shape === 'inside-blade' };
    case 'rod':
      return side === 1 ? shapeBar(moduleMm, px) : shapeRod(place, moduleMm, px);
    case 'inside':
    case 'inside-pins':
      return {
        ...shapeFlat(place.across, Math.max(18 * px, Math.min(48 * px, place.opening * 0.2)), px, 0.6),
        isInside: true,
      };
    default:
      return {
        ...shapeFlat(
          place.across,
          Math.max(36 * px, Math.min(place.opening * 0.2, 120 * px)),
          px,
          1,
          place.shape === 'flat' ? place.reach : 0,
        ),
        isInside: false,
      };
  }
}

/** The depth rod's foot, lying across the tips. */
function shapeBar(m: number, px: number): JawShape {
  const half = Math.max(2.2 * m, 24 * px);
  return {
    outline: `M0 ${-half}H${12 * px}V${half}H0Z`,
    hatch: hatchRectangle({ left: 0, right: 6 * px, low: -half, high: half }, 4 * px),
    isInside: false,
  };
}

/** The depth rod, its end at x = 0, its length towards the foot. It is drawn mirrored, as the far jaw is. */
function shapeRod(place: JawPlace, m: number, px: number): JawShape {
  const half = Math.max(0.18 * m, 1.5 * px);
  const back = -(place.opening + 40 * px);
  return {
    outline: `M0 ${-half}H${back}${broken(back, -half, back, half, px)}L0 ${half}Z`,
    hatch: '',
    isInside: false,
  };
}

/** A flat jaw: it reaches a little past the contact and comes from below. */
function shapeFlat(
  across: number,
  length: number,
  px: number,
  part = 1,
  reach = 0,
): Omit<JawShape, 'isInside'> {
  const a = across;
  const w = 18 * px * part;
  const past = reach > 0 ? Math.min(26 * px, reach) : 26 * px * part;
  const top = a + past;
  const low = a - length;
  return {
    outline: `M0 ${top}L${w * 0.35} ${top}L${w} ${a + past - 18 * px * part}L${w} ${low}${broken(w, low, 0, low, px)}L0 ${top}`,
    hatch: hatchRectangle(
      { left: 0, right: w * 0.55, low: a - 18 * px * part, high: a + past - 12 * px * part },
      4 * px,
    ),
  };
}

/** A jaw that enters the gap from outside beside the last of k teeth, thin as far as the tips and strong beyond. */
function shapeSpanJaw(place: JawPlace, m: number, tipRadius: number, px: number): JawShape {
  const half = place.opening / 2;
  const tips = Math.sqrt(Math.max(0, tipRadius * tipRadius - half * half)) || tipRadius;
  const shoulder = Math.max(tips, place.across) + 0.2 * m + 4 * px;
  const top = shoulder + 40 * px;
  const w = 18 * px;
  const thin = Math.min(0.4 * m, w);
  const tip = place.reach;
  return {
    outline: `M0 ${tip}L${thin * 0.6} ${tip}L${thin} ${shoulder}L${w} ${shoulder + 12 * px}L${w} ${top}${broken(w, top, 0, top, px)}L0 ${tip}`,
    hatch: hatchRectangle({ left: 0, right: thin * 0.6, low: tip, high: shoulder }, 4 * px),
    isInside: false,
  };
}

/** A thin edge that reaches the bottom of a gap. */
function shapeBlade(place: JawPlace, m: number, px: number): Omit<JawShape, 'isInside'> {
  const a = place.across;
  const deep = place.reach + 4 * px;
  const back = deep + 32 * px;
  const edge = 0.16 * m;
  const foot = 0.42 * m;
  const half = Math.max(foot, 11 * px);
  return {
    outline: `M0 ${a - edge}L${deep} ${a - foot}L${back} ${a - half}${broken(back, a - half, back, a + half, px)}L${deep} ${a + foot}L0 ${a + edge}Z`,
    hatch: hatchRectangle({ left: edge, right: deep, low: a - edge, high: a + edge }, 4 * px),
  };
}

function broken(x0: number, y0: number, x1: number, y1: number, px: number): string {
  return drawFreehand([x0, y0], [x1, y1], 2 * px).replace(/^M/, 'L');
}
