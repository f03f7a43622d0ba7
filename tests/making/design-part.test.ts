import { describe, expect, test } from 'vitest';
import { materials } from '../../gear-library/materials.ts';
import { processes } from '../../gear-library/processes.ts';
import { type DesignOptions, designWheel } from '../../src/design-wheel.ts';
import { type ChangeKey, changeKeys, Fail, type Job } from '../../src/index.ts';
import { findDiameters } from '../../src/involute/gear-diameters.ts';
import { findTipLand } from '../../src/involute/tooth-thickness.ts';
import { findWorkingPair } from '../../src/involute/working-pair.ts';
import { specOfFields } from '../../src/job/spec-fields.ts';
import { designRim } from '../../src/making/design-body.ts';
import type { PartDesign } from '../../src/making/part-design.ts';
import { findWorsening } from '../../src/making/roll-with-mates.ts';
import { planWheel } from '../../src/plan-wheel.ts';
import { rollPair } from '../../src/rolling/roll-pair.ts';
import { checkForm } from '../../src/solid/check-form.ts';
import type { WheelForm } from '../../src/solid/wheel-form.ts';
import { makeLastingJob } from './lasting-job.ts';

function design(job: Job, options: DesignOptions = {}): PartDesign {
  return designWheel(job, planWheel(job, { wheelId: 'p1', process: options.process }), options);
}

function changeOf(found: PartDesign, key: ChangeKey) {
  const change = found.changes.find((one) => one.key === key);
  if (!change) throw new Error(`no change ${key}`);
  return change;
}

const fine = { process: 'filament-0.4', material: 'abs' };

