import { findDiameters } from '../involute/gear-diameters.ts';
import { innerPart } from '../solid/check-form.ts';
import type { Hub, PlacedSection, WheelForm } from '../solid/wheel-form.ts';

/** One wheel of a compound gear, planned on its own. */
export interface PartWheel {
  readonly name: string;
  readonly form: WheelForm;
  /** From the part's lower end to the lower face of its teeth, mm, where that is known */
  readonly height: number | undefined;
  /** Whether its hubs were given, and are not what measuring a whole part leaves over */
  readonly hasGivenHubs: boolean;
  /** Where it stands in the job: starts the field of a Fail */
  readonly place: string;
}

/**
 * One part of several wheels on one axis: the first wheel's form with the others placed on it. The first one's bore
 * runs through all. What is not known is assumed and said: a wheel without its height stands on the ones before it; a
 * gap gets a neck.
 */
export function joinParts(
  first: PartWheel,
  others: readonly PartWheel[],
): { readonly form: WheelForm; readonly warnings: readonly string[] } {
  const warnings: string[] = [];
  const placed = placeWheels([first, ...others], warnings);
  const trimmed = placed.map((one) => ({ ...one, hubs: trimHubs(one, placed) }));
  const joined = addNecks(trimmed, warnings);
  const [base, ...rest] = joined;
  if (others.some(({ form }) => form.phase === undefined) && first.form.phase === undefined) {
    warnings.push(
      'How the teeth of one wheel stand to those of the other was not given: a tooth of each is in line. That matters only where the machine is timed.',
    );
  }
  return {
    form: {
      ...first.form,
      hubs: base.hubs,
      others: rest.map(({ wheel, hubs, height }): PlacedSection => {
        const {
          bore: _,
          rimDiameter: __,
          marks: ___,
          others: ____,
          crossHole: _____,
          ...section
        } = wheel.form;
        return { ...section, hubs, offset: height - base.height, place: wheel.place };
      }),
    },
    warnings,
  };
}

interface Placed {
  readonly wheel: PartWheel;
  readonly height: number;
  readonly hubs: readonly Hub[];
}

function placeWheels(wheels: readonly PartWheel[], warnings: string[]): Placed[] {
  const known = wheels.filter(({ height }) => height !== undefined);
  let top = Math.max(...known.map(({ height, form }) => (height ?? 0) + form.faceWidth), 0);
  return wheels.map((wheel, k) => {
    let { height } = wheel;
    if (height === undefined) {
      height = top;
      if (k > 0 || known.length > 0)
        warnings.push(
          `How high the teeth of ${wheel.name} stand on the part was not measured: here they stand on the others. Measure it before you make the part.`,
        );
      top += wheel.form.faceWidth;
    }
    return { wheel, height, hubs: wheel.form.hubs };
  });
}

/** A hub that measuring found goes as far as the next wheel whose roots it does not fit into. */
function trimHubs(one: Placed, all: readonly Placed[]): Hub[] {
  if (one.wheel.hasGivenHubs) return [...one.hubs];
  return one.hubs.flatMap((hub) => {
    const face = hub.side === 'top' ? one.height + one.wheel.form.faceWidth : one.height;
    let { length } = hub;
    for (const other of all) {
      if (other === one || hub.diameter <= findDiameters(other.wheel.form.spec).root * innerPart) continue;
      const gap = hub.side === 'top' ? other.height - face : face - other.height - other.wheel.form.faceWidth;
      if (gap >= -1e-9) length = Math.min(length, gap);
    }
    return length > 1e-6 ? [{ ...hub, length }] : [];
  });
}

/** Between two wheels that nothing joins yet: a neck that fits into the smaller one's roots. */
function addNecks(placed: readonly Placed[], warnings: string[]): Placed[] {
  const order = [...placed].sort((a, b) => a.height - b.height);
  const necks = new Map<Placed, Hub>();
  for (let k = 0; k + 1 < order.length; k++) {
    const [lower, upper] = [order[k], order[k + 1]];
    const from = lower.height + lower.wheel.form.faceWidth;
    const gap = upper.height - from;
    const reach = (one: Placed, side: Hub['side']): number =>
      Math.max(
        0,
        ...one.hubs.filter((hub) => hub.side === side).map(({ length }) => length),
        ...(one.wheel.form.flanges ?? [])
          .filter((flange) => flange.side === side)
          .map(({ thickness }) => thickness),
      );
    const isOpen = gap - reach(lower, 'top') - reach(upper, 'bottom') > 1e-6;
    if (!isOpen || lower.hubs.some(({ side }) => side === 'top')) continue;
    const roots = [lower, upper].map(({ wheel }) => findDiameters(wheel.form.spec).root);
    const diameter = Math.floor(Math.min(...roots) * 0.95 * 100) / 100;
    warnings.push(
      `What joins ${lower.wheel.name} and ${upper.wheel.name} was not measured: a neck of ${diameter} mm stands in for it.`,
    );
    necks.set(lower, { side: 'top', diameter, length: gap });
  }
  return placed.map((one) => {
    const neck = necks.get(one);
    return neck ? { ...one, hubs: [...one.hubs, neck] } : one;
  });
}
