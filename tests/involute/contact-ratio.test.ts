import { describe, expect, test } from 'vitest';
import { findContactRatio } from '../../src/involute/contact-ratio.ts';
import { findDiameters } from '../../src/involute/gear-diameters.ts';
import type { GearSpec } from '../../src/involute/gear-spec.ts';
import { findTrochoid } from '../../src/involute/trochoid.ts';
import { isUndercut } from '../../src/involute/undercut.ts';
import { findWorkingPair } from '../../src/involute/working-pair.ts';
import { makeSpec, rad } from './make-spec.ts';
import { readProfile, type ToothProfile } from './tooth-profile.ts';

const chordError = 1e-7;

/**
 * The path of contact swept on two traced outlines: a point moves along the line of action while both wheels turn
 * with it, and contact lasts as long as the point lies on both outlines. Returns its length over the base pitch.
 */
function sweep(first: GearSpec, second: GearSpec, distance?: number): number {
  const pair = findWorkingPair(first, second, distance);
  const w = pair.workingPressureAngle;
  const axis2 = second.kind === 'internal' ? -pair.centerDistance : pair.centerDistance;
  const baseRadius1 = findDiameters(first).base / 2;
  const pitchX = pair.workingDiameters[0] / 2;
  // The line of action through the pitch point, in the direction in which both move when the first turns left.
  const pointAt = (along: number): readonly [number, number] => [
    pitchX + along * Math.sin(w),
    along * Math.cos(w),
  ];
  const on = [
    { profile: readProfile(first, chordError), axis: 0, perLength: 1 / baseRadius1 },
    {
      profile: readProfile(second, chordError),
      axis: axis2,
      perLength: (second.kind === 'internal' ? 1 : -1) / (findDiameters(second).base / 2),
    },
  ];
  // Both wheels turned until their flanks pass through the pitch point: the first's tooth behind, the second's ahead.
  const start = on.map(({ profile, axis }, k) =>
    turnOnto(profile, pitchX - axis, k === 1 && second.kind === 'internal' ? -1 : 1),
  );
  const isContact = (along: number): boolean => {
    const [x, y] = pointAt(along);
    return on.every(({ profile, axis, perLength }, k) => {
      const turn = start[k] + along * perLength;
      const c = Math.cos(turn);
      const s = Math.sin(turn);
      const gap = profile.gapAt((x - axis) * c + y * s, y * c - (x - axis) * s);
      return Math.abs(gap) < 1e-6;
    });
  };
  expect(isContact(0)).toBe(true);
  const reach = (direction: number): number => {
    let low = 0;
    let high = 12;
    for (let round = 0; round < 40; round++) {
      const middle = (low + high) / 2;
      if (isContact(direction * middle)) low = middle;
      else high = middle;
    }
    return low;
  };
  const { transverseModule, transversePressureAngle } = findDiameters(first);
  return (reach(1) + reach(-1)) / (Math.PI * transverseModule * Math.cos(transversePressureAngle));
}

/** The turn at which a flank stands at (x, 0), its tooth clockwise of it about the axis (side 1) or the other way. */
function turnOnto(profile: ToothProfile, x: number, side: number): number {
  const radius = Math.abs(x);
  // Gap at angle θ off a tooth's middle is r(θ − half): read at a point that is outside the metal.
  const off = Math.PI / (profile.points.length / 2 / profile.perTooth);
  const half = off - profile.gapAt(radius * Math.cos(off), radius * Math.sin(off)) / radius;
  return (x < 0 ? Math.PI : 0) - side * half;
}

