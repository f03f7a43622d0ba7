import { type DrawnGear, kindOf, type Wheel, type WheelDrawing } from '../../index.ts';
import { isSameSlot, type Slot } from '../state/slot.ts';
import { type JawPlace, placeJaws } from './place-jaws.ts';

/** The jaws on the drawing: where they stand for the leading gear and how far they are open now. */
export interface SetJaws {
  readonly place: JawPlace;
  /** mm between the faces */
  readonly opening: number;
  /** How far the two leading gears' readings lie apart, mm; undefined where there is one only or they can't be told */
  readonly apart?: number | undefined;
  /** Where the same pins would rest on the rivals */
  readonly rivalPins: readonly {
    readonly gear: DrawnGear;
    readonly along: number;
    readonly across: number;
  }[];
}

/** Jaws that wait for a reading stand this far off the gear on either side, mm at scale 1:1 on the screen. */
const waitingPx = 8;

/**
 * Sets the jaws for a slot. Until a length is typed they stand open; then they close on it. What is typed is compared
 * with what a caliper would show on the leading gear, so that slanted teeth, whose round outline is wider than what
 * the jaws touch, close rightly too.
 */
export function setJaws({
  wheel,
  drawing,
  asked,
  slot,
  typedMm,
  pxPerMm,
}: {
  readonly wheel: Wheel;
  readonly drawing: WheelDrawing;
  readonly asked: readonly Slot[];
  readonly slot: Slot;
  readonly typedMm?: number | undefined;
  readonly pxPerMm: number;
}): SetJaws | undefined {
  const lead: DrawnGear | undefined = drawing.gears[0];
  const place = lead && placeJaws(lead, slot, kindOf(wheel), wheel);
  if (!place) return undefined;
  const row = asked.findIndex((one) => isSameSlot(one, slot));
  const expected = row < 0 ? undefined : drawing.expected[row];
  const first = expected?.[0] ?? undefined;
  const second = expected?.[1] ?? undefined;
  const isInside = place.shape.startsWith('inside') || place.shape === 'rod';
  const waiting = (isInside ? -1 : 1) * Math.min((2 * waitingPx) / pxPerMm, place.opening / 2);
  const opening =
    typedMm === undefined ? place.opening + waiting : place.opening + typedMm - (first ?? place.opening);
  return {
    place,
    // A slip by a factor of ten would send the jaws off the sheet; they stop where one still sees them.
    opening: Math.min(Math.max(opening, 0), 1.6 * place.opening + 60 / pxPerMm),
    rivalPins: place.pin
      ? drawing.gears.slice(1).flatMap((gear) => {
          const pin = placeJaws(gear, slot, kindOf(wheel), wheel)?.pin;
          return pin ? [{ gear, along: pin.along, across: pin.across }] : [];
        })
      : [],
    apart: first === undefined || second === undefined ? undefined : Math.abs(first - second),
  };
}
