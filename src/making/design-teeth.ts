import { flankErrors, trueBacklash } from '../../gear-library/lasting.ts';
import { findDiameters } from '../involute/gear-diameters.ts';
import type { GearSpec } from '../involute/gear-spec.ts';
import { findGeneratingRack } from '../involute/generating-rack.ts';
import { findTipLand, referenceToothThickness, toothThicknessAt } from '../involute/tooth-thickness.ts';
import { bisect } from '../numeric/bisect.ts';
import type { WheelForm } from '../solid/wheel-form.ts';
import { findFormFactor } from '../strength/find-form-factor.ts';
import { traceToothHalf } from '../strength/trace-tooth-half.ts';
import type { ChangeKey, DesignMate, DesignTask, Proposal } from './part-design.ts';
import { findWorsening, rollWithMate, sameLength } from './roll-with-mates.ts';
import { shortName } from './short-name.ts';

type Step = (form: WheelForm, task: DesignTask) => Proposal | undefined;

/** The steps that change teeth, in order. Each looks at the form that the steps before it left. */
export const toothSteps: readonly Step[] = [
  designSpur,
  designBacklash,
  designMoisture,
  designWarmth,
  designTipLand,
  designFillet,
];

/** A helical wheel as the spur wheel of its transverse section: the same circles and flanks, without the helix. */
export function straighten(spec: GearSpec): GearSpec {
  const { helixAngle } = spec;
  const cosine = Math.cos(helixAngle);
  return {
    ...spec,
    module: spec.module / cosine,
    pressureAngle: Math.atan(Math.tan(spec.pressureAngle) / cosine),
    helixAngle: 0,
    profileShift: spec.profileShift * cosine,
    addendum: spec.addendum * cosine,
    dedendum: spec.dedendum * cosine,
    rootRadius: spec.rootRadius * cosine,
    thinning: spec.thinning / cosine,
  };
}

function designSpur(form: WheelForm, task: DesignTask): Proposal | undefined {
  const { spec } = form;
  if (spec.helixAngle === 0) return undefined;
  const degrees = Math.round((spec.helixAngle * 1800) / Math.PI) / 10;
  const change = {
    key: 'spur-pair' as const,
    what: 'straight teeth in place of slanted ones',
    from: degrees,
    to: 0,
    unit: 'degrees' as const,
    why: `Straight teeth print cleaner and push nothing along the shaft, but a straight wheel runs with a straight mate only: both are made new, with the transverse section of the old ones (module ${show(spec.module / Math.cos(spec.helixAngle))}), so circles and distance stay.`,
    canTurnOff: true,
  };
  if (!task.wantsSpur)
    return { change: { ...change, withdrawn: 'It is made only where it is asked for, and as a pair.' } };
  const left = task.mates.find(({ turnsSpur }) => !turnsSpur);
  if (left || task.mates.length === 0) {
    const who = left ? `"${left.id}" stays as it is` : 'no mate is known';
    return { change: { ...change, withdrawn: `Only as a pair: ${who}. Ask for it on both wheels.` } };
  }
  return { change, form: { ...form, spec: straighten(spec) } };
}

function hasCenter(mate: DesignMate): mate is DesignMate & { center: NonNullable<DesignMate['center']> } {
  return mate.center !== undefined;
}

/** The play is put on the printed part alone: the mate and the shafts are as they are. */
function designBacklash(form: WheelForm, task: DesignTask): Proposal | undefined {
  const stray = flankErrors.find(({ process }) => process === task.process.key)?.mm ?? 0;
  const { spec } = form;
  let thinned = spec;
  let found = Number.POSITIVE_INFINITY;
  let least = 0;
  // The second round takes up what arcs at the reference circle are not at the working one.
  for (let round = 0; round < 2; round++) {
    let lack = 0;
    for (const mate of task.mates.filter(hasCenter)) {
      const proof = rollWithMate(thinned, mate);
      if (!proof || !Number.isFinite(proof.mean.backlashLeast)) continue;
      const wanted = trueBacklash.modules * Math.min(spec.module, mate.wheel.spec.module) + 2 * stray;
      if (round === 0 && proof.mean.backlashLeast < found) {
        found = proof.mean.backlashLeast;
        least = wanted;
      }
      lack = Math.max(lack, wanted - proof.mean.backlashLeast);
    }
    if (lack < leastThinning) break;
    thinned = { ...thinned, thinning: thinned.thinning + lack * Math.cos(spec.helixAngle) };
  }
  if (thinned === spec) return undefined;
  const { to, isHeld } = holdThickness(thinned, spec, task);
  const was = found < 0 ? `lies ${show(-found)} mm too tight` : `has ${show(found)} mm of play`;
  return propose('backlash', 'teeth thinned for play', form, to, {
    why: `At its distance the pair ${was} where ${show(least)} mm is wanted: ${show(trueBacklash.modules)} of the module, and twice the ${show(stray)} mm that flanks of a ${shortName(task.process)} stray. It all goes on this part: mate and shafts stay.${isHeld ? ` The teeth are left two lines thick, which is less play than wanted.` : ''}`,
  });
}

