import { describe, expect, test } from 'vitest';
import { reportIdentity } from '../../src/cli/report-identity.ts';
import { wrapText } from '../../src/cli/wrap-text.ts';
import type { CandidateReport, IdentityReport, Job, WheelReport } from '../../src/index.ts';
import { tellOdds } from '../../src/words/tell-odds.ts';

const job = {
  format: 'sparetooth-job',
  version: 1,
  wheels: [
    {
      id: 'p1',
      readings: [
        { of: 'teeth', count: 23 },
        { of: 'outside', mm: 0.49 },
        { of: 'span', teeth: 3, mm: 3.84 },
      ],
    },
  ],
} as const satisfies Job;

/** A candidate as identify reports it; figures invented. */
function candidate(changes: Partial<CandidateReport> = {}): CandidateReport {
  return {
    system: 'module',
    size: 0.5,
    moduleMm: 0.5,
    pressureAngleDeg: 20,
    teeth: 23,
    probability: 0.96,
    rack: 'full depth',
    spec: {
      teeth: 23,
      moduleMm: 0.5,
      pressureAngleDeg: 20,
      helixAngleDeg: 0,
      profileShift: 0.3,
      addendum: 1,
      dedendum: 1.25,
      rootRadius: 0.38,
      thinningMm: 0,
      tipDiameterMm: null,
    },
    specU: { moduleMm: 0, profileShift: 0.04, thinningMm: 0.01, helixAngleDeg: 0 },
    tipLossMm: 0,
    derived: {
      referenceDiameterMm: 11.5,
      baseDiameterMm: 10.806,
      tipDiameterMm: 12.8,
      rootDiameterMm: 10.55,
      basePitchMm: 1.476,
      toothThicknessMm: 0.89,
      tipLandMm: 0.3,
    },
    residuals: [
      { reading: 1, of: 'outside', read: 0.49, expected: 12.45, unit: 'mm', sigmas: -300 },
      { reading: 2, of: 'span', read: 3.84, expected: 3.85, unit: 'mm', sigmas: -0.4 },
    ],
    ...changes,
  };
}

function report(changes: Partial<WheelReport> = {}): string {
  const wheel: WheelReport = {
    id: 'p1',
    name: 'motor pinion',
    pitch: [{ system: 'module', size: 0.5, moduleMm: 0.5, probability: 0.96 }],
    candidates: [candidate()],
    restProbability: 0.04,
    verdict: 'likely',
    angleVerdict: 'likely',
    sameTeeth: [],
    suspect: [],
    next: [],
    notes: [],
    ...changes,
  };
  const lines = reportIdentity({ wheels: [wheel] } satisfies IdentityReport, job);
  for (const line of lines) expect(line.length, line).toBeLessThanOrEqual(80);
  const text = lines.join('\n');
  // Words that the page and the report never use.
  expect(text).not.toMatch(/posterior|hypothes|evidence|\bbits?\b|sigma|residual|\d\.\d+ ?%/i);
  return text.replace(/\s+/g, ' ');
}

