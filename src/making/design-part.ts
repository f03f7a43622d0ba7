import { weakLink } from '../../gear-library/lasting.ts';
import { type Material, materials } from '../../gear-library/materials.ts';
import { type Process, processes } from '../../gear-library/processes.ts';
import { Fail } from '../fail.ts';
import type { WheelForm } from '../solid/wheel-form.ts';
import { checkTooth, type ToothDuty, type ToothStrength } from '../strength/check-tooth.ts';
import { checkHub } from './check-hub.ts';
import { designBore, designHub, designRim } from './design-body.ts';
import { straighten, toothSteps } from './design-teeth.ts';
import { findCoarserPairs } from './find-coarser-pairs.ts';
import type { DesignMate, DesignTask, PartChange, PartDesign, Proposal } from './part-design.ts';
import { findWorsening, rollWithMate } from './roll-with-mates.ts';
import { shortName } from './short-name.ts';

/**
 * The part that lasts, from the old wheel's plan: every change that its process, material, load and mates ask for,
 * each made in turn, rolled with every mate whose distance is known, and taken back where a pair runs worse for it.
 * Changes that are switched off are shown, not made; with all of them off the form is the plan's, unchanged.
 *
 * Throws Fail `too-fine` where the teeth are finer than the process can make and `fineness` isn't switched off: its
 * details hold the nearest ways out. Else as `checkTooth` does.
 */
export function designPart(task: DesignTask): PartDesign {
  const changes: PartChange[] = [];
  const notes: string[] = [];
  changes.push(...checkFineness(task));
  const material = chooseMaterial(task, changes);
  const chosen: DesignTask = { ...task, material };

  // 1. The teeth, each change proven by rolling.
  let form = task.form;
  let mates = task.mates;
  for (const step of toothSteps) {
    const proposal = step(form, { ...chosen, mates });
    if (!proposal) continue;
    const { change, next } = decide(proposal, form, chosen, (made) => {
      const turned = proposal.change.key === 'spur-pair' ? mates.map(straightenMate) : mates;
      return findMateWorse(form, made, mates, turned);
    });
    changes.push(change);
    if (next !== form && change.key === 'spur-pair') mates = mates.map(straightenMate);
    form = next;
  }

  // 2. Width, and which wheel gives way first.
  const alone: DesignTask = { ...chosen, mates };
  for (const step of [designWidth, designWeakLink]) {
    const proposal = step(form, alone);
    if (!proposal) continue;
    const { change, next } = decide(proposal, form, alone, () => undefined);
    changes.push(change);
    form = next;
  }

  // 3. The body.
  const bore = designBore(form, alone);
  let hold: PartDesign['hold'];
  let bushOutside: number | undefined;
  if (bore) {
    const { change, next } = decide(bore.proposal, form, alone, () => undefined);
    changes.push(change);
    if (change.isOn) ({ hold, bushOutside } = bore);
    form = next;
  }
  for (const step of [designHub, designRim]) {
    const proposal = step(form, alone);
    if (!proposal) continue;
    const { change, next } = decide(proposal, form, alone, () => undefined);
    changes.push(change);
    form = next;
  }

  // 4. The proof of the whole.
  const rolled = task.mates.flatMap((mate, i) => {
    if (mate.center === undefined) {
      notes.push(`Not rolled with "${mate.id}": the distance of their shafts is missing.`);
      return [];
    }
    const at = { ...mate, center: mate.center };
    const before = rollWithMate(task.form.spec, at, 0, {});
    const after = rollWithMate(form.spec, { ...at, wheel: mates[i].wheel }, 0, {});
    if (before && after) return [{ mate: mate.id, before, after }];
    notes.push(`Not rolled with "${mate.id}": the two have no outlines that meet.`);
    return [];
  });
  if (task.mates.length === 0)
    notes.push('No mate is known: play and roots were left as they are, since nothing proves a change.');
  return {
    form,
    material,
    process: task.process,
    hold,
    bushOutside,
    changes,
    rolled,
    notes,
    strength: {
      before: checkStrength(task.form, chosen, task.mates),
      after: checkStrength(form, chosen, mates),
    },
    hub: checkHub({
      form,
      evidence: task.evidence,
      material,
      process: task.process,
      oldMaterial: task.oldMaterial,
    }),
  };
}

/** Whether a proposal is made: not where it is switched off, withdrawn, or where a pair would run worse for it. */
function decide(
  { change, form: made }: Proposal,
  form: WheelForm,
  { off }: DesignTask,
  findWorse: (made: WheelForm) => string | undefined,
): { readonly change: PartChange; readonly next: WheelForm } {
  if (off.includes(change.key)) return { change: { ...change, isOn: false }, next: form };
  if (change.withdrawn !== undefined || !made) return { change: { ...change, isOn: false }, next: form };
  const worse = findWorse(made);
  if (worse === undefined) return { change: { ...change, isOn: true }, next: made };
  return { change: { ...change, isOn: false, withdrawn: `Taken back: ${worse}.` }, next: form };
}

