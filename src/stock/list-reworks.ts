import { reworkLimits } from '../../gear-library/rework-limits.ts';
import { findDiameters } from '../involute/gear-diameters.ts';
import type { GearSpec } from '../involute/gear-spec.ts';
import type { NeedPlace } from './need.ts';
import type { StockPart } from './stock-part.ts';

/** One thing to do to a part before it goes in. Lengths mm. */
export interface Rework {
  readonly kind: 'ream' | 'drill' | 'bond' | 'bush' | 'shorten' | 'fix-hub' | 'join' | 'flat';
  readonly from: number | null;
  readonly to: number | null;
  /** What to do */
  readonly words: string;
  /** How far that may go, and why */
  readonly limit: string;
  readonly isPossible: boolean;
}

export interface ReworkList {
  readonly reworks: readonly Rework[];
  /** What could not be compared, for want of a measure */
  readonly unknown: readonly string[];
  /** What it does not as well as the original */
  readonly worse: readonly string[];
}

/**
 * What has to be done to a part so that it goes where the wheel was: its bore to the shaft, its width to the room, its
 * hub, and its other half where the original is one piece with another wheel. Each with its limit; one that goes beyond
 * the limit is listed as not possible.
 *
 * The bore is held against the shaft where that was measured, else against the original's own bore.
 */
export function listReworks(part: StockPart, spec: GearSpec, need: NeedPlace): ReworkList {
  const reworks: Rework[] = [];
  const unknown: string[] = [];
  const worse: string[] = [];
  const shaft = need.shaft ?? (need.bore && need.bore.shape !== 'none' ? need.bore.diameter : undefined);
  if (shaft === undefined) unknown.push('the shaft was not measured');
  else if (part.bore === null) unknown.push('the bore of this part is not known');
  else reworks.push(...fitBore(part.bore, shaft, spec, need, worse));
  if (need.faceWidth === undefined) unknown.push("the original's width was not measured");
  else if (part.faceWidth === null) unknown.push('the width of this part is not known');
  else reworks.push(...fitWidth(part.faceWidth, need.faceWidth, need.overallLength, worse));
  if (need.isJoined) {
    reworks.push({
      kind: 'join',
      from: null,
      to: null,
      words: 'join it to the other wheel of its piece: a key, a pin or a common bush; glue alone lets go',
      limit: 'the two must run true to each other: join them on the shaft',
      isPossible: true,
    });
  }
  return { reworks, unknown, worse };
}

function fitBore(
  bore: NonNullable<StockPart['bore']>,
  shaft: number,
  spec: GearSpec,
  need: NeedPlace,
  worse: string[],
): Rework[] {
  const { fit, bondGap, leastWall, safeWall, bushWall } = reworkLimits;
  const { root } = findDiameters(spec);
  const least = Math.max(leastWall.mm, leastWall.modules * spec.module);
  const wallAround = (hole: number): number => (root - hole) / 2;
  const reworks: Rework[] = [];
  const opened = bore.diameter < shaft - fit.mm || bore.shape === 'none';
  if (bore.shape !== 'none' && bore.shape !== 'round' && bore.shape !== need.bore?.shape) {
    worse.push(
      `its hole is ${bore.shape === 'd' ? 'D-shaped' : bore.shape}, and the shaft may be round: try it`,
    );
  }
  if (opened) {
    const wall = wallAround(shaft);
    const depth = (spec.addendum + spec.dedendum) * spec.module;
    reworks.push({
      kind: bore.shape === 'none' ? 'drill' : 'ream',
      from: bore.diameter,
      to: shaft,
      words:
        bore.shape === 'none'
          ? `bore it to ${mm(shaft)} mm, true to the teeth`
          : `open the bore from ${mm(bore.diameter)} to ${mm(shaft)} mm with a reamer or drill, held in soft jaws`,
      limit: `at least ${mm(least)} mm of wall must stay under the teeth (${leastWall.reason}); ${wall > 0 ? `${mm(wall)} mm` : 'nothing'} does`,
      isPossible: wall >= least - 1e-9,
    });
    if (wall >= least && wall < safeWall.toothDepths * depth) {
      worse.push(`the wall under the teeth is thin (${mm(wall)} mm): bond it, do not press it on`);
    }
  } else if (bore.diameter > shaft + fit.mm && bore.diameter <= shaft + bondGap.mm + 1e-9) {
    reworks.push({
      kind: 'bond',
      from: bore.diameter,
      to: shaft,
      words: `it sits loosely on the ${mm(shaft)} mm shaft: bond it with a glue that fills gaps, turning it until it runs true`,
      limit: `up to ${bondGap.mm} mm wider than the shaft (${bondGap.reason})`,
      isPossible: true,
    });
  } else if (bore.diameter > shaft + fit.mm) {
    const hole = Math.max(bore.diameter, shaft + 2 * bushWall.mm);
    const wall = wallAround(hole);
    const widened = hole > bore.diameter + 1e-9;
    reworks.push({
      kind: 'bush',
      from: bore.diameter,
      to: shaft,
      words: `${widened ? `open the bore to ${mm(hole)} mm and ` : ''}bush it to the ${mm(shaft)} mm shaft with a tube of ${mm(hole)} mm outside`,
      limit: `a tube has at least ${bushWall.mm} mm of wall, and ${mm(least)} mm must stay under the teeth; ${wall > 0 ? `${mm(wall)} mm` : 'nothing'} does`,
      isPossible: wall >= least - 1e-9,
    });
  }
  if (
    need.bore &&
    need.bore.shape !== 'round' &&
    need.bore.shape !== 'none' &&
    bore.shape !== need.bore.shape
  ) {
    reworks.push({
      kind: 'flat',
      from: null,
      to: null,
      words: `the shaft holds the original by its ${need.bore.shape === 'd' ? 'flat' : `${need.bore.shape} hole`}: bond it, or pin it through the hub`,
      limit: 'a round hole on a shaft with a flat is held by the bond alone',
      isPossible: true,
    });
  }
  return reworks;
}

function fitWidth(width: number, original: number, overall: number | undefined, worse: string[]): Rework[] {
  const { leastWidth, widthRoom } = reworkLimits;
  const reworks: Rework[] = [];
  const room = overall ?? original;
  if (width > room + widthRoom.mm) {
    reworks.push({
      kind: 'shorten',
      from: width,
      to: original,
      words: `face it down from ${mm(width)} to ${mm(original)} mm, unless there is room`,
      limit: 'a moulded gear can lose all but its hub side; keep the face square to the bore',
      isPossible: true,
    });
  } else if (width < original * leastWidth.part) {
    worse.push(`only ${mm(width)} mm wide where the original had ${mm(original)} mm: ${leastWidth.reason}`);
  }
  if (overall !== undefined && overall > width + widthRoom.mm) {
    reworks.push({
      kind: 'fix-hub',
      from: width,
      to: overall,
      words: `make up the length to ${mm(overall)} mm with a hub or spacing tube, so that it stays in line with its mate`,
      limit: 'if the original was held by its hub, the hub must turn with the gear: bond and pin it',
      isPossible: true,
    });
  }
  return reworks;
}

function mm(value: number): string {
  return String(Math.round(value * 100) / 100);
}