/** Less is within an outline's own error. */
const leastThinning = 0.003;

/** Teeth stay two lines thick at the reference circle, and half as thick as they were. */
function holdThickness(
  thinned: GearSpec,
  spec: GearSpec,
  { process }: DesignTask,
): { readonly to: GearSpec; readonly isHeld: boolean } {
  const before = referenceToothThickness(spec);
  const least = Math.max(0.5 * before, 2 * process.lineMm);
  const lack = least - referenceToothThickness(thinned);
  if (lack <= 0) return { to: thinned, isHeld: false };
  return { to: { ...thinned, thinning: Math.max(spec.thinning, thinned.thinning - lack) }, isHeld: true };
}

function designMoisture(form: WheelForm, task: DesignTask): Proposal | undefined {
  const { material, isWet } = task;
  const growth = (isWet ? material.growthSoakedPercent.value : material.growthRoomPercent.high) / 100;
  return growTeeth('moisture', form, task, growth, (loss, size) => {
    const when = isWet ? 'when it is soaked' : 'in damp room air';
    return `${shortName(material)} grows ${show(growth * 100)} % ${when}: ${show(size)} mm on its diameter, which takes ${show(loss)} mm of the play.`;
  });
}

function designWarmth(form: WheelForm, task: DesignTask): Proposal | undefined {
  const { material, temperatureC, warmBecause } = task;
  const growth = Math.max(0, temperatureC - roomTemperature) * material.expansion.value * 1e-6;
  return growTeeth('warmth', form, task, growth, (loss, size) => {
    const where = warmBecause ? ` ${warmBecause}` : '';
    return `At ${show(temperatureC)} °C${where} it is ${show(size)} mm larger, which takes ${show(loss)} mm of the play; mate and frame are reckoned as if they stayed.`;
  });
}

const roomTemperature = 23;

/** mm: less is within a caliper's last digit. */
const leastGrowth = 0.01;

/**
 * A wheel that grows by g works as if the shafts stood g d/2 nearer: the play loses 2 Δa tan α to first order (trade
 * rule; value from memory). Its teeth are thinned by that.
 */
function growTeeth(
  key: 'moisture' | 'warmth',
  form: WheelForm,
  task: DesignTask,
  growth: number,
  tell: (loss: number, size: number) => string,
): Proposal | undefined {
  const { spec } = form;
  if (spec.kind !== 'external' || growth <= 0) return undefined;
  const { reference, transversePressureAngle } = findDiameters(spec);
  const size = growth * reference;
  const loss = size * Math.tan(transversePressureAngle);
  if (loss < leastGrowth) return undefined;
  const thinned = { ...spec, thinning: spec.thinning + loss * Math.cos(spec.helixAngle) };
  const { to } = holdThickness(thinned, spec, task);
  return propose(
    key,
    key === 'moisture' ? 'teeth thinned for moisture' : 'teeth thinned for warmth',
    form,
    to,
    {
      why: tell(loss, size),
    },
  );
}

function propose(
  key: ChangeKey,
  what: string,
  form: WheelForm,
  spec: GearSpec,
  { why }: { readonly why: string },
): Proposal {
  const isSame = spec.thinning === form.spec.thinning;
  return {
    change: {
      key,
      what,
      from: micron(form.spec.thinning),
      to: micron(spec.thinning),
      unit: 'mm',
      why,
      canTurnOff: true,
      ...(isSame ? { withdrawn: 'The teeth are as thin as this process can make them already.' } : {}),
    },
    ...(isSame ? {} : { form: { ...form, spec } }),
  };
}

