import type { Material } from '../../gear-library/materials.ts';
import type { Process } from '../../gear-library/processes.ts';
import { findDiameters } from '../involute/gear-diameters.ts';
import type { LengthReading, WheelEvidence } from '../readings/wheel-evidence.ts';
import { findBoreRadius, type WheelForm } from '../solid/wheel-form.ts';
import { solidRim } from '../strength/find-root-stress.ts';
import { planPressFit } from '../strength/plan-press-fit.ts';
import { findPressFit } from '../strength/press-fit.ts';
import type { StrengthReport } from '../strength/strength-report.ts';

/** A wheel's part, what was read of the old one, and what new and old are made of. */
export interface HubCheck {
  readonly form: WheelForm;
  readonly evidence: WheelEvidence;
  readonly material: Material;
  readonly process: Process;
  readonly oldMaterial: Material | undefined;
}

/** How a wheel sits on its shaft: the wall over the bore, what a press fit would allow, how the old bore was stretched. */
export function checkHub(check: HubCheck): Pick<StrengthReport, 'wall' | 'press' | 'stretch'> {
  return { wall: findWall(check), press: findPress(check), stretch: findStretch(check) };
}

/** Between root and bore, of a ring between root and rim; null on racks and without a bore. */
function findWall({ form, process }: HubCheck): StrengthReport['wall'] {
  const { spec, bore, rimDiameter } = form;
  if (spec.kind === 'rack') return null;
  const { root, tip } = findDiameters(spec);
  const hole = findBoreRadius(bore);
  if (spec.kind === 'internal' ? rimDiameter === undefined : hole === 0) return null;
  const mm = spec.kind === 'internal' ? ((rimDiameter ?? root) - root) / 2 : root / 2 - hole;
  const inToothDepths = mm / (Math.abs(tip - root) / 2);
  // Half a tooth's depth is where the formula for rims ends.
  const isTooThin = mm < process.leastWallMm || inToothDepths < 0.5;
  const verdict = isTooThin ? 'too-thin' : inToothDepths < solidRim ? 'thin' : 'enough';
  return { mm, inToothDepths, leastMm: process.leastWallMm, verdict };
}

function findPress(check: HubCheck): StrengthReport['press'] {
  const { form, evidence, material, process } = check;
  if (form.spec.kind !== 'external') return null;
  const isSplit = evidence.damage.some(({ kind }) => kind === 'split');
  const shaft = findMean(check, 'shaft') ?? (isSplit ? undefined : findMean(check, 'bore'));
  const known = shaft ?? (form.bore.shape === 'round' && !isSplit ? form.bore.diameter : undefined);
  if (known === undefined) return null;
  const hub = findHubDiameter(check);
  if (!(hub > known)) return null;
  const length = form.faceWidth + form.hubs.reduce((sum, one) => sum + one.length, 0);
  const fit = planPressFit(material, process, { shaftDiameter: known, hubDiameter: hub, length });
  return {
    shaftMm: known,
    hubMm: hub,
    lengthMm: length,
    lastingMm: fit.lasting,
    onceMm: fit.once,
    boreScatterMm: fit.boreScatter,
    isWithinReach: fit.isWithinReach,
    freshHoopMpa: fit.fresh.hoopStress,
    laterHoopMpa: fit.afterCreep.hoopStress,
    freshGripNmm: fit.fresh.gripTorque,
    laterGripNmm: fit.afterCreep.gripTorque,
  };
}

function findMean({ evidence }: HubCheck, of: LengthReading['of']): number | undefined {
  for (const reading of evidence.readings) {
    if (reading.of !== of || !('mm' in reading) || reading.mm === undefined) continue;
    const takings = typeof reading.mm === 'number' ? [reading.mm] : reading.mm;
    return takings.reduce((sum, value) => sum + value, 0) / takings.length;
  }
  return undefined;
}

/**
 * How far the old wheel's bore was stretched, and what pulled at it. A ring that splits opens by its lost strain times
 * the circumference where the gap is read, so strain = gap/(π d), d the root circle, where cracks run out in a space.
 * Of a whole wheel it is shaft less bore, over the shaft, where both were read. A wheel that shrank since is in it.
 */
function findStretch(check: HubCheck): StrengthReport['stretch'] {
  const { form, evidence, oldMaterial: material } = check;
  const { spec } = form;
  if (spec.kind !== 'external') return null;
  const { root } = findDiameters(spec);
  const split = evidence.damage.find(({ kind }) => kind === 'split');
  const shaft = findMean(check, 'shaft');
  const bore = findMean(check, 'bore');
  const gap = split?.gapMm ?? 0;
  const fromGap = gap > 0 ? gap / (Math.PI * root) : undefined;
  const strain =
    fromGap ?? (split || shaft === undefined || bore === undefined ? undefined : (shaft - bore) / shaft);
  if (strain === undefined || strain <= 0) return null;
  const from = fromGap === undefined ? ('shaft-and-bore' as const) : ('gap' as const);
  if (!material || shaft === undefined || !(findHubDiameter(check) > shaft))
    return { strain, from, hoop: null };
  const hoopWith = (modulus: number): number =>
    findPressFit({
      shaftDiameter: shaft,
      hubDiameter: findHubDiameter(check),
      interference: strain * shaft,
      length: 0,
      modulus,
      poisson: material.poisson.value,
      friction: 0,
    }).hoopStress;
  return {
    strain,
    from,
    hoop: {
      lastingStrain: material.lastingStrain.value,
      freshMpa: hoopWith(material.modulusMpa.value),
      laterMpa: hoopWith(material.modulusAfter1000hMpa.value),
      strengthMpa: material.strengthMpa.value,
    },
  };
}

/** A hub takes the fit at its thinnest: the boss where there is one, else the body under the teeth. */
function findHubDiameter({ form }: HubCheck): number {
  return Math.min(findDiameters(form.spec).root, ...form.hubs.map(({ diameter }) => diameter));
}
