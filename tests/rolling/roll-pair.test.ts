import { describe, expect, test } from 'vitest';
import { Fail } from '../../src/fail.ts';
import { findWorkingPair } from '../../src/involute/working-pair.ts';
import { rollPair } from '../../src/rolling/roll-pair.ts';
import type { RolledAt } from '../../src/rolling/rolling-proof.ts';
import { findCase } from '../handbook/check-case.ts';
import { makeSpec, rad } from '../involute/make-spec.ts';

const inch = 25.4;
const at = (mm: number, u = 0): { mm: number; u: number } => ({ mm, u });

describe('two known look-alikes, 14 and 30 teeth thinned 0.03 mm, standing as their reference circles say', () => {
  const wheel = (teeth: number, module: number) => ({ spec: makeSpec({ teeth, module, thinning: 0.03 }) });

  // The figures asked for, 0.008 and 0.067 mm, are what sixteen steps a pitch show (0.0080, 0.0675); between the steps
  // the low points lie deeper, and the polygons of the brute force agree with these.
  test('0.4 against 64 to the inch turns, and strays by under a hundredth of a millimeter', () => {
    const proof = rollPair(wheel(14, 0.4), wheel(30, inch / 64), at((0.4 * 14 + (inch / 64) * 30) / 2));
    expect(proof.verdict).toBe('turns');
    expect(proof.reasons).toEqual([]);
    expect(proof.mean.transmissionError).toBeGreaterThan(0.008);
    expect(proof.mean.transmissionError).toBeLessThan(0.0092);
    expect(proof.smoothFrom).toBe(proof.mean.centerDistance);
    expect(proof.mean.workingPressureAngle).toBeUndefined();
  });

  const mean = (0.5 * 14 + (inch / 48) * 30) / 2;
  const rollOff = (off: number, u = 0) => rollPair(wheel(14, 0.5), wheel(30, inch / 48), at(mean + off, u));

  test('0.5 against 48 to the inch jams there and up to 0.10 mm further out, where both flanks bind', () => {
    for (const off of [0, 0.05, 0.1]) {
      const proof = rollOff(off);
      expect(proof.verdict).toBe('jams');
      expect(proof.mean.isFree).toBe(false);
      expect(proof.mean.interference.map((one) => one.where)).toEqual(['both-flanks']);
      expect(proof.freeFrom).toBeCloseTo(mean + 0.1, 2);
      expect(proof.smoothFrom).toBeUndefined();
    }
  });

  test('and is rough from 0.15 mm on', () => {
    const proof = rollOff(0.15);
    expect(proof.verdict).toBe('rough');
    expect(proof.reasons.map((one) => one.kind)).toEqual(['transmission-error']);
    expect(proof.mean.transmissionError).toBeGreaterThan(0.067);
    expect(proof.mean.transmissionError).toBeLessThan(0.07);
  });

  test('within an uncertainty that reaches where it is free, it is rough and says that it jams at the mean', () => {
    const proof = rollOff(0, 0.1);
    expect(proof.verdict).toBe('rough');
    expect(proof.reasons.map((one) => one.kind)).toContain('jams-at-mean');
    expect(proof.range).toHaveLength(9);
    expect(proof.range[4]).toEqual(proof.mean);
    expect(proof.range.map((one) => one.isFree)).toEqual([...new Array<boolean>(7).fill(false), true, true]);
    expect(rollOff(0, 0.04).verdict).toBe('jams');
  });
});