describe('teeth of a part that lasts', () => {
  test('are thinned until the pair has the play that printed flanks want, all of it on the printed part', () => {
    const job = makeLastingJob();
    const found = design(job, { ...fine, off: changeKeys.filter((key) => key !== 'backlash') });
    // 0.045 m and twice a profile error of 0.067 mm (a published study of printed gear profiles).
    const wanted = 0.045 * 0.8 + 2 * 0.067;
    expect(found.rolled[0].after.mean.backlashLeast).toBeCloseTo(wanted, 2);
    expect(found.rolled[0].before.mean.backlashLeast).toBeLessThan(0.02);
    expect(changeOf(found, 'backlash')).toMatchObject({ isOn: true, from: 0, unit: 'mm' });
    expect(found.form.spec.tipDiameter).toBe(planWheel(job, { wheelId: 'p1' }).plan.form.spec.tipDiameter);
  });

  test('of nylon are thinned for what moisture adds', () => {
    // A gear of 20 mm that grows 1 %: 0.10 mm nearer, and 2 · 0.10 · tan 20° = 0.073 mm of play (own arithmetic from
    // the trade's rule). Here PA66 in damp room air, 0.9 % (common practice, no published source), on 20 mm.
    const job = makeLastingJob(
      {
        spec: { teeth: 40, moduleMm: 0.5, faceWidthMm: 4 },
      },
      { spec: { teeth: 40, moduleMm: 0.5 } },
      { meshes: [{ driver: 'p1', driven: 'w1', centerMm: 20, uMm: 0.02 }] },
    );
    const only = (key: ChangeKey) => changeKeys.filter((one) => one !== key);
    const found = design(job, { process: 'machine-shop', material: 'pa66', off: only('moisture') });
    expect(changeOf(found, 'moisture').isOn).toBe(true);
    expect(found.form.spec.thinning).toBeCloseTo(0.009 * 20 * Math.tan((20 * Math.PI) / 180), 6);
    const wet = makeLastingJob({ ...job.wheels?.[0], making: { wet: true } }, job.wheels?.[1], {
      meshes: job.meshes,
    });
    const soaked = design(wet, { process: 'machine-shop', material: 'pa66', off: only('moisture') });
    // 2.5 % when soaked (a trade article).
    expect(soaked.form.spec.thinning).toBeCloseTo(0.025 * 20 * Math.tan((20 * Math.PI) / 180), 6);
  });

  test('of POM beside a motor are thinned for warmth: 27 K of 110 in a million', () => {
    const job = makeLastingJob({
      making: { near: 'lamp' },
      spec: { teeth: 40, moduleMm: 0.8, faceWidthMm: 4 },
    });
    const found = design(job, {
      process: 'machine-shop',
      material: 'pom',
      off: changeKeys.filter((key) => key !== 'warmth'),
    });
    // 80 °C beside a lamp (common practice), 32 mm across, expansion 110 (a maker's data sheet).
    const size = (80 - 23) * 110e-6 * 32;
    expect(found.form.spec.thinning).toBeCloseTo(size * Math.tan((20 * Math.PI) / 180), 6);
    expect(changeOf(found, 'warmth').why).toContain('80 °C');
  });

  test('have tips cut back until the land is a line wide, and no further than a micrometer', () => {
    const found = design(makeLastingJob(), { ...fine, off: changeKeys.filter((key) => key !== 'tip-land') });
    const { spec } = found.form;
    expect(changeOf(found, 'tip-land').isOn).toBe(true);
    expect(findTipLand(spec)).toBeGreaterThanOrEqual(0.45);
    const { tip } = findDiameters(spec);
    expect(findTipLand({ ...spec, tipDiameter: tip + 0.002 })).toBeLessThan(0.45);
  });

  test('get the largest round at the root that the mate clears: a larger one meets its tips', () => {
    // A mate with tall teeth, so that its tips and not the rack set the limit.
    const tall = { spec: { teeth: 48, moduleMm: 0.8, addendum: 1.22, faceWidthMm: 5 } };
    const job = makeLastingJob(
      { spec: { teeth: 20, moduleMm: 0.8, faceWidthMm: 4, rootRadius: 0.1, thinningMm: 0.1 } },
      tall,
      {
        meshes: [{ driver: 'p1', driven: 'w1', centerMm: 27.2, uMm: 0.005 }],
      },
    );
    const found = design(job, { ...fine, off: changeKeys.filter((key) => key !== 'root-fillet') });
    const change = changeOf(found, 'root-fillet');
    expect(change.isOn).toBe(true);
    const { spec } = found.form;
    const mate = planWheel(job, { wheelId: 'w1' }).plan.form.spec;
    const at = (rootRadius: number) =>
      rollPair(
        { spec: { ...spec, rootRadius } },
        { spec: mate },
        { mm: 27.19, u: 0 },
        { seeksDistance: false },
      );
    const [before, after] = [at(0.1), at(spec.rootRadius)];
    expect(spec.rootRadius).toBeGreaterThan(0.11);
    expect(findWorsening(before, after)).toBeUndefined();
    expect(after.mean.backlashLeast).toBeGreaterThan(before.mean.backlashLeast - 0.002);
    expect(
      found.strength.after.factors.tip.tangent.form * found.strength.after.factors.tip.tangent.concentration,
    ).toBeLessThan(
      found.strength.before.factors.tip.tangent.form *
        found.strength.before.factors.tip.tangent.concentration,
    );
  });

  test('slanted ones become straight only as a pair, and then run on the same circles', () => {
    const helical = (angle: number, teeth: number) => ({
      teeth,
      moduleMm: 0.8,
      helixAngleDeg: angle,
      faceWidthMm: 4,
    });
    const distance = (0.8 * 60) / 2 / Math.cos((15 * Math.PI) / 180);
    const job = (own: boolean, mate: boolean) =>
      makeLastingJob(
        { spec: helical(15, 12), making: { spur: own } },
        { spec: helical(-15, 48), making: { spur: mate } },
        { meshes: [{ driver: 'p1', driven: 'w1', centerMm: distance + 0.05, uMm: 0.02 }] },
      );
    const off = changeKeys.filter((key) => key !== 'spur-pair');
    const alone = design(job(true, false), { ...fine, off });
    expect(changeOf(alone, 'spur-pair')).toMatchObject({
      isOn: false,
      withdrawn: expect.stringContaining('"w1"'),
    });
    expect(alone.form.spec.helixAngle).toBeCloseTo((15 * Math.PI) / 180, 9);
    const pair = design(job(true, true), { ...fine, off });
    expect(changeOf(pair, 'spur-pair')).toMatchObject({ isOn: true, from: 15, to: 0 });
    const [was, is] = [alone, pair].map(({ form }) => findDiameters(form.spec));
    for (const key of ['reference', 'base', 'tip', 'root'] as const) expect(is[key]).toBeCloseTo(was[key], 9);
    expect(pair.rolled[0].after.verdict).toBe(pair.rolled[0].before.verdict);
  });
});