function straightenMate(mate: DesignMate): DesignMate {
  return { ...mate, wheel: { ...mate.wheel, spec: straighten(mate.wheel.spec) } };
}

/** With each mate at its distance: the first that runs worse with the teeth as made. */
function findMateWorse(
  form: WheelForm,
  made: WheelForm,
  before: readonly DesignMate[],
  after: readonly DesignMate[],
): string | undefined {
  for (const [i, mate] of before.entries()) {
    if (mate.center === undefined) continue;
    const was = rollWithMate(form.spec, { ...mate, center: mate.center });
    const is = rollWithMate(made.spec, { ...after[i], center: mate.center });
    const worse = findWorsening(was, is);
    if (worse) return `with "${mate.id}" ${worse}`;
  }
  return undefined;
}

function checkFineness({ form, process, off, mates }: DesignTask): PartChange[] {
  const { spec } = form;
  if (spec.module >= process.leastModuleMm - 1e-9) return [];
  const why = `Teeth of module ${show(spec.module)} are too fine for a ${shortName(process)}: it wants at least ${process.leastModuleMm}, ${process.reason}.`;
  const finer = processes
    .filter(({ leastModuleMm }) => leastModuleMm <= spec.module + 1e-9)
    .sort((a, b) => b.leastModuleMm - a.leastModuleMm);
  const pairs = mates.flatMap((mate) =>
    mate.center
      ? findCoarserPairs(spec, { ...mate, center: mate.center }, process.leastModuleMm).slice(0, 2)
      : [],
  );
  const change: PartChange = {
    key: 'fineness',
    what: 'teeth that this process can make',
    from: spec.module,
    to: process.leastModuleMm,
    unit: 'mm',
    why,
    isOn: false,
    canTurnOff: true,
  };
  if (off.includes('fineness')) return [change];
  const ways = [
    ...finer.slice(0, 2).map(({ key, name }) => `a ${name} (--process ${key})`),
    ...pairs.slice(0, 1).map(tellPair),
  ];
  throw new Fail(
    'too-fine',
    'process',
    why,
    `${ways.length > 0 ? `The nearest way out: ${ways.join('; or ')}.` : 'No process here is fine enough.'} To try it all the same, switch "fineness" off.`,
    {
      moduleMm: spec.module,
      leastModuleMm: process.leastModuleMm,
      processes: finer.map(({ key }) => key),
      pairs,
    },
  );
}

function tellPair(pair: ReturnType<typeof findCoarserPairs>[number]): string {
  const ratio =
    Math.abs(pair.ratioErrorPercent) < 0.005
      ? 'the same ratio'
      : `a ratio ${show(Math.abs(pair.ratioErrorPercent))} % ${pair.ratioErrorPercent > 0 ? 'larger' : 'smaller'}`;
  return `both wheels new with ${pair.teeth} and ${pair.mateTeeth} teeth of module ${pair.moduleMm}, shifted by ${show(pair.profileShift)} and ${show(pair.mateProfileShift)}: the same distance, ${ratio}`;
}

/** A material that stands the warmth where the person left the choice open. */
function chooseMaterial(task: DesignTask, changes: PartChange[]): Material {
  const { material, process, temperatureC, warmBecause } = task;
  if (temperatureC <= material.warmLimitC.low) return material;
  const stands = (one: Material): boolean => temperatureC <= one.warmLimitC.low;
  const found = findStanding(process, stands);
  const where = warmBecause ? ` ${warmBecause}` : '';
  const change = {
    key: 'material' as const,
    what: 'a material that stands the warmth',
    from: material.name,
    to: found?.name ?? null,
    unit: '' as const,
    why: `At ${show(temperatureC)} °C${where}, teeth of ${shortName(material)} do not last: ${show(material.warmLimitC.low)} to ${show(material.warmLimitC.high)} °C is their limit${found ? `, ${show(found.warmLimitC.low)} °C or more that of ${shortName(found)}` : ''}.`,
    canTurnOff: true,
  };
  const isOff = task.off.includes('material');
  const elsewhere = processes.find((one) => findStanding(one, stands));
  const withdrawn = task.isMaterialChosen
    ? 'You chose the material: it is left.'
    : found
      ? undefined
      : `A ${shortName(process)} has none that does${elsewhere ? `; a ${shortName(elsewhere)} has` : ''}.`;
  changes.push({
    ...change,
    isOn: !isOff && withdrawn === undefined,
    ...(withdrawn && !isOff ? { withdrawn } : {}),
  });
  return isOff || withdrawn !== undefined || !found ? material : found;
}

