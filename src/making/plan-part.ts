import { type Process, processes, usualProcess } from '../../gear-library/processes.ts';
import { defaultKit } from '../../gear-library/reading-uncertainty.ts';
import { findDiameters } from '../involute/gear-diameters.ts';
import type { GearSpec } from '../involute/gear-spec.ts';
import { findPointedDiameter } from '../involute/undercut.ts';
import { findInstrumentUncertainty } from '../readings/measured-length.ts';
import type { LengthReading, WheelEvidence } from '../readings/wheel-evidence.ts';
import type { Bore, Hub, ToothedSection, WheelForm } from '../solid/wheel-form.ts';
import { findProcess } from './find-process.ts';
import { findUsualShafts } from './find-usual-shafts.ts';

/** What a part file holds and what its maker has to know. */
export interface PartPlan {
  readonly form: WheelForm;
  /** A part to try, not yet to rely on */
  readonly isTrial: boolean;
  /** Plain sentences, the weightiest first */
  readonly warnings: readonly string[];
  /** Of the warnings: those that no longer hold where a design changes the bore or the helix */
  readonly about: Readonly<Record<'bore' | 'helix', readonly string[]>>;
}

/** What is known of the part beside its readings: from the job's spec. */
export interface KnownForm {
  readonly faceWidth?: number | undefined;
  readonly bore?: Bore | undefined;
  readonly hubs?: readonly Hub[] | undefined;
  readonly chamfer?: number | undefined;
  readonly rimDiameter?: number | undefined;
  readonly crossHole?: WheelForm['crossHole'] | undefined;
  /** What is taken as it is given */
  readonly features?: Pick<ToothedSection, 'phase' | 'sector' | 'web' | 'holes' | 'flanges' | 'phaseMark'>;
}

/** Said of every part until one is drawn with a compensation. */
export const noAllowance =
  'No allowance for your printer is in this file: holes come out smaller, outsides larger. Print one, measure it, then scale what is off.';

/** How much a bore is drawn under the shaft where it will be opened by hand, mm. Common practice: 0.2 to 0.3. */
const underSize = 0.2;

/**
 * The part that replaces a wheel: its toothing with the bore, hub and width that were measured or are known, and the
 * warnings that the data give. Nothing is compensated for any machine.
 *
 * A bore that split is not copied: it is drawn under the measured shaft, to be opened to a slip fit and bonded.
 */
export function planPart(
  wheel: WheelEvidence,
  spec: GearSpec,
  known: KnownForm,
  isTrial: boolean,
  processKey: string = usualProcess,
): PartPlan {
  const process = findProcess(processKey);
  const warnings: string[] = [];
  if (isTrial)
    warnings.push('This is a trial part: the answer is not sure enough to rely on. Try it by hand first.');
  warnings.push(...checkFineness(spec, process));
  const trimmed = trimPointedTip(spec, warnings);
  const faceWidth = known.faceWidth ?? findLength(wheel, 'face-width') ?? assumeFaceWidth(spec, warnings);
  const aboutBore: string[] = [];
  const bore =
    spec.kind === 'external'
      ? (known.bore ?? chooseBore(wheel, trimmed, warnings, aboutBore))
      : { shape: 'none' as const };
  const hubs =
    spec.kind === 'external' ? (known.hubs ?? measureHubs(wheel, faceWidth, trimmed, bore, warnings)) : [];
  warnings.push(noAllowance);
  if (process.lineMm > 0) {
    warnings.push('Print three: one to measure, one to run, one to keep beside the machine.');
  }
  if (spec.helixAngle !== 0) warnings.push(helixWarning);
  warnings.push(
    'Not for lifting, braking, steering, medical use or food contact. Unplug the machine first; mains and springs are for those who are licensed or trained for them.',
  );
  return {
    form: {
      spec: trimmed,
      faceWidth,
      bore,
      hubs,
      chamfer: known.chamfer ?? 0,
      ...known.features,
      ...(known.crossHole ? { crossHole: known.crossHole } : {}),
      ...(spec.kind === 'internal' ? { rimDiameter: known.rimDiameter ?? assumeRim(spec, warnings) } : {}),
    },
    isTrial,
    warnings,
    about: { bore: aboutBore, helix: [helixWarning] },
  };
}

const helixWarning = 'A slanted gear runs with a mate of the same angle and the other hand only.';

function checkFineness(spec: GearSpec, process: Process): string[] {
  if (spec.module >= process.leastModuleMm - 1e-9) return [];
  const way = processes.find(
    (other) => other.leastModuleMm <= spec.module + 1e-9 && other.key !== 'machine-shop',
  );
  const finer = way ? `a ${way.name}` : 'a machine shop';
  return [
    `Too fine for a ${process.name}: teeth of module ${spec.module.toFixed(3)} want at least ${process.leastModuleMm} there. Ask for ${finer}.`,
  ];
}

/** A tip that comes to a point is cut back to a land a tenth of the module wide. */
function trimPointedTip(spec: GearSpec, warnings: string[]): GearSpec {
  if (spec.kind !== 'external') return spec;
  const pointed = findPointedDiameter(spec);
  const { tip } = findDiameters(spec);
  const greatest = pointed - 0.1 * spec.module;
  if (tip <= greatest) return spec;
  warnings.push(`The teeth would come to a point; the tips are cut back to ${greatest.toFixed(2)} mm.`);
  return { ...spec, tipDiameter: greatest };
}

