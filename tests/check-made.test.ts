import { describe, expect, test } from 'vitest';
import { processes } from '../gear-library/processes.ts';
import { checkMade, Fail, type Job, parseJob, tellMade } from '../src/index.ts';
import { findDiameters } from '../src/involute/gear-diameters.ts';
import { growTeeth } from '../src/involute/grow-teeth.ts';
import { findSpan } from '../src/involute/span.ts';
import { compensatePart } from '../src/making/compensate-part.ts';
import type { Compensation } from '../src/making/compensation.ts';
import { startRandom } from '../src/numeric/random.ts';
import { findErrorPrior } from '../src/readings/error-prior.ts';
import type { WheelForm } from '../src/solid/wheel-form.ts';
import { makeSpec } from './involute/make-spec.ts';

const spec = makeSpec({ teeth: 20, thinning: 0.08 });
type Reading = NonNullable<NonNullable<NonNullable<Job['wheels']>[number]['made']>['readings']>[number];

/** An invented pinion of 20 teeth against 40 at 30 mm, and what was read of the part that was made for it. */
const jobWith = (readings: readonly Reading[], made: object = {}, center: number | null = 30): Job =>
  parseJob(
    JSON.stringify({
      format: 'sparetooth-job',
      version: 1,
      invented: true,
      kit: { zeroUMm: 0.005, uMm: 0.01 },
      wheels: [
        {
          id: 'p1',
          readings: [{ of: 'shaft', mm: 3 }],
          spec: {
            teeth: 20,
            moduleMm: 1,
            thinningMm: 0.08,
            faceWidthMm: 5,
            bore: { shape: 'round', diameterMm: 3.1 },
          },
          made: { process: 'filament-0.4', readings, ...made },
        },
        { id: 'w1', spec: { teeth: 40, moduleMm: 1 } },
      ],
      meshes: [{ kind: 'teeth', driver: 'p1', driven: 'w1', centerMm: center ?? undefined, uMm: 0.02 }],
    }),
  ).job;

/** What exact tools read of a part whose flanks, tips and hole reach so much further, mm a side. */
const readPart = (flanks: number, tips: number, holes: number): Reading[] => {
  const made = growTeeth(spec, { flanks, tips, scale: 1 });
  return [
    { of: 'outside', mm: findDiameters(made).tip, uMm: 0.01 },
    { of: 'span', teeth: 2, mm: findSpan(made, 2), uMm: 0.01 },
    { of: 'span', teeth: 3, mm: findSpan(made, 3), uMm: 0.01 },
    { of: 'bore', mm: 3.1 - 2 * holes, uMm: 0.01 },
  ];
};
const dimensionOf = (report: ReturnType<typeof checkMade>, of: string) =>
  report.dimensions.find((one) => one.of === of);

