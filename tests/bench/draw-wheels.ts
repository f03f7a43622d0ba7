import { slipRates } from '../../gear-library/slips.ts';
import { jawHabits, sizeScale, tipLandKept } from '../../gear-library/tooth-variation.ts';
import { involute } from '../../src/involute/involute-function.ts';
import type { Random } from '../../src/numeric/random.ts';
import { listPitches, listRacks } from '../../src/readings/pitch-prior.ts';
import { findThinning, listShifts, listTipLosses } from '../../src/readings/tooth-prior.ts';
import type { Damage, Reading, WheelEvidence } from '../../src/readings/wheel-evidence.ts';

/** A wheel drawn at random: what it truly is. Lengths mm, angles rad. */
export interface DrawnWheel {
  readonly system: string;
  readonly size: number;
  readonly module: number;
  readonly pressureAngle: number;
  readonly teeth: number;
  readonly addendum: number;
  readonly rootDepth: number;
  readonly shift: number;
  /** modules on the radius */
  readonly tipLoss: number;
  /** modules of arc */
  readonly thinning: number;
  /** relative */
  readonly scale: number;
  readonly tipLandKept: number;
  readonly zero: number;
}

const blank: WheelEvidence = {
  id: 'w',
  kind: 'external',
  damage: [],
  readings: [],
  kit: {},
  machine: {},
  mates: [],
};

/** Draws a wheel from the product's own prior. */
export function drawWheel(random: Random, damage: readonly Damage[] = []): DrawnWheel {
  const wheel = { ...blank, damage };
  const teeth = Math.round(7 * Math.exp(random.uniform() * Math.log(100 / 7)));
  const pitches = listPitches({});
  const pitch = pitches[random.index(pitches.map((one) => Math.exp(one.logWeight)))];
  const racks = listRacks({});
  const rack = racks[random.index(racks.map((one) => Math.exp(one.logWeight[pitch.system])))];
  const shifts = listShifts('external', teeth, rack.pressureAngle, 0, rack.rack.addendum);
  const losses = listTipLosses(wheel);
  const module = pitch.module * Math.exp(pitch.spread * random.normal());
  for (;;) {
    const shift = shifts[random.index(shifts.map((one) => Math.exp(one.logWeight)))];
    const loss = losses[random.index(losses.map((one) => Math.exp(one.logWeight)))];
    const x = shift.mean + shift.spread * random.normal();
    const tipLoss = loss.mean + loss.spread * random.normal();
    const thinning = findThinning(wheel).mean + findThinning(wheel).spread * random.normal();
    const tip = teeth + 2 * (rack.rack.addendum + x - tipLoss);
    const base = teeth * Math.cos(rack.pressureAngle);
    const land = tip > base ? landOf(teeth, rack.pressureAngle, x, tip) : -1;
    // A pointed tooth can't be made: its draw is taken again, shift and tip alone.
    if (land <= 0) continue;
    return {
      system: pitch.system,
      size: pitch.system === 'free' ? module : pitch.size,
      module,
      pressureAngle: rack.pressureAngle,
      teeth,
      addendum: rack.rack.addendum,
      rootDepth: rack.rack.dedendum + rack.rack.extraDedendum / module,
      shift: x,
      tipLoss,
      thinning,
      scale: sizeScale.plastic.spread * random.normal(),
      tipLandKept: tipLandKept.mean + tipLandKept.spread * random.normal(),
      zero: 0.02 * random.normal(),
    };
  }
}

/** A wheel from a narrower world than the prior: common sizes, two angles, modest shifts, little wear. */
export function drawNarrowWheel(random: Random): DrawnWheel {
  const sizes = [
    ['module', 0.3],
    ['module', 0.4],
    ['module', 0.5],
    ['module', 0.6],
    ['module', 0.8],
    ['module', 1],
    ['diametral-pitch', 32],
    ['diametral-pitch', 48],
    ['diametral-pitch', 64],
  ] as const;
  for (;;) {
    const [system, size] = sizes[Math.floor(random.uniform() * sizes.length)];
    const module = system === 'module' ? size : 25.4 / size;
    const teeth = 10 + Math.floor(50 * random.uniform());
    const old = system === 'diametral-pitch' && random.uniform() < 0.3;
    const pressureAngle = ((old ? 14.5 : 20) * Math.PI) / 180;
    const shift = teeth < 17 ? 0.5 * random.uniform() : 0;
    const tipLoss = 0.05 * random.uniform();
    const tip = teeth + 2 * (1 + shift - tipLoss);
    if (landOf(teeth, pressureAngle, shift, tip) <= 0) continue;
    return {
      system,
      size,
      module,
      pressureAngle,
      teeth,
      addendum: 1,
      rootDepth: old ? 1.157 : system === 'module' ? 1.25 : 1.2 + 0.0508 / module,
      shift,
      tipLoss,
      thinning: 0.02 + 0.03 * random.uniform(),
      scale: 0.001 * random.normal(),
      tipLandKept: 0.7 + 0.3 * random.uniform(),
      zero: 0.02 * random.normal(),
    };
  }
}