describe('the report of a wheel says', () => {
  test('what it is in plain words with the word of the trade, and the odds', () => {
    expect(report()).toContain('Metric size 0.5 (module), 23 teeth: likely, 19 in 20.');
    expect(report()).toContain('fat teeth, +0.30 (profile shift), give or take 0.04');
  });

  test('the inch name of an inch size', () => {
    const pitch = [{ system: 'diametral-pitch', size: 48, moduleMm: 0.5292, probability: 0.992 }] as const;
    expect(report({ pitch, verdict: 'certain' })).toContain(
      'Inch size 48 (DP), 23 teeth: certain, 99 in 100.',
    );
  });

  test('what it could also be', () => {
    const rival = candidate({ system: 'diametral-pitch', size: 48, probability: 0.03 });
    expect(report({ candidates: [candidate(), rival] })).toContain(
      'It could also be inch size 48 (DP), 23 teeth, 20 degrees: 1 in 50',
    );
  });

  test("that it can't tell yet, and what to measure next with why, but never what to expect there", () => {
    const text = report({
      verdict: 'undecided',
      pitch: [{ system: 'module', size: 0.5, moduleMm: 0.5, probability: 0.6 }],
      next: [
        { of: 'span', teeth: 4, gainBits: 0.8, why: 'two spans apart give the base pitch' },
        { of: 'root', gainBits: 0.001, why: 'too little to be worth it' },
      ],
    });
    expect(text).toContain("Can't tell yet. Most likely metric size 0.5 (module), 23 teeth: 6 in 10.");
    expect(text).toContain('Measure next 1. Across 4 teeth (span): two spans apart give the base pitch.');
    expect(text).not.toContain('too little');
  });

  test('that no gear gives these readings', () => {
    expect(report({ verdict: 'nothing-fits' })).toContain('No gear I know gives these readings.');
  });

  test.each([
    [{ kind: 'inch-for-mm', value: 12.446, unit: 'mm' }, 'If 0.49 was inches, everything agrees.'],
    [{ kind: 'radius-for-diameter', value: 0.98, unit: 'mm' }, 'If 0.49 was a radius, everything agrees.'],
    [
      { kind: 'swapped-digits', value: 0.94, unit: 'mm' },
      'two digits were swapped and 0.49 is 0.94, everything',
    ],
    [
      { kind: 'lost-decimal', value: 4.9, unit: 'mm' },
      'the point was lost and 0.49 is 4.9, everything agrees',
    ],
    [undefined, 'Take it again.'],
  ] as const)('which reading does not agree, and the kindest repair: %o', (repair, words) => {
    const suspect = { reading: 1, of: 'outside', probability: 0.96, ...(repair ? { repair } : {}) };
    const text = report({ suspect: [suspect] });
    expect(text).toContain('Across the tips: 19 in 20 that it is a slip.');
    expect(text).toContain(words);
    expect(text).toContain("0.49 12.45 doesn't agree");
  });

  test('of a count that is one off, and of a zero that was not set', () => {
    const count = {
      reading: 0,
      of: 'teeth',
      probability: 0.5,
      repair: { kind: 'count-off-by-one', value: 24 },
    } as const;
    expect(report({ suspect: [count] })).toContain('If it has 24 teeth, everything agrees.');
    const zero = { reading: -1, of: 'zero', probability: 0.5, repair: { kind: 'zero-not-set' } } as const;
    expect(report({ suspect: [zero] })).toContain("The caliper's zero: 1 in 2 that it is a slip.");
  });

  test('not that everything agrees where two readings are in doubt', () => {
    const one = {
      reading: 1,
      of: 'outside',
      probability: 0.5,
      repair: { kind: 'inch-for-mm', value: 12.446 },
    } as const;
    const two = { reading: 2, of: 'span', probability: 0.4 } as const;
    expect(report({ suspect: [one, two] })).not.toContain('everything agrees');
  });

  test('that two names are the same teeth', () => {
    const other = candidate({ system: 'diametral-pitch', size: 50.8, probability: 0.02 });
    expect(report({ candidates: [candidate(), other], sameTeeth: [[0, 1]] })).toContain(
      'are names for the same teeth: it makes no difference which.',
    );
  });

  test.each([
    ['same-teeth', 'Two names, same teeth: it makes no difference.'],
    [
      'either-runs-slowly',
      'either will run slowly. That is a judgment from the numbers; nothing was rolled.',
    ],
    ['make-both', 'Make both and try'],
    ['stop-here', 'Stop here.'],
  ] as const)('where it ends: %s', (ending, words) => {
    expect(report({ ending })).toContain(words);
  });
});

describe('odds in words', () => {
  test.each([
    [1, '999 in 1000'],
    [0.9949, '99 in 100'],
    [0.99, '99 in 100'],
    [0.957, '19 in 20'],
    [0.95, '19 in 20'],
    [0.9499, '9 in 10'],
    [0.62, '6 in 10'],
    [0.5, '1 in 2'],
    [0.31, '3 in 10'],
    [0.05, '1 in 20'],
    [0.0004, 'less than 1 in 1000'],
  ])('%d', (probability, words) => {
    expect(tellOdds(probability)).toBe(words);
  });

  test('above a half, are never higher than the probability', () => {
    for (let p = 0.501; p <= 1; p += 0.001) {
      const [part, of] = tellOdds(p).split(' in ').map(Number);
      expect(part / of).toBeLessThanOrEqual(p + 1e-9);
    }
  });
});

test('a wrapped text keeps its words and its width', () => {
  const text = 'word '.repeat(60).trim();
  const lines = wrapText(text, '  - ');
  expect(lines.every((line) => line.length <= 80)).toBe(true);
  expect(lines.join(' ').replace('-', '').split(/\s+/).filter(Boolean)).toHaveLength(60);
  expect(wrapText('x'.repeat(90), '  - ')).toEqual([`  - ${'x'.repeat(90)}`]);
});
