import { bond, bush, filedFlat, goodHub, hubGap, shaftFits, ungluable } from '../../gear-library/lasting.ts';
import { findDiameters } from '../involute/gear-diameters.ts';
import type { Bore, WheelForm } from '../solid/wheel-form.ts';
import { solidRim } from '../strength/find-root-stress.ts';
import { type PressFitPlan, planPressFit } from '../strength/plan-press-fit.ts';
import { findMeanReading } from './find-shaft.ts';
import type { DesignTask, Hold, Proposal } from './part-design.ts';
import { shortName } from './short-name.ts';

/** The bore that a part gets, and what holds it. */
export interface BoreDesign {
  readonly proposal: Proposal;
  readonly hold: Hold | undefined;
  readonly bushOutside: number | undefined;
}

/**
 * The bore for the way the part is to sit on its shaft; undefined where there is nothing to change: no external wheel,
 * a shaped bore, or a wheel whose shaft nobody measured and whose bore says nothing.
 *
 * Left to itself: a wheel that turned freely on its pin keeps turning; a press fit only where process and caliper can
 * hold it and the old wheel did not split; else glue, where glue holds on the material and carries twice the stall
 * torque; else a bush, where it leaves a wall; else a flat.
 */
export function designBore(form: WheelForm, task: DesignTask): BoreDesign | undefined {
  const { spec, bore } = form;
  if (spec.kind !== 'external' || (bore.shape !== 'round' && bore.shape !== 'none')) return undefined;
  const isSplit = task.evidence.damage.some(({ kind }) => kind === 'split');
  const shaftRead = findMeanReading(task.evidence, 'shaft');
  const boreRead = findMeanReading(task.evidence, 'bore');
  const drawn = bore.shape === 'round' ? bore.diameter : undefined;
  const shaft = shaftRead ?? (isSplit ? undefined : (boreRead ?? drawn));
  const change = {
    key: 'bore' as const,
    what: 'bore',
    from: drawn === undefined ? null : micron(drawn),
    unit: 'mm' as const,
    canTurnOff: true,
  };
  if (shaft === undefined) {
    if (!isSplit) return undefined;
    const why = 'A split wheel says nothing of its shaft.';
    return {
      proposal: {
        change: { ...change, to: null, why, withdrawn: 'Measure the shaft: nothing can be fitted before.' },
      },
      hold: undefined,
      bushOutside: undefined,
    };
  }
  const root = findDiameters(spec).root;
  const length = form.faceWidth + form.hubs.reduce((sum, one) => sum + one.length, 0);
  const hubDiameter = Math.min(root, ...form.hubs.map(({ diameter }) => diameter));
  const press =
    hubDiameter > shaft
      ? planPressFit(task.material, task.process, { shaftDiameter: shaft, hubDiameter, length })
      : undefined;
  const bushOutside = findBush(shaft, hubDiameter, form, task);
  const wasLoose =
    !isSplit && shaftRead !== undefined && boreRead !== undefined && boreRead - shaftRead >= looseFrom;
  const hold = task.hold ?? chooseHold(task, { shaft, length, press, bushOutside, isSplit, wasLoose });
  const fit = shaftFits.find(({ process }) => process === task.process.key);
  if (!fit) throw new Error(`no fits for ${task.process.key}`);
  const made = drawBore(hold, shaft, fit, press, bushOutside);
  const hole = made.diameter;
  // The hub is thickened next, where there is room and nobody switched that off.
  const widest =
    form.hubs.length === 0 || task.off.includes('hub')
      ? hubDiameter
      : Math.max(hubDiameter, Math.min(goodHub.bores * hole, findHubRoom(form, task)));
  const why = [
    tellHold(hold, task, { shaft, length, press, bushOutside, hole }),
    shaftRead === undefined ? 'The shaft was not measured; the old bore stands for it.' : '',
  ]
    .filter(Boolean)
    .join(' ');
  const what = `${words[hold]}${made.shape === 'd' ? `, ${show(made.flat)} mm over the flat` : ''}`;
  const refused =
    hold === 'bush' && bushOutside === undefined
      ? 'A bush would leave no wall under the teeth.'
      : hold === 'press' && !press?.isWithinReach
        ? 'A press fit can not be held here.'
        : hole > widest - 2 * task.process.leastWallMm
          ? `It would leave less than ${show(task.process.leastWallMm)} mm of wall under the teeth.`
          : undefined;
  const to = micron(hole);
  return {
    proposal: {
      change: { ...change, what, to, why, ...(refused ? { withdrawn: refused } : {}) },
      ...(refused ? {} : { form: { ...form, bore: made } }),
    },
    hold: refused ? undefined : hold,
    bushOutside: refused || hold !== 'bush' ? undefined : bushOutside,
  };
}