function designTipLand(form: WheelForm, { process }: DesignTask): Proposal | undefined {
  const { spec } = form;
  if (spec.kind !== 'external' || process.lineMm === 0) return undefined;
  const land = findTipLand(spec);
  if (land >= process.lineMm) return undefined;
  const { tip, reference, base } = findDiameters(spec);
  const floor = Math.max(base, reference + 2 * spec.module * (spec.profileShift - 0.2));
  const change = {
    key: 'tip-land' as const,
    what: 'tips cut back',
    from: micron(tip),
    unit: 'mm' as const,
    canTurnOff: true,
  };
  const reason = `Its tips are ${show(Math.max(0, land))} mm wide; a ${shortName(process)} draws nothing narrower than its line of ${show(process.lineMm)} mm.`;
  if (toothThicknessAt(spec, floor) < process.lineMm) {
    return {
      change: {
        ...change,
        to: null,
        why: reason,
        withdrawn: 'However far they are cut back, they stay narrower than a line: use a finer process.',
      },
    };
  }
  const { holding } = bisect((at) => toothThicknessAt(spec, at) >= process.lineMm, floor, tip);
  const to = Math.floor(holding * 1000) / 1000;
  return {
    change: { ...change, to, why: reason },
    form: { ...form, spec: { ...spec, tipDiameter: to } },
  };
}

/** The largest round at the root that every mate's tip clears, also with the shafts twice their uncertainty nearer. */
function designFillet(form: WheelForm, task: DesignTask): Proposal | undefined {
  const { spec } = form;
  const mates = task.mates.filter(hasCenter);
  if (spec.kind !== 'external' || mates.length === 0) return undefined;
  const most = findGreatestRadius(spec);
  if (most <= spec.rootRadius + leastRadius) return undefined;
  const before = mates.map((mate) => rollWithMate(spec, mate, 2 * mate.center.u));
  if (before.some((proof) => !proof)) return undefined;
  const clears = (rootRadius: number): boolean =>
    mates.every((mate, i) => {
      const after = rollWithMate({ ...spec, rootRadius }, mate, 2 * mate.center.u);
      const was = before[i];
      return (
        after !== undefined &&
        was !== undefined &&
        findWorsening(was, after) === undefined &&
        // Play is unlike only where a tip has met the fillet.
        !(after.mean.backlashLeast < was.mean.backlashLeast - sameLength)
      );
    });
  const rootRadius = clears(most) ? most : bisectShort(clears, spec.rootRadius, most);
  if (rootRadius <= spec.rootRadius + leastRadius) return undefined;
  const rounded = { ...spec, rootRadius };
  const [was, is] = [spec, rounded].map(findTipFactor);
  const mm = (value: number): number => micron(value * spec.module);
  const withdrawn = task.isSacrificial
    ? 'It is meant to give way first: it is not made stronger.'
    : is < was
      ? undefined
      : 'It would not lower the stress.';
  const how = `${rootRadius === most ? 'the largest that the rack holds, and' : 'the largest that'} every mate's tip clears, rolled with the shafts ${show(2 * Math.max(...mates.map(({ center }) => center.u)))} mm nearer`;
  return {
    change: {
      key: 'root-fillet',
      what: 'larger round at the roots',
      from: mm(spec.rootRadius),
      to: mm(rootRadius),
      unit: 'mm',
      why: `Teeth break at the root: this round is ${how}. A load at the tip then stresses the root by ${show(Math.abs(100 * (1 - is / was)))} % ${is <= was ? 'less' : 'more'}.`,
      canTurnOff: true,
      ...(withdrawn ? { withdrawn } : {}),
    },
    ...(withdrawn ? {} : { form: { ...form, spec: rounded } }),
  };
}

/** Coefficient: less is not worth a change. */
const leastRadius = 0.01;

/** Of the rack's corner at its full depth, in modules. */
function findGreatestRadius(spec: GearSpec): number {
  const { cornerRadius } = findGeneratingRack({ ...spec, rootRadius: 10 });
  return Math.floor((cornerRadius / spec.module) * 1000) / 1000;
}

function bisectShort(holds: (value: number) => boolean, from: number, to: number): number {
  let [holding, failing] = [from, to];
  for (let round = 0; round < 5; round++) {
    const middle = (holding + failing) / 2;
    if (holds(middle)) holding = middle;
    else failing = middle;
  }
  return Math.floor(holding * 1000) / 1000;
}

/** Y_F Y_S with the load at the tip. */
function findTipFactor(spec: GearSpec): number {
  const { tangent } = findFormFactor(traceToothHalf(spec));
  return tangent.form * tangent.concentration;
}

function micron(value: number): number {
  return Math.round(value * 1000) / 1000;
}

/** Three digits that count. */
function show(value: number): string {
  return String(Number(value.toPrecision(value >= 100 ? 3 : 2)));
}