describe('a made part', () => {
  test('that is as meant fits, and turns against its mate as measured', () => {
    const report = checkMade(jobWith(readPart(0, 0, 0)), 'p1');
    expect(report).toMatchObject({ verdict: 'fits', unread: [], proofMissing: null });
    expect(report.proof?.verdict).toBe('turns');
    // What was thinned off the tooth is the backlash, within what 0.01 mm readings and the process leave open.
    expect(report.proof?.backlashMinMm).toBeGreaterThan(0.05);
    expect(report.proof?.backlashMinMm).toBeLessThan(0.1);
    expect(dimensionOf(report, 'bore')?.heldAgainst).toBe('clearance');
    expect(tellMade(report)[0]).toMatch(/^It fits/);
  });

  test('with fat teeth is tight: it jams, and from where it would be free is said', () => {
    const report = checkMade(jobWith(readPart(0.1, 0.05, 0)), 'p1');
    expect(report.verdict).toBe('tight');
    expect(dimensionOf(report, 'tooth-thickness')).toMatchObject({
      verdict: 'tight',
      heldAgainst: 'backlash',
    });
    expect(dimensionOf(report, 'bore')?.verdict).toBe('fits');
    // Both flanks, 0.1 mm a side along the normal: 0.2/cos 20° of arc.
    expect(dimensionOf(report, 'tooth-thickness')?.errorMm).toBeCloseTo(0.2 / Math.cos(Math.PI / 9), 1);
    expect(report.proof?.verdict).toBe('jams');
    expect(report.proof?.freeFromMm).toBeGreaterThan(30.1);
    expect(tellMade(report).join(' ')).toContain('it jams');
  });

  test('with thin teeth is loose', () => {
    const report = checkMade(jobWith(readPart(-0.12, 0, 0)), 'p1');
    expect(report.verdict).toBe('loose');
    expect(dimensionOf(report, 'tooth-thickness')?.verdict).toBe('loose');
  });

  test('with a bore below its shaft is tight, with one far above loose', () => {
    const small = checkMade(jobWith(readPart(0, 0, 0.1)), 'p1');
    expect([small.verdict, dimensionOf(small, 'bore')?.verdict]).toEqual(['tight', 'tight']);
    const wide = checkMade(jobWith(readPart(0, 0, -0.1)), 'p1');
    expect([wide.verdict, dimensionOf(wide, 'bore')?.verdict]).toEqual(['loose', 'loose']);
  });

  test('whose takings differ from place to place is warped', () => {
    const [outside, ...rest] = readPart(0, 0, 0);
    const report = checkMade(
      jobWith([{ ...outside, mm: [22.2, 21.8, 22.2, 21.8] } as Reading, ...rest]),
      'p1',
    );
    expect(report.verdict).toBe('warped');
    expect(report.outOfRound?.mm).toBeGreaterThan(0.3);
    expect(tellMade(report).join(' ')).toContain('0.40 mm from place to place');
  });

  test('with a reading that is plainly wrong has it named, before the verdict is believed', () => {
    const [outside, two, three, bore] = readPart(0, 0, 0);
    const report = checkMade(
      jobWith([outside, two, { ...three, mm: findSpan(spec, 3) + 1.1 } as Reading, bore]),
      'p1',
    );
    expect(report.residuals.filter(({ isSuspect }) => isSuspect).map(({ reading }) => reading)).toContain(2);
    expect(tellMade(report)[1]).toContain('measure it again');
    // No process makes a span of 8.7 of 7.6: it is another part's, or a slip.
    expect(report.residuals[2].isLeftOut).toBe(true);
    expect(report.verdict).toBe('fits');
    const less = checkMade(
      jobWith([outside, two, { ...three, mm: findSpan(spec, 3) + 0.5 } as Reading, bore]),
      'p1',
    );
    expect(less.residuals.some(({ isSuspect }) => isSuspect)).toBe(true);
    expect(
      checkMade(jobWith(readPart(0.05, 0.02, 0.05)), 'p1').residuals.some(({ isSuspect }) => isSuspect),
    ).toBe(false);
  });

  test('of which nothing was read is not judged, and what to read is said', () => {
    const report = checkMade(jobWith([]), 'p1');
    expect(report).toMatchObject({ verdict: 'unread', unread: ['outside', 'span', 'bore'] });
  });

  test('without a distance is not rolled, and says so', () => {
    const report = checkMade(jobWith(readPart(0, 0, 0), {}, null), 'p1');
    expect(report.proof).toBeNull();
    expect(report.proofMissing).toContain('distance');
    expect(dimensionOf(report, 'tooth-thickness')?.heldAgainst).toBe('error');
  });

  test('is held against what it was made to be, where that is said', () => {
    const report = checkMade(
      jobWith(readPart(0, 0, 0), { spec: { teeth: 20, moduleMm: 1, thinningMm: 0.28 } }),
      'p1',
    );
    expect(dimensionOf(report, 'tooth-thickness')?.errorMm).toBeCloseTo(0.2, 1);
  });

  test('is refused where there is none, or of a process that is not known', () => {
    const bare = jobWith([], {});
    expect(() => checkMade(bare, 'w1')).toThrow(Fail);
    expect(() => checkMade(jobWith([], { process: 'knitting' }), 'p1')).toThrow('knitting');
  });
});

describe('the next one', () => {
  /** Mean distance of thickness and bore from what was meant, over invented machines, part after part. */
  test('drawn with the corrected figures comes out nearer, the one after that nearer still', () => {
    const process = processes.find(({ key }) => key === 'filament-0.4');
    if (!process) throw new Error('no process');
    const prior = findErrorPrior(process);
    const random = startRandom(12);
    const machines = 12;
    const off = [0, 0, 0];
    for (let k = 0; k < machines; k++) {
      const errors = prior.mean.map((one, i) => one + prior.deviation[i] * random.normal());
      let used: Compensation | undefined;
      let made: object = {};
      for (let round = 0; round < 3; round++) {
        const form: WheelForm = {
          spec,
          faceWidth: 5,
          bore: { shape: 'round', diameter: 3.1 },
          hubs: [],
          chamfer: 0,
        };
        const drawn = used ? compensatePart(form, used).form : form;
        const own = (): number => 0.01 * random.normal();
        const outside = errors[1] + own();
        const scale = 1 + errors[0];
        const part = growTeeth(growTeeth(drawn.spec, { flanks: 0, tips: 0, scale }), {
          flanks: outside + errors[2] + own(),
          tips: outside,
          scale: 1,
        });
        const bore =
          (drawn.bore.shape === 'round' ? drawn.bore.diameter : 0) * scale - 2 * (errors[3] + own());
        const read = (value: number): number => value + 0.01 * random.normal();
        const readings: Reading[] = [
          { of: 'outside', mm: read(findDiameters(part).tip) },
          { of: 'span', teeth: 2, mm: read(findSpan(part, 2)) },
          { of: 'span', teeth: 3, mm: read(findSpan(part, 3)) },
          { of: 'bore', mm: read(bore), uMm: 0.015 },
        ];
        off[round] +=
          (Math.abs(findSpan(part, 3) - findSpan(spec, 3)) + Math.abs(bore - 3.1)) / (2 * machines);
        const { next } = checkMade(jobWith(readings, made, null), 'p1');
        used = next.compensation;
        made = { compensation: next.compensation, uncertainty: next.uncertainty };
      }
    }
    // Uncorrected they are off by a tenth of a millimeter and more.
    expect(off[0]).toBeGreaterThan(0.1);
    // A published trial cut it to a third by one correction from five parts; here prints differ by 0.01 mm a side only.
    expect(off[1]).toBeLessThan(off[0] / 3);
    expect(off[2]).toBeLessThan(off[1] * 1.05);
  });
});