describe('the bore of a part that lasts', () => {
  test('is no press fit on a printer, with the numbers that say why', () => {
    const found = design(makeLastingJob(), fine);
    const change = changeOf(found, 'bore');
    // Bores of a 0.4 mm nozzle lie 0.1 mm apart; ABS stands 0.5 % strain: 0.01 mm on 2 mm (value from memory).
    expect(change.why).toContain('0.010 mm of interference');
    expect(change.why).toContain('0.1 mm apart');
    expect(found.hold).toBe('bond');
    // Slip of 0.05 to 0.15 mm (value from memory), its middle.
    expect(found.form.bore).toEqual({ shape: 'round', diameter: 2.1 });
  });

  test('of acetal is a flat, since no glue holds on it', () => {
    const found = design(makeLastingJob(), { process: 'machine-shop', material: 'pom' });
    expect(found.hold).toBe('flat');
    expect(found.form.bore).toMatchObject({ shape: 'd', diameter: 2.01 });
    expect(changeOf(found, 'bore').why).toContain('No glue holds');
  });

  test('takes a bush where glue on the bare shaft does not carry twice the stall, and a flat where no bush fits', () => {
    // Glue: 3 MPa · π · 2² · 4/2 = 75.4 N mm (own arithmetic), less than twice 60.
    const strong = { motor: { shaft: 'motor', rpm: 3000, stallTorqueNmm: 60 } };
    const roomy = design(
      makeLastingJob({ spec: { teeth: 20, moduleMm: 0.8, faceWidthMm: 4 } }, {}, { ...strong, meshes: [] }),
      fine,
    );
    expect(roomy.hold).toBe('bush');
    expect(roomy.bushOutside).toBe(3);
    expect(roomy.form.bore).toEqual({ shape: 'round', diameter: 3.1 });
    const narrow = design(
      makeLastingJob(
        { readings: [{ of: 'shaft', mm: 3 }], spec: { teeth: 10, moduleMm: 0.7, faceWidthMm: 4 } },
        {},
        { motor: { shaft: 'motor', rpm: 3000, stallTorqueNmm: 100 }, meshes: [] },
      ),
      fine,
    );
    expect(narrow.hold).toBe('flat');
  });

  test('presses on a large shaft of a shop, whose bores are true enough, unless the old one split', () => {
    const spec = { teeth: 30, moduleMm: 1, faceWidthMm: 8 };
    const readings = [
      { of: 'shaft', mm: 8 },
      { of: 'bore', mm: 7.98 },
    ];
    const sound = makeLastingJob({ spec, readings, damage: [{ kind: 'worn' }] }, {}, { meshes: [] });
    const found = design(sound, { process: 'machine-shop', material: 'pom' });
    expect(found.hold).toBe('press');
    // 1 % of 8 mm lasts (value from memory); half of it is drawn.
    expect(found.form.bore).toEqual({ shape: 'round', diameter: 7.96 });
    const split = design(makeLastingJob({ spec, readings }, {}, { meshes: [] }), {
      process: 'machine-shop',
      material: 'pom',
    });
    expect(split.hold).toBe('flat');
  });

  test('keeps turning where the old one turned on its pin', () => {
    const job = makeLastingJob({
      damage: [{ kind: 'worn' }],
      readings: [
        { of: 'shaft', mm: 2 },
        { of: 'bore', mm: 2.1 },
      ],
    });
    expect(design(job, fine).hold).toBe('turns');
    expect(design(job, fine).form.bore).toEqual({ shape: 'round', diameter: 2.3 });
  });

  test('is left alone where a split wheel has no shaft, and says what to measure', () => {
    const job = makeLastingJob({ readings: [{ of: 'bore', mm: 1.9 }] });
    const found = design(job, fine);
    expect(changeOf(found, 'bore')).toMatchObject({
      isOn: false,
      withdrawn: expect.stringContaining('Measure the shaft'),
    });
    expect(found.form.bore).toEqual(planWheel(job, { wheelId: 'p1' }).plan.form.bore);
  });

  test('has a hub twice as wide, as far as the mate leaves room', () => {
    const hubs = [{ side: 'top', diameterMm: 2.8, lengthMm: 3 }];
    const job = makeLastingJob(
      { spec: { teeth: 20, moduleMm: 0.8, faceWidthMm: 4, hubs } },
      {},
      { meshes: [] },
    );
    const found = design(job, { process: 'resin', material: 'resin-tough' });
    // Twice 2.055, rounded down.
    expect(found.form.hubs[0].diameter).toBeCloseTo(4.11, 9);
    expect(changeOf(found, 'hub')).toMatchObject({ isOn: true, from: 2.8, to: 4.11 });
  });

  test('of a ring is not asked, but its rim is made 1.2 tooth depths thick', () => {
    const ring = {
      kind: 'internal',
      spec: { teeth: 60, moduleMm: 1, faceWidthMm: 5, rimDiameterMm: 65 },
      damage: [],
    };
    const found = design(makeLastingJob(ring, {}, { meshes: [] }), fine);
    // Root 62.5, tip 58: depth 2.25; 62.5 + 2 · 1.2 · 2.25 = 67.9.
    expect(changeOf(found, 'rim')).toMatchObject({ isOn: true, from: 65, to: 67.9 });
    expect(found.form.rimDiameter).toBe(67.9);
  });

  test('with a web keeps 1.2 tooth depths of rim under the teeth, and leaves a web with holes alone', () => {
    const form: WheelForm = {
      spec: specOfFields({ teeth: 40, moduleMm: 1 }, 'external', 'spec'),
      faceWidth: 6,
      chamfer: 0,
      hubs: [],
      bore: { shape: 'round', diameter: 4 },
      web: { thickness: 2, hubDiameter: 10, rimDiameter: 36 },
    };
    // Root 37.5, depth 2.25: 37.5 − 2 · 1.2 · 2.25 = 32.1.
    const plain = designRim(form);
    expect(plain?.change).toMatchObject({ key: 'rim', from: 36, to: 32.1 });
    expect(plain?.form?.web?.rimDiameter).toBe(32.1);
    checkForm(plain?.form ?? form);
    expect(designRim(plain?.form ?? form)).toBeUndefined();
    const holes = { count: 4, diameter: 5, circleDiameter: 23 };
    expect(designRim({ ...form, holes })).toBeUndefined();
  });
});

