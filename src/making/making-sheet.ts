import { makingSettings } from '../../gear-library/making-settings.ts';
import type { Material } from '../../gear-library/materials.ts';
import type { Process } from '../../gear-library/processes.ts';
import type { LengthReading, WheelEvidence } from '../readings/wheel-evidence.ts';
import type { PlacedSection, WheelForm } from '../solid/wheel-form.ts';
import { findMakingLimits } from './find-making-limits.ts';
import { type GearDatum, listGearData, type SheetMate } from './list-gear-data.ts';
import { type Inspection, listInspections } from './list-inspections.ts';
import type { PartPlan } from './plan-part.ts';

/** All that a maker needs on paper, as plain data: what the PDF, the order and the page's preview are drawn from. */
export interface MakingSheet {
  readonly title: SheetTitle;
  /** Views and the outline at 1:1 are drawn from it */
  readonly form: WheelForm;
  readonly gearData: readonly GearDatum[];
  readonly inspections: readonly Inspection[];
  /** The further toothings of a compound gear, in the order that the form has them */
  readonly others: readonly FurtherTeeth[];
  /** Once round, teeth against bore, mm */
  readonly runout: number;
  readonly flanks: string;
  readonly settings: readonly { readonly what: string; readonly value: string }[];
  /** Plain sentences, the weightiest first */
  readonly cautions: readonly string[];
}

export interface FurtherTeeth {
  readonly gearData: readonly GearDatum[];
  readonly inspections: readonly Inspection[];
}

export interface SheetTitle {
  readonly title: string;
  readonly part: string;
  /** Identification number of ISO 7200: the part's or the wheel's name in its job */
  readonly number: string;
  readonly state: 'part' | 'trial part';
  readonly isInvented: boolean;
  readonly material: { readonly key: string; readonly name: string };
  readonly process: { readonly key: string; readonly name: string };
}

export interface SheetWish {
  readonly title: string;
  readonly part: string;
  /** What the part is called in the job */
  readonly number: string;
  readonly isInvented: boolean;
  readonly plan: PartPlan;
  readonly evidence: WheelEvidence;
  readonly process: Process;
  readonly material: Material;
}

/**
 * The making sheet of a planned part: the gear data table, what to check with its limits and what the caliper will
 * read, material, process and settings, and cautions. Throws Fail as the part's solid does.
 */
export function planMakingSheet(wish: SheetWish): MakingSheet {
  const { plan, evidence, process, material } = wish;
  const { form } = plan;
  const limits = findMakingLimits(process, form.spec);
  const pins = evidence.kit.pinsMm ?? [];
  const settings = makingSettings.filter((one) => one.processes.includes(process.key));
  return {
    title: {
      title: wish.title,
      part: wish.part,
      number: wish.number,
      state: plan.isTrial ? 'trial part' : 'part',
      isInvented: wish.isInvented,
      material: { key: material.key, name: material.name },
      process: { key: process.key, name: process.name },
    },
    form,
    gearData: listGearData(form.spec, listMates(evidence)),
    inspections: listInspections(form, limits, pins),
    others: (form.others ?? []).map((section) => describeFurther(section, process, pins)),
    runout: limits.runout,
    flanks: limits.flanks,
    settings: settings.filter(({ what }) => what !== beware).map(({ what, value }) => ({ what, value })),
    cautions: [
      ...plan.warnings,
      ...settings.filter(({ what }) => what === beware).map(({ value }) => value),
      ...material.cautions,
    ],
  };
}

const beware = 'Beware';

function describeFurther(section: PlacedSection, process: Process, pins: readonly number[]): FurtherTeeth {
  const { spec, faceWidth, offset, phase = 0 } = section;
  const alone: WheelForm = { spec, faceWidth, chamfer: 0, hubs: [], bore: { shape: 'none' } };
  const place: GearDatum[] = [
    {
      key: 'offset',
      name: 'Lower face over that of the first teeth',
      symbol: '',
      value: offset,
      digits: 3,
      unit: 'mm',
    },
    {
      key: 'phase',
      name: 'A tooth stands from a first one by',
      symbol: '',
      value: (phase * 180) / Math.PI,
      digits: 3,
      unit: 'deg',
    },
  ];
  return {
    gearData: [...listGearData(spec, []), ...place],
    inspections: listInspections(alone, findMakingLimits(process, spec), pins),
  };
}

/** The mates whose teeth are counted, each with the distance of the shafts where it was measured. */
function listMates({ mates, readings }: WheelEvidence): SheetMate[] {
  return mates.map(({ id, teeth }) => {
    const found = readings.find(
      (reading): reading is LengthReading =>
        reading.of === 'center-distance' && (reading as LengthReading).mate === id,
    );
    const takings = found?.mm === undefined ? [] : typeof found.mm === 'number' ? [found.mm] : found.mm;
    const centerDistance =
      takings.length === 0 ? undefined : takings.reduce((sum, one) => sum + one, 0) / takings.length;
    return { id, teeth, centerDistance };
  });
}
