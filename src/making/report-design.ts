import type { RollingProof } from '../rolling/rolling-proof.ts';
import type { Criterion, ToothStrength } from '../strength/check-tooth.ts';
import type { Range } from '../strength/range.ts';
import type { StrengthReport } from '../strength/strength-report.ts';
import { findLookAgain } from './find-look-again.ts';
import { listCautions } from './list-cautions.ts';
import type { Hold, PartChange, PartDesign } from './part-design.ts';

/** A design as plain data: mm, MPa, N. Its form is in the part itself. */
export interface DesignReport {
  readonly process: { readonly key: string; readonly name: string };
  readonly material: { readonly key: string; readonly name: string };
  readonly hold: Hold | null;
  readonly bushOutsideMm: number | null;
  readonly changes: readonly PartChange[];
  readonly rolled: readonly {
    readonly mate: string;
    readonly before: RolledReport;
    readonly after: RolledReport;
  }[];
  readonly strength: {
    readonly before: MarginReport;
    readonly after: MarginReport;
  };
  readonly wall: StrengthReport['wall'];
  readonly press: StrengthReport['press'];
  readonly notes: readonly string[];
  readonly cautions: readonly string[];
  readonly lookAgain: { readonly months: number; readonly isStopgap: boolean; readonly reason: string };
}

export interface RolledReport {
  readonly verdict: RollingProof['verdict'];
  readonly backlashLeastMm: number | null;
  readonly contactRatio: number;
}

/** What gives way first, and by how much it holds; null without a load. */
export interface MarginReport {
  readonly governs: Criterion['kind'] | null;
  readonly margin: Range | null;
  readonly wanted: number | null;
  readonly verdict: Criterion['verdict'] | 'no-load';
  /** Tangential force at the teeth that a stall may bring, with the margin wanted */
  readonly carriesStallN: Range;
}

/** The design as plain data, numbers as they came out. */
export function reportDesign(design: PartDesign): DesignReport {
  const { process, material, hub } = design;
  const { months, isStopgap, reason } = findLookAgain(material.key);
  return {
    process: { key: process.key, name: process.name },
    material: { key: material.key, name: material.name },
    hold: design.hold ?? null,
    bushOutsideMm: design.bushOutside ?? null,
    changes: design.changes,
    rolled: design.rolled.map(({ mate, before, after }) => ({
      mate,
      before: reportRolled(before),
      after: reportRolled(after),
    })),
    strength: { before: reportMargin(design.strength.before), after: reportMargin(design.strength.after) },
    wall: hub.wall,
    press: hub.press,
    notes: design.notes,
    cautions: listCautions(process.key, material.key).map(({ says }) => says),
    lookAgain: { months, isStopgap, reason },
  };
}

function reportRolled({ verdict, mean }: RollingProof): RolledReport {
  const { backlashLeast, contactRatio } = mean;
  return {
    verdict,
    backlashLeastMm: Number.isFinite(backlashLeast) ? backlashLeast : null,
    contactRatio,
  };
}

function reportMargin({ governs, carries }: ToothStrength): MarginReport {
  return {
    governs: governs?.kind ?? null,
    margin: governs?.margin ?? null,
    wanted: governs?.wanted ?? null,
    verdict: governs?.verdict ?? 'no-load',
    carriesStallN: carries.stall,
  };
}