/** So much play between a bore and its shaft is no slip of a caliper, mm: it turned there. */
const looseFrom = 0.05;

interface Seat {
  readonly shaft: number;
  readonly length: number;
  readonly press: PressFitPlan | undefined;
  readonly bushOutside: number | undefined;
}

/** The outside of the thinnest stock bush, where it leaves a wall of a tooth's depth round it. */
function findBush(shaft: number, hub: number, form: WheelForm, { process }: DesignTask): number | undefined {
  const outside = Math.ceil((shaft + 2 * bush.wallMm) / bush.stepMm - 1e-6) * bush.stepMm;
  const { root, tip } = findDiameters(form.spec);
  const wall = (Math.min(hub, root) - outside) / 2;
  return wall >= Math.max(process.leastWallMm, (tip - root) / 4) ? outside : undefined;
}

function chooseHold(
  task: DesignTask,
  seat: Seat & { readonly isSplit: boolean; readonly wasLoose: boolean },
): Hold {
  if (seat.wasLoose) return 'turns';
  if (seat.press?.isWithinReach && !seat.isSplit) return 'press';
  if (ungluable.includes(task.material.key)) return 'flat';
  const stall = task.stallTorque;
  if (stall === undefined || findBondTorque(seat.shaft, seat.length) >= bond.margin * stall) return 'bond';
  return seat.bushOutside === undefined ? 'flat' : 'bush';
}

/** T = τ π d L d/2, N mm: glue sheared all round the shaft. */
export function findBondTorque(diameter: number, length: number): number {
  return (bond.shearMpa * Math.PI * diameter ** 2 * length) / 2;
}

function drawBore(
  hold: Hold,
  shaft: number,
  fit: { readonly slipMm: readonly [number, number]; readonly turnsMm: readonly [number, number] },
  press: PressFitPlan | undefined,
  bushOutside: number | undefined,
): Exclude<Bore, { shape: 'hex' | 'square' }> & { shape: 'round' | 'd' } {
  const slip = (fit.slipMm[0] + fit.slipMm[1]) / 2;
  switch (hold) {
    case 'bond':
      return { shape: 'round', diameter: micron(shaft + slip) };
    case 'flat':
      return {
        shape: 'd',
        diameter: micron(shaft + slip),
        flat: micron(shaft * filedFlat.part + slip),
      };
    case 'knurl':
      return { shape: 'round', diameter: micron(shaft) };
    case 'bush':
      return { shape: 'round', diameter: micron((bushOutside ?? shaft) + slip) };
    case 'press':
      // Half of what lasts: the other half is for bore and caliper.
      return { shape: 'round', diameter: micron(shaft - (press?.lasting ?? 0) / 2) };
    case 'turns':
      return { shape: 'round', diameter: micron(shaft + (fit.turnsMm[0] + fit.turnsMm[1]) / 2) };
  }
}

const words: Readonly<Record<Hold, string>> = {
  bond: 'slip fit, to be glued',
  flat: 'slip fit with a flat',
  knurl: 'slip fit on a knurled shaft',
  bush: 'seat for a metal bush',
  press: 'press fit',
  turns: 'turns on its pin',
};

function tellHold(hold: Hold, task: DesignTask, seat: Seat & { readonly hole: number }): string {
  const { shaft, length, press } = seat;
  const size = `The ${show(shaft)} mm shaft wants ${show(seat.hole)} mm in the finished part`;
  if (hold === 'turns') return `${size}: it turned on its pin, and still has to.`;
  const glued = findBondTorque(shaft, length);
  const stall = task.stallTorque;
  const glue = ungluable.includes(task.material.key)
    ? `No glue holds on ${shortName(task.material)} by itself.`
    : `Glue round it holds about ${show(glued)} N mm${stall === undefined ? '' : `, of the ${show(stall)} N mm of a stall`}.`;
  if (hold === 'press' && press) {
    return `${shortName(task.material)} stands ${press.lasting.toFixed(3)} mm of interference for years on ${show(shaft)} mm; half of it is drawn. After 1,000 hours it still holds about ${show(press.afterCreep.gripTorque / 2)} N mm.`;
  }
  return `${tellPress(task, shaft, press)} ${size}. ${glue}${tellOther(hold, seat)}`;
}

function tellPress(task: DesignTask, shaft: number, press: PressFitPlan | undefined): string {
  if (!press) return 'There is no wall for a press fit.';
  if (press.isWithinReach) return 'The old one split on its press fit.';
  return `No press fit: on ${show(shaft)} mm ${shortName(task.material)} stands ${press.lasting.toFixed(3)} mm of interference for years, bores of a ${shortName(task.process)} lie ${show(press.boreScatter)} mm apart and a caliper is off by 0.02.`;
}

