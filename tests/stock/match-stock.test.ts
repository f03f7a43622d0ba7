import { describe, expect, test } from 'vitest';
import { stockRanges } from '../../gear-library/stock-ranges.ts';
import { parseParts } from '../../src/job/parse-parts.ts';
import { rollPair } from '../../src/rolling/roll-pair.ts';
import { listMade } from '../../src/stock/list-made.ts';
import { listRangeParts } from '../../src/stock/list-range-parts.ts';
import { matchStock, type StockMatch } from '../../src/stock/match-stock.ts';
import type { Need, Roll } from '../../src/stock/need.ts';
import { indexParts } from '../../src/stock/stock-index.ts';
import type { StockPart } from '../../src/stock/stock-part.ts';
import { makeSpec } from '../involute/make-spec.ts';

const roll: Roll = (driver, driven, at) =>
  rollPair(driver, driven, at, { distances: 3, seeksDistance: false });

/** A wheel of 60 teeth, module 0.5, on a 3 mm shaft, driven by a pinion of 16. */
function makeNeed(given: Partial<Need> = {}, teeth = 60, mateTeeth = 16, distance?: number): Need {
  const module = 0.5;
  return {
    wheelId: 'w',
    spec: makeSpec({ teeth, module }),
    isSure: true,
    mates: [
      {
        id: 'p',
        wheel: { spec: makeSpec({ teeth: mateTeeth, module }) },
        isDriver: true,
        centerDistance: distance ?? (module * (teeth + mateTeeth)) / 2 + 0.05,
        uncertainty: 0.01,
        isMeasured: true,
      },
    ],
    shaft: 3,
    bore: undefined,
    faceWidth: 4,
    overallLength: undefined,
    isJoined: false,
    notes: [],
    speedWith: (count) => ({ changePercent: (teeth / count - 1) * 100, errorPercent: null, isWithin: null }),
    ...given,
  };
}

function match(need: Need, parts: readonly StockPart[]): StockMatch {
  const search = matchStock(need, indexParts(parts), roll);
  let step = search.next();
  while (!step.done) step = search.next();
  return step.value;
}

function own(rows: string): readonly StockPart[] {
  const file = parseParts(`teeth,pitch,OD,bore,width,price,angle,shift\n${rows}`);
  expect(file.badRows).toEqual([]);
  return file.parts;
}