describe('load, warmth and fineness', () => {
  test('choose another material where nobody chose one, and say so where somebody did', () => {
    const job = makeLastingJob();
    const open = design(job, { process: 'filament-0.4' });
    expect(open.material.key).toBe('abs');
    expect(changeOf(open, 'material').why).toContain('50 °C');
    const chosen = design(job, { process: 'filament-0.4', material: 'pla' });
    expect(chosen.material.key).toBe('pla');
    expect(changeOf(chosen, 'material')).toMatchObject({ isOn: false, withdrawn: expect.any(String) });
  });

  test('take the torque through the drive: a wheel behind 4 to 1 bears four times the motor', () => {
    const found = designWheel(makeLastingJob(), planWheel(makeLastingJob(), { wheelId: 'w1' }), fine);
    const pinion = design(makeLastingJob(), fine);
    const stall = (one: PartDesign) => one.strength.before.criteria.find(({ kind }) => kind === 'root-stall');
    // Force at the teeth is the same on both: 2 · 12/9.6 N = 2 · 48/38.4 N (own arithmetic).
    expect(stall(found)?.margin.value).toBeGreaterThan(0);
    expect(stall(pinion)?.margin.value).toBeGreaterThan(0);
    expect((2 * 12) / 9.6).toBeCloseTo((2 * 48) / 38.4, 9);
  });

  test('widen the teeth as far as the mate and the room go, and the margin grows with them', () => {
    const found = design(makeLastingJob({ making: { roomMm: 3 } }), {
      ...fine,
      off: changeKeys.filter((key) => key !== 'face-width'),
    });
    expect(changeOf(found, 'face-width')).toMatchObject({ isOn: true, from: 4, to: 5 });
    const { before, after } = found.strength;
    expect(after.carries.stall.value / before.carries.stall.value).toBeCloseTo(5 / 4, 6);
  });

  test('leave a sacrificial wheel the weakest: no stronger root, and narrower than its mate bears', () => {
    const weakMate = { material: 'pom', spec: { teeth: 48, moduleMm: 0.8, faceWidthMm: 2.5 } };
    const shop = { process: 'machine-shop', material: 'pom' };
    const found = design(makeLastingJob({ sacrificial: true, making: { roomMm: 3 } }, weakMate), shop);
    expect(changeOf(found, 'root-fillet').isOn).toBe(false);
    expect(changeOf(found, 'weakest-link').isOn).toBe(true);
    expect(found.form.faceWidth).toBeLessThan(4);
    // The mate, judged as a wheel of its own: the same material and warmth, its own width.
    const beside = { ...weakMate, making: { near: 'motor' } };
    const mate = designWheel(
      makeLastingJob({}, beside),
      planWheel(makeLastingJob({}, beside), { wheelId: 'w1' }),
      { ...shop, off: changeKeys },
    );
    const share = found.strength.after.carries.stall.value / mate.strength.before.carries.stall.value;
    expect(share).toBeGreaterThan(0.75);
    expect(share).toBeLessThan(0.85);
    const thinMate = { ...weakMate, spec: { ...weakMate.spec, faceWidthMm: 1 } };
    // Brass against a thin one would have to be thinner than it can be cut.
    const brass = design(makeLastingJob({ sacrificial: true }, thinMate), {
      process: 'machine-shop',
      material: 'brass',
    });
    expect(changeOf(brass, 'weakest-link')).toMatchObject({
      isOn: false,
      withdrawn: expect.stringContaining('weaker material'),
    });
    const open = design(makeLastingJob({ sacrificial: true }, { material: 'steel' }), {
      process: 'machine-shop',
      material: 'pom',
    });
    // Plastic gives way before steel as it is.
    expect(changeOf(open, 'weakest-link')).toMatchObject({ isOn: true, from: 4, to: 4 });
  });

  test('refuse teeth too fine for the process, with the nearest ways out: every pair rolls', () => {
    const job = makeLastingJob(
      { spec: { teeth: 16, moduleMm: 0.5, faceWidthMm: 4 } },
      { spec: { teeth: 60, moduleMm: 0.5 } },
      { meshes: [{ driver: 'p1', driven: 'w1', centerMm: 19, uMm: 0.02 }] },
    );
    let fail: unknown;
    try {
      design(job, { process: 'filament-0.4' });
    } catch (error) {
      fail = error;
    }
    if (!(fail instanceof Fail)) throw new Error('not refused');
    expect(fail.code).toBe('too-fine');
    expect(fail.remedy).toContain('filament-0.25');
    expect(fail.details.processes).toEqual(['filament-0.25', 'resin', 'machine-shop']);
    const pairs = fail.details.pairs as {
      moduleMm: number;
      teeth: number;
      mateTeeth: number;
      profileShift: number;
      mateProfileShift: number;
      ratioErrorPercent: number;
    }[];
    expect(pairs.length).toBeGreaterThan(0);
    for (const { moduleMm, teeth, mateTeeth, profileShift, mateProfileShift, ratioErrorPercent } of pairs) {
      expect(moduleMm).toBeGreaterThanOrEqual(0.7);
      // Without play they would stand a little nearer than the 19 mm that they run at.
      const wheel = (z: number, profileShift: number) =>
        specOfFields({ teeth: z, moduleMm, profileShift }, 'external', 'spec');
      const near = findWorkingPair(
        wheel(teeth, profileShift),
        wheel(mateTeeth, mateProfileShift),
      ).centerDistance;
      expect(near).toBeLessThan(19);
      expect(near).toBeGreaterThan(19 - 0.25 * moduleMm);
      expect(100 * (mateTeeth / teeth / (60 / 16) - 1)).toBeCloseTo(ratioErrorPercent, 6);
    }
    const all = design(job, { process: 'filament-0.4', off: ['fineness'] });
    expect(changeOf(all, 'fineness').isOn).toBe(false);
  });
});