function tellOther(hold: Hold, { shaft, bushOutside }: Seat): string {
  if (hold === 'flat')
    return ` File a flat on the shaft, ${show(shaft * (1 - filedFlat.part))} mm deep, with the gear's length.`;
  if (hold === 'knurl')
    return ' Roll the shaft between two coarse files until the bore goes on with a push, then glue.';
  if (hold === 'bush' && bushOutside !== undefined)
    return ` Glued into a bush of ${show(bushOutside)} mm outside there is ${show((bushOutside / shaft) ** 2)} times as much, and metal sits on the shaft.`;
  return '';
}

/** A hub twice as wide as the bore, as far as the roots and the mates' tips leave room. */
export function designHub(form: WheelForm, task: DesignTask): Proposal | undefined {
  const { spec, bore, hubs } = form;
  if (spec.kind !== 'external' || hubs.length === 0 || bore.shape === 'none') return undefined;
  const hole = 'diameter' in bore ? bore.diameter : bore.acrossFlats * Math.SQRT2;
  const room = findHubRoom(form, task);
  const wanted = Math.floor(Math.min(goodHub.bores * hole, room) * 100) / 100;
  const thinnest = Math.min(...hubs.map(({ diameter }) => diameter));
  if (wanted < thinnest + 0.1) return undefined;
  const held = wanted < goodHub.bores * hole - 0.02 ? ', as far as roots and mates leave room' : '';
  return {
    change: {
      key: 'hub',
      what: 'thicker hub',
      from: micron(thinnest),
      to: wanted,
      unit: 'mm',
      why: `A hub of ${show(thinnest / hole)} bores is thin: ${show(goodHub.bores)} are good practice${held}. It gives glue and screw more to hold; it would take nothing off the stretch of a press fit.`,
      canTurnOff: true,
    },
    form: {
      ...form,
      hubs: hubs.map((hub) => ({ ...hub, diameter: Math.max(hub.diameter, wanted) })),
    },
  };
}

/** How wide a hub may be: within the roots, and clear of the mates' tips. */
function findHubRoom({ spec }: WheelForm, { mates }: DesignTask): number {
  return Math.min(
    findDiameters(spec).root * rootShare,
    ...mates.flatMap(({ center, wheel }) =>
      center && wheel.spec.kind === 'external'
        ? [2 * (center.mm - findDiameters(wheel.spec).tip / 2 - hubGap.mm)]
        : [],
    ),
  );
}

/** Below the root circle a hub stands clear of the spaces. */
const rootShare = 0.98;

/** A rim thick enough to bear its teeth as solid ground does: of a ring outward, of a wheel with a web inward. */
export function designRim(form: WheelForm): Proposal | undefined {
  const { spec, rimDiameter, web, holes } = form;
  if (spec.kind === 'rack') return undefined;
  const { root, tip } = findDiameters(spec);
  const depth = Math.abs(root - tip) / 2;
  const propose = (from: number, to: number, inDepths: number, note: string, made: WheelForm): Proposal => ({
    change: {
      key: 'rim',
      what: 'thicker rim',
      from: micron(from),
      to,
      unit: 'mm',
      why: `The rim is ${show(inDepths)} of a tooth's depth thick; from ${solidRim} on it bears the teeth as solid ground does.${note}`,
      canTurnOff: true,
    },
    form: made,
  });
  if (spec.kind === 'internal') {
    if (rimDiameter === undefined) return undefined;
    const wanted = Math.ceil((root + 2 * solidRim * depth) * 100 - 1e-6) / 100;
    if (rimDiameter >= wanted) return undefined;
    const note = ' Look whether the housing has the room.';
    return propose(rimDiameter, wanted, (rimDiameter - root) / 2 / depth, note, {
      ...form,
      rimDiameter: wanted,
    });
  }
  // Holes stand where the web was: they are left, and so is it.
  if (web === undefined || holes !== undefined) return undefined;
  const wanted = Math.floor((root - 2 * solidRim * depth) * 100 + 1e-6) / 100;
  if (web.rimDiameter <= wanted || wanted <= web.hubDiameter + leastWebSpan) return undefined;
  return propose(web.rimDiameter, wanted, (root - web.rimDiameter) / 2 / depth, '', {
    ...form,
    web: { ...web, rimDiameter: wanted },
  });
}

/** A web narrower than this between hub and rim is a groove, mm. */
const leastWebSpan = 1;

function micron(value: number): number {
  return Math.round(value * 1000) / 1000;
}

/** Three digits that count. */
function show(value: number): string {
  return String(Number(value.toPrecision(3)));
}
