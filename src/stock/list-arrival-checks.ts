import { reworkLimits } from '../../gear-library/rework-limits.ts';
import type { GearSpec } from '../involute/gear-spec.ts';
import { findSpan, findSpanTeeth, listSpanTeeth } from '../involute/span.ts';
import { expectReading } from '../readings/expected-reading.ts';

/** What the caliper should show on a gear that came by post, mm. */
export interface ArrivalCheck {
  readonly of: 'outside' | 'span';
  /** Of a span */
  readonly teeth?: number;
  readonly expected: number;
  readonly giveOrTake: number;
  /** What the nearest wrong gear shows there, where the two can be told apart by it */
  readonly wrong?: { readonly expected: number; readonly name: string };
  readonly words: string;
}

/**
 * What to measure when the part arrives: across the tips, and a span, which no worn or shortened tip can spoil. Beside
 * each, what its nearest look-alike would show.
 *
 * @param wrong the gear it is most easily taken for
 * @example z 24, module 0.5: outside 13 ± 0.1; span over 3 teeth 3.86 ± 0.06
 */
export function listArrivalChecks(
  spec: GearSpec,
  wrong?: { readonly spec: GearSpec; readonly name: string },
): ArrivalCheck[] {
  const { outsideOnArrival, spanOnArrival } = reworkLimits;
  const checks: ArrivalCheck[] = [];
  const outside = expectReading({ ...spec, tipDiameter: null }, { of: 'outside' });
  if (outside !== undefined) {
    const wide = wrong && expectReading({ ...wrong.spec, tipDiameter: null }, { of: 'outside' });
    checks.push(
      tell(
        { of: 'outside', expected: outside, giveOrTake: outsideOnArrival.mm },
        'across the tips',
        wide,
        wrong?.name,
      ),
    );
  }
  const k = findSpanTeeth(spec);
  if (k !== undefined) {
    const over = wrong && listSpanTeeth(wrong.spec).includes(k) ? findSpan(wrong.spec, k) : undefined;
    checks.push(
      tell(
        { of: 'span', teeth: k, expected: findSpan(spec, k), giveOrTake: spanOnArrival.mm },
        `across ${k} ${k === 1 ? 'tooth' : 'teeth'} (span)`,
        over,
        wrong?.name,
      ),
    );
  }
  return checks;
}

function tell(
  check: Omit<ArrivalCheck, 'words' | 'wrong'>,
  where: string,
  other: number | undefined,
  name: string | undefined,
): ArrivalCheck {
  const { expected, giveOrTake } = check;
  const plain = `${where} ${expected.toFixed(2)} mm, give or take ${giveOrTake}`;
  const isApart = other !== undefined && Math.abs(other - expected) > 1.5 * giveOrTake;
  return isApart && name !== undefined
    ? {
        ...check,
        wrong: { expected: other, name },
        words: `${plain}; ${name} would show ${other.toFixed(2)}`,
      }
    : { ...check, words: plain };
}