describe('a drawer held against a wheel', () => {
  test('the same wheel is exact; with another bore it is exact after rework; the same count of 48 DP is a trap', () => {
    const { rows } = match(
      makeNeed(),
      own('60,48 DP,,3,4,,20,\n60,0.5,,2.5,4,,20,\n60,0.5,,3,4,,20,\n12,0.5,,3,4,,20,\n60,0.5,,4,4,,20,\n'),
    );
    expect(rows.map(({ kind, part }) => `${kind} ${part.id}`)).toEqual([
      'exact own:4',
      'rework own:3',
      'rework own:6',
      'look-alike own:2',
    ]);
    expect(rows[1].reworks[0]).toMatchObject({ kind: 'ream', from: 2.5, to: 3, isPossible: true });
    expect(rows[2].reworks[0]).toMatchObject({ kind: 'bush', from: 4, to: 3, isPossible: true });
    expect(rows[0].proof?.verdict).toBe('turns');
    // Reference arithmetic: 25.4/48 is 5.8 % over 0.5, and such a pair jams at its mean distance.
    expect(rows[3].proof?.verdict).toBe('jams');
    expect(rows[3].why).toContain('5.8 %');
  });

  test('what the caliper should show comes with the row, and what the trap would show', () => {
    const { rows } = match(makeNeed({}, 24), own('24,0.5,,3,4,,20,\n24,48 DP,,3,4,,20,\n'));
    const [outside, span] = rows[0].checks;
    // Outside m (z + 2) = 13; span m cos 20° (π (k − ½) + z inv 20°) with k 3: 3.8580 (ISO 21771).
    expect(outside.expected).toBeCloseTo(13, 6);
    expect(span.teeth).toBe(3);
    expect(span.expected).toBeCloseTo(3.858, 3);
    // (24 + 2)/48 in = 13.758 mm.
    expect(outside.wrong?.expected).toBeCloseTo(13.758, 3);
    expect(rows[0].search).toBe('spur gear, module 0.5, 24 teeth, bore 3 mm, width 4 mm');
  });

  test('64 DP in place of 0.4 turns at its distance and is offered as such, not as the same', () => {
    const module = 0.4;
    const need = makeNeed({
      spec: makeSpec({ teeth: 30, module, thinning: 0.03 }),
      mates: [
        {
          id: 'p',
          wheel: { spec: makeSpec({ teeth: 14, module, thinning: 0.03 }) },
          isDriver: true,
          centerDistance: 8.8 + 0.03,
          uncertainty: 0.005,
          isMeasured: true,
        },
      ],
    });
    const [row] = match(need, own('30,64 DP,,3,4,,20,\n')).rows;
    expect(row.proof?.verdict).toBe('turns');
    expect(row.kind).toBe('other-teeth');
    expect(row.why).toContain('another size (64 DP)');
  });

  test('another count with a shift that suits the distance is found, with what it does to the speed', () => {
    // 58 teeth need x = 1.05 to fill the gap of 60; 59 need 0.5.
    const { rows } = match(makeNeed(), own('59,0.5,30.9,3,4,,20,0.4\n58,0.5,,3,4,,20,\n'));
    const [other] = rows;
    expect(other.kind).toBe('other-teeth');
    expect(other.part.teeth).toBe(59);
    expect(other.proof?.verdict).toBe('turns');
    expect(other.speed?.changePercent).toBeCloseTo(100 / 59, 6);
    expect(rows.filter(({ part }) => part.teeth === 58).every(({ kind }) => kind === 'look-alike')).toBe(
      true,
    );
  });

  test('a bore that leaves no wall under the teeth is told as a trap', () => {
    const { rows } = match(makeNeed({ shaft: 3 }, 10, 40), own('10,0.5,,1.9,4,,20,\n'));
    expect(rows[0].kind).toBe('look-alike');
    expect(rows[0].why).toContain("can't be made to go on");
  });

  test('a size that is only guessed is offered below one that was read, and says so', () => {
    const { rows } = match(makeNeed(), own('60,,31.0,3,4,,20,\n60,0.5,,3,4,,20,\n'));
    expect(rows.map(({ part }) => part.id)).toEqual(['own:3', 'own:2']);
    expect(rows[1].doubts[0]).toContain('guess');
  });

  test('without a mate nothing is rolled, and it says so', () => {
    const { rows, rolled } = match(makeNeed({ mates: [] }), own('60,0.5,,3,4,,20,\n'));
    expect(rolled).toBe(0);
    expect(rows[0].kind).toBe('exact');
    expect(rows[0].proof).toBeUndefined();
    expect(rows[0].why).toContain('not rolled');
  });

  test('width, hub and a joined wheel are told as work to do', () => {
    const need = makeNeed({ faceWidth: 4, overallLength: 9, isJoined: true });
    const [row] = match(need, own('60,0.5,,3,4,,20,\n')).rows;
    expect(row.reworks.map(({ kind }) => kind)).toEqual(['fix-hub', 'join']);
    const [wide] = match(makeNeed(), own('60,0.5,,3,8,,20,\n')).rows;
    expect(wide.reworks[0]).toMatchObject({ kind: 'shorten', from: 8, to: 4 });
  });

  test.each([
    [3.0, 60, []],
    [3.02, 60, []],
    [2.98, 60, []],
    [3.08, 60, ['bond']],
    [3.3, 60, ['bush']],
    [2.5, 60, ['ream']],
    [5, 14, ['bush']],
  ])('a bore of %s mm for a 3 mm shaft, %s teeth: %j', (bore, teeth, kinds) => {
    const [row] = match(makeNeed({}, teeth, 40), own(`${teeth},0.5,,${bore},4,,20,\n`)).rows;
    expect(row.reworks.map(({ kind }) => kind)).toEqual(kinds);
    // 14 teeth of module 0.5 have their root at 5.75 mm: a hole of 5 mm leaves 0.375 mm of wall, under the limit of 0.5.
    expect(row.kind).toBe(kinds.length === 0 ? 'exact' : teeth === 14 ? 'look-alike' : 'rework');
  });

  test('an empty drawer, and a wheel that is no external one, give empty answers', () => {
    expect(match(makeNeed(), []).rows).toEqual([]);
    const ring = makeNeed({ spec: makeSpec({ kind: 'internal', teeth: 60, module: 0.5 }) });
    expect(match(ring, own('60,0.5,,3,4,,20,\n')).rows).toEqual([]);
  });

  test('the ranges have the wheel of 60 teeth in brass and acetal, and 48 DP as its trap', () => {
    const { rows } = match(makeNeed(), stockRanges.flatMap(listRangeParts));
    const names = rows.map(({ kind, part, size }) => `${kind} ${part.material} ${size.system} ${size.size}`);
    expect(names).toContain('exact brass module 0.5');
    expect(names).toContain('exact POM module 0.5');
    expect(names.some((name) => name.startsWith('look-alike') && name.endsWith('diametral-pitch 48'))).toBe(
      true,
    );
    expect(rows.every(({ search }) => search.startsWith('spur gear, '))).toBe(true);
  });
});

describe('what can be made', () => {
  test('where the distance is too large for the original, it is made with a shift that suits it', () => {
    // 0.35 mm more than the nominal 19.05: over half a millimeter of backlash with the teeth as they were.
    const rows = listMade(makeNeed({}, 60, 16, 19.35), roll);
    const fitted = rows.find(({ kind }) => kind === 'made-to-distance');
    expect(fitted?.spec.profileShift).toBeGreaterThan(0.5);
    expect(fitted?.proof?.verdict).toBe('turns');
    expect(fitted?.proof?.meshes[0].backlashMinMm).toBeLessThan(
      rows.find(({ kind }) => kind === 'made')?.proof?.meshes[0].backlashMinMm ?? 0,
    );
  });

  test('where it is too small, the original jams and the fitted one comes first', () => {
    const rows = listMade(makeNeed({}, 60, 16, 18.85), roll);
    expect(rows[0].kind).toBe('made-to-distance');
    expect(rows[0].spec.profileShift).toBeLessThan(-0.2);
    expect(rows[1].proof?.verdict).toBe('jams');
  });
});