describe('pairs of the handbooks, rolled', () => {
  test('spur 20/20: contact ratio 1.557', () => {
    const { inputs, expected, source } = findCase('contact-ratio-20-20');
    const rolled = rollPair(
      { spec: makeSpec({ teeth: inputs.z1 }) },
      { spec: makeSpec({ teeth: inputs.z2 }) },
      at(20),
    ).mean;
    expect(Math.abs(rolled.contactRatio - Number(expected.contact_ratio)), source).toBeLessThan(0.001);
    // No backlash at the distance of the reference circles.
    expect(Math.abs(rolled.backlashLeast)).toBeLessThan(0.001);
  });

  test('shifted 12/24 at 56.4999 mm: contact ratio 1.202, angle 26.0886°, and no backlash left', () => {
    const { inputs, expected, source } = findCase('contact-ratio-shift-12-24');
    const wheel = (k: 0 | 1) => ({
      spec: makeSpec({
        module: inputs.module_mm,
        teeth: [inputs.z1, inputs.z2][k],
        profileShift: [inputs.x1, inputs.x2][k],
        tipDiameter: inputs.tip_diameter_mm[k],
      }),
    });
    const rolled = rollPair(wheel(0), wheel(1), at(inputs.center_distance_mm)).mean;
    expect(Math.abs(rolled.contactRatio - Number(expected.contact_ratio)), source).toBeLessThan(0.001);
    expect(Math.abs(rolled.backlashLeast), source).toBeLessThan(0.003);
    const angle = ((rolled.workingPressureAngle ?? 0) * 180) / Math.PI;
    const shifted = findCase('spur-shift-inverse-12-24');
    expect(Math.abs(angle - Number(shifted.expected.working_pressure_angle_deg))).toBeLessThan(0.0001);
  });

  test('path of contact 20/60 at module 8: 39.458 mm', () => {
    const { expected, source } = findCase('path-of-contact-20-60');
    const wheel = (teeth: number) => ({ spec: makeSpec({ module: 8, teeth }) });
    const { contactRatio } = rollPair(wheel(20), wheel(60), at(320)).mean;
    const path = contactRatio * Math.PI * 8 * Math.cos(rad(20));
    expect(Math.abs(path - Number(expected.path_of_contact_mm)), source).toBeLessThan(0.001);
  });

  test.each(['internal-small-diff-49-50', 'internal-small-diff-48-50'])('%s: contact ratio', (id) => {
    const { inputs, expected, source } = findCase(id);
    const pinion = { spec: makeSpec({ teeth: inputs.z1_external, thinning: 0.02 }) };
    const ring = {
      spec: makeSpec({
        kind: 'internal',
        teeth: inputs.z2_internal,
        profileShift: inputs.x2_khk_sign,
        rootRadius: 0,
        thinning: 0.02,
      }),
    };
    const mm = findWorkingPair(pinion.spec, ring.spec).centerDistance;
    expect(Math.abs(mm - Number(expected.center_distance_mm)), source).toBeLessThan(0.001);
    const proof = rollPair(pinion, ring, at(mm));
    expect(proof.verdict).toBe('turns');
    expect(Math.abs(proof.mean.contactRatio - Number(expected.contact_ratio)), source).toBeLessThan(0.002);
  });

  test('backlash grows with distance as the handbook says: 1.374 mm of it for a millimeter at 20°', () => {
    const { expected, source } = findCase('backlash-cd-coefficients');
    const pinion = { spec: makeSpec({ teeth: 40, thinning: 0.02 }) };
    const rack = { spec: makeSpec({ kind: 'rack', teeth: 10 }) };
    const near = rollPair(pinion, rack, at(20)).mean.backlashLeast;
    const far = rollPair(pinion, rack, at(20.2)).mean.backlashLeast;
    const wanted = (expected.delta_a_over_delta_j as readonly number[])[1];
    expect(0.2 / (far - near), source).toBeCloseTo(wanted, 2);
  });
});