describe('every design', () => {
  const cases = processes.flatMap((process) =>
    process.materials.slice(0, 1).map((material) => [process.key, material] as const),
  );

  test.each(cases)(
    '%s, %s: rolls no worse with its mate than the copy, or the change is withdrawn and said',
    (process, material) => {
      const found = design(makeLastingJob(), { process, material, off: ['fineness'] });
      expect(found.rolled).toHaveLength(1);
      for (const { before, after } of found.rolled) expect(findWorsening(before, after)).toBeUndefined();
      for (const change of found.changes) {
        expect(change.why.length).toBeGreaterThan(20);
        if (change.withdrawn !== undefined) expect(change.isOn).toBe(false);
        expect(change.why).not.toMatch(/NaN|Infinity|undefined/);
      }
    },
  );

  test.each(cases)('%s, %s: with all of it switched off is the plan of today', (process, material) => {
    const job = makeLastingJob({
      spec: {
        teeth: 12,
        moduleMm: 0.8,
        profileShift: 0.3,
        helixAngleDeg: 0,
        faceWidthMm: 4,
        hubs: [{ side: 'top', diameterMm: 3, lengthMm: 2 }],
      },
    });
    const found = design(job, { process, material, off: changeKeys });
    expect(found.form).toEqual(planWheel(job, { wheelId: 'p1', process }).plan.form);
    expect(found.changes.every(({ isOn }) => !isOn)).toBe(true);
  });

  test.each(changeKeys)(
    'without %s: that change is not made, and its key is refused where misspelt',
    (key) => {
      const job = makeLastingJob();
      const found = design(job, { ...fine, off: [key] });
      expect(found.changes.filter((one) => one.key === key).every(({ isOn }) => !isOn)).toBe(true);
      expect(() => design(job, { ...fine, off: [`${key}s`] })).toThrow(
        expect.objectContaining({ code: 'bad-value', field: 'off' }),
      );
    },
  );

  test('a change that makes the pair run worse is taken back', () => {
    // Tips of a shifted pinion at a far distance: cut back to a line, no tooth drives for a moment.
    const job = makeLastingJob(
      {},
      {},
      { meshes: [{ driver: 'p1', driven: 'w1', centerMm: 24.64, uMm: 0.02 }] },
    );
    const found = design(job, fine);
    const change = changeOf(found, 'tip-land');
    expect(change).toMatchObject({
      isOn: false,
      withdrawn: expect.stringContaining('Taken back: with "w1"'),
    });
    expect(found.rolled[0].after.verdict).toBe(found.rolled[0].before.verdict);
  });

  test('refuses a material that is none, or that the process makes no gears of', () => {
    const job = makeLastingJob();
    expect(() => design(job, { process: 'resin', material: 'cheese' })).toThrow(
      expect.objectContaining({ field: 'material' }),
    );
    expect(() => design(job, { process: 'resin', material: 'pla' })).toThrow(/does not make gears/);
    expect(materials.length).toBeGreaterThan(10);
  });
});