describe('contact lasts as long as a point of the line of action lies on both outlines', () => {
  const pairs: readonly (readonly [string, GearSpec, GearSpec])[] = [
    ['spur 20/60', makeSpec({ teeth: 20 }), makeSpec({ teeth: 60 })],
    ['shifted 12/24', makeSpec({ teeth: 12, profileShift: 0.5 }), makeSpec({ teeth: 24, profileShift: 0.3 })],
    ['undercut 8/40', makeSpec({ teeth: 8 }), makeSpec({ teeth: 40 })],
    ['both undercut 10/11', makeSpec({ teeth: 10 }), makeSpec({ teeth: 11 })],
    [
      'helical 15/28',
      makeSpec({ teeth: 15, helixAngle: rad(20) }),
      makeSpec({ teeth: 28, helixAngle: rad(-20) }),
    ],
    [
      '14.5° 24/24',
      makeSpec({ teeth: 24, pressureAngle: rad(14.5) }),
      makeSpec({ teeth: 24, pressureAngle: rad(14.5) }),
    ],
    [
      'internal 20/60',
      makeSpec({ teeth: 20, profileShift: 0.2 }),
      makeSpec({ kind: 'internal', teeth: 60, profileShift: 0.3 }),
    ],
    [
      'internal 42/50, whose tips reach the pinion’s fillet',
      makeSpec({ teeth: 42 }),
      makeSpec({ kind: 'internal', teeth: 50, profileShift: 0.01 }),
    ],
    [
      'internal 18/54 cut by a shaper of 20',
      makeSpec({ teeth: 18, profileShift: 0.3, addendum: 1.2 }),
      makeSpec({ kind: 'internal', teeth: 54, profileShift: 0.3, cutterTeeth: 20 }),
    ],
  ];
  for (const [name, first, second] of pairs) {
    test(name, () => {
      expect(sweep(first, second)).toBeCloseTo(findContactRatio(first, second).transverse, 2);
    });
  }
});

describe('what shortens contact', () => {
  test('undercut does, and the tip circles alone do not see it', () => {
    const undercut = makeSpec({ teeth: 8 });
    expect(isUndercut(undercut)).toBe(true);
    const ratio = findContactRatio(undercut, makeSpec({ teeth: 40 }));
    expect(ratio.transverse).toBeLessThan(ratio.betweenTips - 0.1);
  });

  test('a full pair loses nothing, with a rack only the rounding of the standard fillet', () => {
    const wheels = findContactRatio(makeSpec({ teeth: 25 }), makeSpec({ teeth: 60 }));
    expect(wheels.transverse).toBe(wheels.betweenTips);
    const rack = findContactRatio(makeSpec({ teeth: 25 }), makeSpec({ kind: 'rack', teeth: 9 }));
    expect(rack.betweenTips - rack.transverse).toBeLessThan(1e-4);
  });

  test('a larger distance does, on an external pair; swapping the wheels changes nothing', () => {
    const one = makeSpec({ teeth: 19, profileShift: 0.2 });
    const two = makeSpec({ teeth: 43 });
    const near = findContactRatio(one, two);
    const { centerDistance } = findWorkingPair(one, two);
    expect(findContactRatio(one, two, { centerDistance: centerDistance + 0.3 }).transverse).toBeLessThan(
      near.transverse - 0.1,
    );
    expect(findContactRatio(two, one).transverse).toBeCloseTo(near.transverse, 12);
  });

  test('wheels that do not reach each other have none', () => {
    const one = makeSpec({ teeth: 19 });
    expect(findContactRatio(one, makeSpec({ teeth: 21 }), { centerDistance: 23 }).transverse).toBe(0);
  });

  test('a rack is a wheel of very many teeth', () => {
    const pinion = makeSpec({ teeth: 14, profileShift: 0.2 });
    const rack = findContactRatio(pinion, makeSpec({ kind: 'rack', teeth: 9 }));
    expect(findContactRatio(pinion, makeSpec({ teeth: 1e6 })).transverse).toBeCloseTo(rack.transverse, 4);
  });

  test('overlap is the face width over the axial pitch', () => {
    const one = makeSpec({ teeth: 20, helixAngle: rad(30) });
    const ratio = findContactRatio(one, makeSpec({ teeth: 30, helixAngle: rad(-30) }), {
      faceWidth: 2 * Math.PI,
    });
    expect(ratio.overlap).toBeCloseTo(1, 12);
    expect(ratio.total).toBeCloseTo(ratio.transverse + 1, 12);
  });

  test('a tooth that undercut has cut down to its tip has no contact', () => {
    const stub = makeSpec({ teeth: 8, profileShift: -0.5, addendum: 0.3 });
    expect(findTrochoid(stub).meetsTip).toBe(true);
    expect(findContactRatio(stub, makeSpec({ teeth: 30 })).transverse).toBe(0);
  });
});