/** The first reading of a length that has a value: its mean, what the closed jaws show taken off. */
function findLength(wheel: WheelEvidence, of: LengthReading['of']): number | undefined {
  const found = findReading(wheel, of);
  if (found?.mm === undefined) return undefined;
  const takings = typeof found.mm === 'number' ? [found.mm] : found.mm;
  const mean = takings.reduce((sum, value) => sum + value, 0) / takings.length;
  // An offset is the difference of two readings: what the jaws show cancels.
  return of === 'face-offset' ? mean : round(mean - (wheel.kit.zeroMm ?? 0));
}

function findReading(wheel: WheelEvidence, of: LengthReading['of']): LengthReading | undefined {
  return wheel.readings.find(
    (reading): reading is LengthReading => reading.of === of && (reading as LengthReading).mm !== undefined,
  );
}

/** A tenth of a micron: what subtracting leaves behind it is no length. */
function round(length: number): number {
  return Math.round(length * 1e4) / 1e4;
}

function assumeFaceWidth(spec: GearSpec, warnings: string[]): number {
  const width = Math.max(2, Math.round(8 * spec.module * 2) / 2);
  warnings.push(
    `The tooth width was not measured: ${width} mm stands in for it. Measure it before you make the part.`,
  );
  return width;
}

function assumeRim(spec: GearSpec, warnings: string[]): number {
  const rim = findDiameters(spec).root + 6 * spec.module;
  warnings.push(`The ring's outside was not given: ${rim.toFixed(2)} mm stands in for it.`);
  return rim;
}

/** What it says of the bore's size goes among the warnings and into `about`. */
function chooseBore(wheel: WheelEvidence, spec: GearSpec, warnings: string[], about: string[]): Bore {
  const warn = (text: string): void => {
    warnings.push(text);
    about.push(text);
  };
  const shaft = findLength(wheel, 'shaft');
  const measured = findLength(wheel, 'bore') ?? findPlugged(wheel);
  const isSplit = wheel.damage.some((damage) => damage.kind === 'split');
  if (isSplit) {
    warn(
      shaft === undefined
        ? 'This gear split on its shaft, so its bore is not to be trusted. Measure the shaft.'
        : `This gear split on its shaft: don't copy the bore. It is drawn ${underSize} mm under the ${shaft} mm shaft; open it by drill or reamer to a slip fit, then bond it.`,
    );
  }
  if (shaft !== undefined) warnings.push(...adviseShaft(wheel, shaft));
  const size = isSplit ? (shaft ?? measured) : (measured ?? shaft);
  if (size === undefined) {
    warn('Neither bore nor shaft was measured: the part has no bore.');
    return { shape: 'none' };
  }
  const diameter = isSplit ? size - underSize : size;
  const greatest = findDiameters(spec).root - 0.4;
  if (diameter <= 0.1 || diameter > greatest) {
    warn(`A bore of ${diameter.toFixed(2)} mm leaves no wall under the teeth: the part has none.`);
    return { shape: 'none' };
  }
  return { shape: 'round', diameter };
}

/** Names the usual shaft that a measured one reads like; the part keeps what was measured. */
function adviseShaft(wheel: WheelEvidence, shaft: number): string[] {
  const stated = findReading(wheel, 'shaft')?.uMm;
  const zero = wheel.kit.zeroUMm ?? defaultKit.zeroUMm;
  const uncertainty = stated ?? Math.hypot(findInstrumentUncertainty(wheel), zero);
  const [nearest, ...others] = findUsualShafts(shaft, uncertainty);
  // A shaft that reads as its size to the last digit needs no word.
  if (!nearest || Math.abs(nearest.diameterMm - shaft) < 0.005) return [];
  const names = [nearest, ...others].map(({ name }) => name).join(' or ');
  return [
    `Your ${shaft} mm reads like a shaft of ${names} (${nearest.where}). Nothing was rounded; try the slip fit on the shaft itself.`,
  ];
}

/** A bore found by drills: between what goes and what stops. */
function findPlugged(wheel: WheelEvidence): number | undefined {
  for (const reading of wheel.readings) {
    if (reading.of !== 'bore') continue;
    const { goesMm, stopsMm } = reading as { goesMm?: number; stopsMm?: number };
    if (goesMm !== undefined && stopsMm !== undefined) return (goesMm + stopsMm) / 2;
    if (goesMm !== undefined) return goesMm;
  }
  return undefined;
}

function measureHubs(
  wheel: WheelEvidence,
  faceWidth: number,
  spec: GearSpec,
  bore: Bore,
  warnings: string[],
): Hub[] {
  const diameter = findLength(wheel, 'hub-diameter');
  const overall = findLength(wheel, 'overall-length');
  if (diameter === undefined && overall === undefined) return [];
  if (diameter === undefined || overall === undefined) {
    warnings.push(
      'A hub needs its diameter and the overall length; only one was measured, so the part has no hub.',
    );
    return [];
  }
  const below = findLength(wheel, 'face-offset') ?? 0;
  const above = overall - faceWidth - below;
  const { root } = findDiameters(spec);
  const hole = bore.shape === 'round' ? bore.diameter : 0;
  if (diameter > root * 0.985 || diameter < hole + 0.4 || above < -0.01) {
    warnings.push(
      'The hub as measured does not fit under the teeth: the part has no hub. Check its diameter and lengths.',
    );
    return [];
  }
  const hubs: Hub[] = [];
  if (above > 0.05) hubs.push({ side: 'top', diameter, length: above });
  if (below > 0.05) hubs.push({ side: 'bottom', diameter, length: below });
  return hubs;
}