function landOf(teeth: number, pressureAngle: number, shift: number, tip: number): number {
  const base = teeth * Math.cos(pressureAngle);
  return (
    (Math.PI / 2 + 2 * shift * Math.tan(pressureAngle)) / teeth +
    involute(pressureAngle) -
    involute(Math.acos(base / tip))
  );
}

/** What the geometry gives for one reading of a drawn wheel, without any error, mm. */
export function trueReading(wheel: DrawnWheel, reading: Reading): number {
  const { module: m, teeth: z, shift: x, pressureAngle: a } = wheel;
  const grown = m * (1 + wheel.scale);
  if (reading.of === 'outside') {
    const tip = z + 2 * (wheel.addendum + x - wheel.tipLoss);
    if (z % 2 === 0) return grown * tip;
    const tau = wheel.tipLandKept * landOf(z, a, x, tip);
    if (reading.jaws === 'rocked') return grown * tip * Math.cos(Math.PI / (2 * z) - tau);
    if (reading.jaws === 'settled') return ((grown * tip) / 2) * (1 + Math.cos(Math.PI / z - tau));
    return grown * tip;
  }
  if (reading.of === 'root') {
    return grown * (z - 2 * (wheel.rootDepth - x)) * (z % 2 === 0 ? 1 : Math.cos(Math.PI / (2 * z)));
  }
  if (reading.of === 'span') {
    const k = reading.teeth ?? 0;
    return (
      grown *
      (Math.cos(a) * (Math.PI * (k - 0.5) + z * involute(a)) +
        2 * x * Math.sin(a) -
        wheel.thinning * Math.cos(a))
    );
  }
  throw new Error(`no drawn reading of ${reading.of}`);
}

/** The span over the most teeth that still touches below the tips, and one tooth less. */
export function spansOf(wheel: DrawnWheel): [number, number] {
  const { teeth: z, pressureAngle: a, shift: x } = wheel;
  let widest = 2;
  for (let k = 2; k < z / 2; k++) {
    const span = Math.cos(a) * (Math.PI * (k - 0.5) + z * involute(a)) + 2 * x * Math.sin(a);
    if (Math.hypot(z * Math.cos(a), span) < z + 2 * (wheel.addendum + x - wheel.tipLoss) - 0.1) widest = k;
  }
  return [Math.max(2, widest - 1), Math.max(3, widest)];
}

export type ReadingSet =
  | 'outside'
  | 'outside+root'
  | 'outside+span'
  | 'two spans'
  | 'outside+two spans'
  | 'all four';

/** Measures a drawn wheel with the default uncertainties of gear-library, odd counts as a caliper reads them. */
export function measureWheel(
  wheel: DrawnWheel,
  set: ReadingSet,
  random: Random,
  withSlips: boolean,
): WheelEvidence {
  const [near, wide] = spansOf(wheel);
  const readings: Reading[] = [{ of: 'teeth', count: wheel.teeth }];
  const jaws =
    wheel.teeth % 2 === 0 ? undefined : jawHabits[random.index(jawHabits.map((habit) => habit.weight))].jaws;
  const take = (reading: Reading, method: number, bias: number): void => {
    let mm = trueReading(wheel, reading) + bias + wheel.zero + Math.hypot(0.015, method) * random.normal();
    const slip = withSlips && random.uniform() < slipRates.wrong.chance;
    if (slip) mm += Math.max(0.25, 0.1 * mm) * random.normal();
    readings.push({ ...reading, mm } as Reading);
  };
  // Half of the people say how the jaws lay.
  const outside: Reading = { of: 'outside', jaws };
  if (set.includes('outside') || set === 'all four') {
    take(outside, 0.02, 0);
    if (random.uniform() < 0.5) {
      const last = readings[readings.length - 1];
      readings[readings.length - 1] = { ...last, jaws: undefined } as Reading;
    }
  }
  if (set.includes('root') || set === 'all four') take({ of: 'root' }, 0.05, 0.02);
  if (set === 'outside+span') take({ of: 'span', teeth: wide }, 0.015, 0);
  if (set.includes('two spans') || set === 'all four') {
    take({ of: 'span', teeth: near }, 0.015, 0);
    take({ of: 'span', teeth: wide }, 0.015, 0);
  }
  return { ...blank, readings, kit: {} };
}