describe('what is in the way', () => {
  const kindsOf = (rolled: RolledAt): string[] => rolled.interference.map((one) => one.where);

  test('too near, tips stand in roots; the place is on the line of centers', () => {
    const one = { spec: makeSpec({ teeth: 20, thinning: 0.4 }) };
    const proof = rollPair(one, one, at(19.7));
    expect(proof.verdict).toBe('jams');
    expect(kindsOf(proof.mean)).toContain('tip-root');
    const [spot] = proof.mean.interference.filter((each) => each.where === 'tip-root');
    expect(spot.depth).toBeGreaterThan(0);
    expect(Math.abs(spot.y)).toBeLessThan(1);
    // A tip circle of 11 and a root circle of 8.75 leave each other at 19.75.
    expect(proof.freeFrom).toBeCloseTo(19.75, 2);
  });

  test('a wheel of many teeth digs into the foot of a pinion of few whose root was cut for a shorter mate', () => {
    const pinion = {
      spec: makeSpec({ teeth: 12, profileShift: 0.3, addendum: 0.8, dedendum: 1.05, rootRadius: 0.3 }),
    };
    const wheel = { spec: makeSpec({ teeth: 80, addendum: 1.1, thinning: 0.01 }) };
    const proof = rollPair(pinion, wheel, at(46.29));
    expect(proof.verdict).toBe('jams');
    expect(kindsOf(proof.mean)).toContain('tip-fillet');
  });

  test('an internal wheel is laid where its teeth are: beyond the pinion, away from its own axis', () => {
    const pinion = { spec: makeSpec({ teeth: 20 }) };
    const ring = { spec: makeSpec({ kind: 'internal', teeth: 60, addendum: 0.8 }) };
    const { mean } = rollPair(pinion, ring, at(20.1));
    expect(mean.isFree).toBe(false);
    for (const spot of mean.interference) expect(spot.x).toBeLessThan(-8);
  });

  test('helices that cross', () => {
    const right = { spec: makeSpec({ teeth: 20, helixAngle: rad(15), thinning: 0.1 }) };
    const left = { spec: makeSpec({ teeth: 20, helixAngle: rad(-15), thinning: 0.1 }) };
    const mm = 20 / Math.cos(rad(15));
    expect(rollPair(right, left, at(mm)).verdict).toBe('turns');
    const crossed = rollPair(right, right, at(mm));
    expect(crossed.verdict).toBe('jams');
    expect(crossed.reasons.map((one) => one.kind)).toEqual(['helix']);
    expect(crossed.freeFrom).toBeUndefined();
  });

  test('wheels too far apart to touch are rough, loose, and never smooth further out', () => {
    const one = { spec: makeSpec({ teeth: 20 }) };
    const proof = rollPair(one, one, at(22.5));
    expect(proof.verdict).toBe('rough');
    expect(proof.mean.contactRatio).toBe(0);
    expect(proof.mean.backlashGreatest).toBe(Number.POSITIVE_INFINITY);
    expect(proof.mean.transmissionError).toBe(Number.POSITIVE_INFINITY);
    expect(proof.smoothFrom).toBeUndefined();
  });
});

describe('what can not be rolled is refused with its field', () => {
  const wheel = { spec: makeSpec({ teeth: 20 }) };
  const refuse = (work: () => unknown): Fail => {
    try {
      work();
    } catch (error) {
      if (error instanceof Fail) return error;
      throw error;
    }
    throw new Error('was not refused');
  };

  test.each([0, -3, Number.NaN, Number.POSITIVE_INFINITY])('a distance of %s', (mm) => {
    expect(refuse(() => rollPair(wheel, wheel, at(mm)))).toMatchObject({
      code: 'bad-value',
      field: 'centerDistance',
    });
  });

  test('an uncertainty as large as the distance, or below 0', () => {
    expect(refuse(() => rollPair(wheel, wheel, at(20, 10)))).toMatchObject({ code: 'bad-value', field: 'u' });
    expect(refuse(() => rollPair(wheel, wheel, at(20, -0.1)))).toMatchObject({
      code: 'bad-value',
      field: 'u',
    });
  });

  test('two wheels neither of which is external, and a ring with no more teeth than its pinion', () => {
    const ring = { spec: makeSpec({ kind: 'internal', teeth: 20 }) };
    const rack = { spec: makeSpec({ kind: 'rack', teeth: 20 }) };
    expect(refuse(() => rollPair(ring, rack, at(20))).message).toBe(
      'an internal wheel and a rack do not mesh',
    );
    expect(refuse(() => rollPair(rack, rack, at(20))).message).toBe('two racks do not mesh');
    expect(refuse(() => rollPair(wheel, ring, at(5))).field).toBe('teeth');
    expect(refuse(() => rollPair(ring, wheel, at(5))).field).toBe('teeth');
  });

  test('a tooth that is pointed before its tip, until its tip is worn off', () => {
    const pointed = makeSpec({ teeth: 10, profileShift: 0.9 });
    expect(refuse(() => rollPair({ spec: pointed }, wheel, at(15.8)))).toMatchObject({
      code: 'pointed-tooth',
      field: 'tipDiameter',
    });
    expect(rollPair({ spec: pointed, tipWear: 0.3 }, wheel, at(15.8)).verdict).toBeDefined();
  });
});