function findStanding(process: Process, stands: (one: Material) => boolean): Material | undefined {
  return materials.find((one) => process.materials.includes(one.key) && stands(one));
}

/** Wider teeth carry more, as far as the mate is wide and the machine has room. */
function designWidth(form: WheelForm, task: DesignTask): Proposal | undefined {
  // Beside teeth of the same piece there is no room that is theirs.
  if (form.others?.length) return undefined;
  const widths = task.mates.flatMap(({ faceWidth }) => faceWidth ?? []);
  const byMate = widths.length > 0 ? Math.max(...widths) : Number.POSITIVE_INFINITY;
  const to = Math.floor(Math.min(form.faceWidth + task.room, byMate) * 100) / 100;
  if (!(to > form.faceWidth + 0.05)) return undefined;
  const why = `Root stress falls as teeth get wider: to ${show((100 * form.faceWidth) / to)} % of what it was${byMate <= form.faceWidth + task.room ? '; wider than its mate is no use' : ''}.`;
  return {
    change: {
      key: 'face-width',
      what: 'wider teeth',
      from: form.faceWidth,
      to,
      unit: 'mm',
      why,
      canTurnOff: true,
      ...(task.isSacrificial ? { withdrawn: 'It is meant to give way first: it is not made stronger.' } : {}),
    },
    ...(task.isSacrificial ? {} : { form: { ...form, faceWidth: to } }),
  };
}

/** A wheel that is meant to give way first carries less than any of its mates. */
function designWeakLink(form: WheelForm, task: DesignTask): Proposal | undefined {
  if (!task.isSacrificial || task.mates.length === 0 || form.others?.length) return undefined;
  const own = checkStrength(form, task, task.mates).carries.stall.value;
  const others = task.mates.map((mate) => ({ id: mate.id, carries: findMateCarried(mate, task, form) }));
  const [weakest] = others.sort((a, b) => a.carries - b.carries);
  const most = weakLink.part * weakest.carries;
  const change = {
    key: 'weakest-link' as const,
    what: 'the wheel that gives way first',
    from: form.faceWidth,
    unit: 'mm' as const,
    canTurnOff: true,
  };
  const sums = `it bears ${show(own)} N at its teeth in a stall, "${weakest.id}" ${show(weakest.carries)} N`;
  if (own <= most) {
    return {
      change: { ...change, to: form.faceWidth, why: `This wheel is the one to give way: ${sums}.` },
      form,
    };
  }
  const to = Math.floor(((form.faceWidth * most) / own) * 100) / 100;
  const why = `This wheel is the one to give way, but ${sums}. Narrower teeth bear ${show(100 * weakLink.part)} % of that, so the mate stays whole.`;
  const tooNarrow = to < Math.max(form.spec.module, 2 * task.process.leastWallMm);
  return {
    change: {
      ...change,
      to,
      why,
      ...(tooNarrow ? { withdrawn: 'So narrow a wheel can not be made: choose a weaker material.' } : {}),
    },
    ...(tooNarrow ? {} : { form: { ...form, faceWidth: to } }),
  };
}

/** A mate as a cut wheel of its material, at the same warmth. */
function findMateCarried(mate: DesignMate, task: DesignTask, form: WheelForm): number {
  const process = processes.find(({ key }) => key === 'machine-shop');
  if (!process) throw new Error('no process machine-shop');
  return checkTooth({
    spec: mate.wheel.spec,
    faceWidth: mate.faceWidth ?? form.faceWidth,
    material: mate.material,
    process,
    temperatureC: task.temperatureC,
    cycles: task.cycles,
    mate: { spec: form.spec, material: task.material, centerDistance: mate.center?.mm },
  }).carries.stall.value;
}

function checkStrength(form: WheelForm, task: DesignTask, mates: readonly DesignMate[]): ToothStrength {
  const hub = checkHub({
    form,
    evidence: task.evidence,
    material: task.material,
    process: task.process,
    oldMaterial: task.oldMaterial,
  });
  const isRack = form.spec.kind === 'rack';
  const load = (torque: number | undefined) =>
    torque === undefined || torque <= 0 || isRack ? undefined : { torque };
  const [mate] = mates;
  const duty: ToothDuty = {
    spec: form.spec,
    faceWidth: form.faceWidth,
    material: task.material,
    process: task.process,
    temperatureC: task.temperatureC,
    cycles: task.cycles,
    isReversed: task.isReversed,
    running: load(task.runningTorque),
    stall: load(task.stallTorque),
    rim: hub.wall?.mm,
    mate: mate && {
      spec: mate.wheel.spec,
      material: mate.material,
      centerDistance: mate.center?.mm,
    },
  };
  return checkTooth(duty);
}

/** Three digits that count. */
function show(value: number): string {
  return String(Number(value.toPrecision(3)));
}
