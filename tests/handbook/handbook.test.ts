import { describe, expect, test } from 'vitest';
import { basicRacks } from '../../gear-library/basic-racks.ts';
import { toModule } from '../../gear-library/pitch-series.ts';
import { findBaseSpaceAngle } from '../../src/involute/base-space-angle.ts';
import { findChordalThickness } from '../../src/involute/chordal-thickness.ts';
import { findContactRatio } from '../../src/involute/contact-ratio.ts';
import { findDiameters } from '../../src/involute/gear-diameters.ts';
import type { GearSpec } from '../../src/involute/gear-spec.ts';
import { findInternalInterference } from '../../src/involute/internal-interference.ts';
import { inverseInvolute, involute } from '../../src/involute/involute-function.ts';
import { findPairClearances } from '../../src/involute/pair-clearances.ts';
import { findPinRange } from '../../src/involute/pin-range.ts';
import { findPinAngle, measureOverPins } from '../../src/involute/pins.ts';
import { shortenTips } from '../../src/involute/shorten-tips.ts';
import { findSpan, findSpanTeeth } from '../../src/involute/span.ts';
import { findTipLand, referenceToothThickness } from '../../src/involute/tooth-thickness.ts';
import { findLeastTeeth, findUndercutShift } from '../../src/involute/undercut.ts';
import { findWorkingPair } from '../../src/involute/working-pair.ts';
import { respond } from '../../src/readings/tooth-response.ts';
import { deg, makeSpec, rad } from '../involute/make-spec.ts';
import { checkCase, findCase, handbookCases } from './check-case.ts';

const seen = new Set<string>();

function check(
  id: string,
  compute: (inputs: ReturnType<typeof findCase>['inputs']) => Record<string, unknown>,
): void {
  test(id, () => {
    const one = findCase(id);
    checkCase(one, compute(one.inputs));
    seen.add(id);
  });
}

const both = (specs: readonly GearSpec[], of: (spec: GearSpec) => number): number[] => specs.map(of);

describe('spur pairs', () => {
  check('spur-std-12-24', (i) => {
    const specs = [i.z1, i.z2].map((teeth) => makeSpec({ teeth, module: i.module_mm }));
    const pair = findWorkingPair(specs[0], specs[1]);
    return {
      center_distance_mm: pair.centerDistance,
      pitch_diameter_mm: both(specs, (s) => findDiameters(s).reference),
      base_diameter_mm: both(specs, (s) => findDiameters(s).base),
      tip_diameter_mm: both(specs, (s) => findDiameters(s).tip),
      root_diameter_mm: both(specs, (s) => findDiameters(s).root),
      addendum_mm: (findDiameters(specs[0]).tip - findDiameters(specs[0]).reference) / 2,
      whole_depth_mm: (findDiameters(specs[0]).tip - findDiameters(specs[0]).root) / 2,
    };
  });
  check('spur-shift-inverse-12-24', (i) => {
    const specs = [i.z1, i.z2].map((teeth) => makeSpec({ teeth, module: i.module_mm }));
    const pair = findWorkingPair(specs[0], specs[1], i.center_distance_mm);
    const excess = involute(pair.workingPressureAngle) - involute(rad(20));
    return {
      center_distance_modification_y: pair.distanceModification,
      working_pressure_angle_deg: deg(pair.workingPressureAngle),
      sum_profile_shift: ((i.z1 + i.z2) * excess) / (2 * Math.tan(rad(20))),
    };
  });
  check('spur-shift-12-24', (i) => {
    const raw = [
      makeSpec({ teeth: i.z1, module: i.module_mm, profileShift: i.x1 }),
      makeSpec({ teeth: i.z2, module: i.module_mm, profileShift: i.x2 }),
    ];
    const pair = findWorkingPair(raw[0], raw[1]);
    const tips = shortenTips(raw[0], raw[1]);
    const specs = raw.map((spec, k) => ({ ...spec, tipDiameter: tips[k] }));
    return {
      inv_working: involute(pair.workingPressureAngle),
      working_pressure_angle_deg: deg(pair.workingPressureAngle),
      center_distance_modification_y: pair.distanceModification,
      center_distance_mm: pair.centerDistance,
      pitch_diameter_mm: both(specs, (s) => findDiameters(s).reference),
      base_diameter_mm: both(specs, (s) => findDiameters(s).base),
      working_pitch_diameter_mm: [...pair.workingDiameters],
      addendum_mm: both(specs, (s) => (findDiameters(s).tip - findDiameters(s).reference) / 2),
      whole_depth_mm: (findDiameters(specs[0]).tip - findDiameters(specs[0]).root) / 2,
      tip_diameter_mm: both(specs, (s) => findDiameters(s).tip),
      root_diameter_mm: both(specs, (s) => findDiameters(s).root),
    };
  });
});

describe('the involute function', () => {
  for (const one of handbookCases.filter((c) => c.topic === 'involute')) {
    check(one.id, (i) =>
      'inv' in i ? { angle_deg: deg(inverseInvolute(i.inv)) } : { inv: involute(rad(i.angle_deg)) },
    );
  }
});

check('rack-12-shift', (i) => {
  const wheel = makeSpec({ teeth: i.z, module: i.module_mm, profileShift: i.x });
  const rack = makeSpec({ kind: 'rack', teeth: 10, module: i.module_mm });
  const { reference, base, tip, root } = findDiameters(wheel);
  return {
    // The handbook's distance runs from the axis to the rack's back, 32 mm below its datum line.
    center_distance_mm: findWorkingPair(wheel, rack).centerDistance + i.rack_pitch_line_height_mm,
    pitch_diameter_mm: reference,
    base_diameter_mm: base,
    addendum_gear_mm: (tip - reference) / 2,
    addendum_rack_mm: rack.addendum * rack.module,
    whole_depth_mm: (tip - root) / 2,
    tip_diameter_mm: tip,
    root_diameter_mm: root,
    rack_travel_per_turn_mm: Math.PI * reference,
  };
});

describe('helical pairs', () => {
  check('helical-normal-12-60', (i) => {
    const raw = [
      makeSpec({ teeth: i.z1, module: 3, helixAngle: rad(30), profileShift: i.xn1 }),
      makeSpec({ teeth: i.z2, module: 3, helixAngle: rad(-30), profileShift: i.xn2 }),
    ];
    const pair = findWorkingPair(raw[0], raw[1]);
    const tips = shortenTips(raw[0], raw[1]);
    const specs = raw.map((spec, k) => ({ ...spec, tipDiameter: tips[k] }));
    return {
      transverse_pressure_angle_deg: deg(findDiameters(specs[0]).transversePressureAngle),
      inv_working: involute(pair.workingPressureAngle),
      working_transverse_pressure_angle_deg: deg(pair.workingPressureAngle),
      center_distance_modification_y: pair.distanceModification,
      center_distance_mm: pair.centerDistance,
      pitch_diameter_mm: both(specs, (s) => findDiameters(s).reference),
      base_diameter_mm: both(specs, (s) => findDiameters(s).base),
      working_pitch_diameter_mm: [...pair.workingDiameters],
      addendum_mm: both(specs, (s) => (findDiameters(s).tip - findDiameters(s).reference) / 2),
      whole_depth_mm: (findDiameters(specs[0]).tip - findDiameters(specs[0]).root) / 2,
      tip_diameter_mm: both(specs, (s) => findDiameters(s).tip),
      root_diameter_mm: both(specs, (s) => findDiameters(s).root),
    };
  });
  check('helical-transverse-12-60', (i) => {
    // Transverse system: m_n = m_t cos β, tan α_n = tan α_t cos β, x_n = x_t/cos β; tips keep m_t.
    const beta = rad(i.helix_angle_deg);
    const normal = {
      module: i.transverse_module_mm * Math.cos(beta),
      pressureAngle: Math.atan(Math.tan(rad(20)) * Math.cos(beta)),
      addendum: 1 / Math.cos(beta),
    };
    const raw = [
      makeSpec({ ...normal, teeth: i.z1, helixAngle: beta, profileShift: i.xt1 / Math.cos(beta) }),
      makeSpec({ ...normal, teeth: i.z2, helixAngle: -beta, profileShift: i.xt2 / Math.cos(beta) }),
    ];
    const pair = findWorkingPair(raw[0], raw[1]);
    const tips = shortenTips(raw[0], raw[1]);
    return {
      inv_working: involute(pair.workingPressureAngle),
      working_transverse_pressure_angle_deg: deg(pair.workingPressureAngle),
      center_distance_modification_y: pair.distanceModification * Math.cos(beta),
      center_distance_mm: pair.centerDistance,
      pitch_diameter_mm: both(raw, (s) => findDiameters(s).reference),
      base_diameter_mm: both(raw, (s) => findDiameters(s).base),
      working_pitch_diameter_mm: [...pair.workingDiameters],
      addendum_mm: raw.map((s, k) => (tips[k] - findDiameters(s).reference) / 2),
    };
  });
});

describe('internal pairs', () => {
  // The handbook's x of the wheel has the sign of ours: positive moves the profile outward.
  const pairOf = (i: {
    module_mm: number;
    z1_external: number;
    z2_internal: number;
    x1: number;
    x2_khk_sign: number;
  }) => {
    const pinion = makeSpec({ teeth: i.z1_external, module: i.module_mm, profileShift: i.x1 });
    const wheel = makeSpec({
      kind: 'internal',
      teeth: i.z2_internal,
      module: i.module_mm,
      profileShift: i.x2_khk_sign,
    });
    return [pinion, wheel] as const;
  };
  check('internal-16-24', (i) => {
    const specs = pairOf(i);
    const pair = findWorkingPair(specs[0], specs[1]);
    const [one, two] = specs.map(findDiameters);
    return {
      inv_working: involute(pair.workingPressureAngle),
      working_pressure_angle_deg: deg(pair.workingPressureAngle),
      center_distance_modification_y: pair.distanceModification,
      center_distance_mm: pair.centerDistance,
      pitch_diameter_mm: [one.reference, two.reference],
      base_diameter_mm: [one.base, two.base],
      working_pitch_diameter_mm: [...pair.workingDiameters],
      addendum_mm: [(one.tip - one.reference) / 2, (two.reference - two.tip) / 2],
      tip_diameter_mm: [one.tip, two.tip],
      root_diameter_mm: [one.root, two.root],
    };
  });
  for (const one of handbookCases.filter((c) => c.id.startsWith('internal-small-diff'))) {
    check(one.id, (i) => {
      const [pinion, wheel] = pairOf(i);
      const pair = findWorkingPair(pinion, wheel);
      const limits = findInternalInterference(pinion, wheel);
      return {
        working_pressure_angle_deg: deg(pair.workingPressureAngle),
        center_distance_mm: pair.centerDistance,
        // The handbook's ratio leaves the pinion's fillet out of account.
        contact_ratio: findContactRatio(pinion, wheel).betweenTips,
        involute_interference_free: limits.involute.isFree,
        trochoid_interference_free: limits.trochoid.isFree,
        radial_assembly_possible: limits.trimming.isFree,
      };
    });
  }
  check('internal-trochoid-rule', () => {
    // Unshifted full-depth pairs: the least difference of teeth that is free, over a range of wheels, is above 9 …
    let least = 99;
    for (let z2 = 60; z2 <= 120; z2 += 20) {
      for (let difference = 2; difference < 14; difference++) {
        const pinion = makeSpec({ teeth: z2 - difference });
        const wheel = makeSpec({ kind: 'internal', teeth: z2 });
        if (findInternalInterference(pinion, wheel).trochoid.isFree) {
          least = Math.min(least, difference);
          break;
        }
      }
    }
    return { min_tooth_difference_exceeds: least };
  });
  check('internal-trimming-limit-table', (i) => ({
    z2_min: i.zc.map((zc: number) => {
      const cutter = makeSpec({ teeth: zc, addendum: i.cutter_addendum_factor });
      for (let z2 = zc + 2; ; z2++) {
        const wheel = makeSpec({ kind: 'internal', teeth: z2 });
        if (findInternalInterference(cutter, wheel).trimming.isFree) return z2;
      }
    }),
  }));
});

describe('span over k teeth', () => {
  for (const one of handbookCases.filter((c) => c.id.startsWith('span-m1'))) {
    check(one.id, (i) => ({ span_mm: findSpan(makeSpec({ teeth: i.z, profileShift: i.x }), i.k) }));
  }
  check('span-spur-24-shift', (i) => {
    const spec = makeSpec({ teeth: i.z, module: i.module_mm, profileShift: i.x });
    const k = findSpanTeeth(spec);
    return { k_theoretical: theoreticalSpanTeeth(spec), k, span_mm: findSpan(spec, k ?? 0) };
  });
  check('span-helical-transverse-24', (i) => {
    const beta = rad(i.helix_angle_deg);
    const pressureAngle = Math.atan(Math.tan(rad(20)) * Math.cos(beta));
    const spec = makeSpec({
      teeth: i.z,
      module: i.transverse_module_mm * Math.cos(beta),
      pressureAngle,
      helixAngle: beta,
      profileShift: i.xt / Math.cos(beta),
      addendum: 1 / Math.cos(beta),
      dedendum: 1.25 / Math.cos(beta),
    });
    const k = findSpanTeeth(spec);
    return {
      normal_pressure_angle_deg: deg(pressureAngle),
      k_theoretical: theoreticalSpanTeeth(spec),
      k,
      span_mm: findSpan(spec, k ?? 0),
    };
  });
});

/** The handbook's own formula for the count of teeth, not rounded: an independent check of the valid k chosen. */
function theoreticalSpanTeeth(spec: GearSpec): number {
  const { teeth: z, profileShift: x, pressureAngle: a, helixAngle: b } = spec;
  const transverse = Math.atan(Math.tan(a) / Math.cos(b));
  const f = x / z;
  const secant =
    (1 + Math.sin(b) ** 2 / (Math.cos(b) ** 2 + Math.tan(a) ** 2)) *
    Math.sqrt((Math.cos(b) ** 2 + Math.tan(a) ** 2) * (1 / Math.cos(b) + 2 * f) ** 2 - 1);
  return ((secant - involute(transverse) - 2 * f * Math.tan(a)) * z) / Math.PI + 0.5;
}

describe('over pins and balls', () => {
  check('pins-spur-20', (i) => {
    const spec = makeSpec({ teeth: i.z });
    const phi = findPinAngle(spec, i.pin_diameter_mm) ?? 0;
    return {
      inv_phi: involute(phi),
      phi_deg: deg(phi),
      over_pins_mm: measureOverPins(spec, i.pin_diameter_mm),
    };
  });
  check('pins-helical-normal-20', (i) => {
    const spec = makeSpec({ teeth: i.z, helixAngle: rad(15), profileShift: i.xn });
    const phi = findPinAngle(spec, i.ball_diameter_mm) ?? 0;
    return {
      transverse_pressure_angle_deg: deg(findDiameters(spec).transversePressureAngle),
      inv_phi: involute(phi),
      phi_deg: deg(phi),
      over_balls_mm: measureOverPins(spec, i.ball_diameter_mm),
    };
  });
  check('pins-internal-40', (i) => {
    const spec = makeSpec({ kind: 'internal', teeth: i.z_internal });
    const phi = findPinAngle(spec, i.pin_diameter_mm) ?? 0;
    return {
      inv_phi: involute(phi),
      phi_deg: deg(phi),
      between_pins_mm: measureOverPins(spec, i.pin_diameter_mm),
    };
  });
  for (const id of ['pins-vankeuren-14p5-odd', 'pins-vankeuren-14p5-even', 'pins-vankeuren-20-even']) {
    check(id, (i) => ({
      over_wires_in: i.z.map((teeth: number) =>
        measureOverPins(makeSpec({ teeth, pressureAngle: rad(i.pressure_angle_deg) }), i.wire_diameter_in),
      ),
    }));
  }
  check('pins-ideal-spur-20', (i) => {
    const spec = makeSpec({ teeth: i.z });
    const ideal = findPinRange(spec)?.ideal ?? 0;
    return {
      half_space_angle_rad: findBaseSpaceAngle(spec),
      phi_rad: findPinAngle(spec, ideal),
      ideal_pin_mm: ideal,
    };
  });
  check('pins-ideal-helical-20', (i) => {
    // The handbook takes the virtual spur wheel for the helical one.
    const virtual = makeSpec({ teeth: i.z / Math.cos(rad(15)) ** 3, profileShift: i.xn });
    const ideal = findPinRange(virtual)?.ideal ?? 0;
    const { base, reference } = findDiameters(virtual);
    return {
      virtual_teeth: virtual.teeth,
      half_space_angle_rad: findBaseSpaceAngle(virtual),
      contact_angle_deg: deg(Math.acos(base / (reference + 2 * i.xn))),
      phi_rad: findPinAngle(virtual, ideal),
      ideal_ball_mm: ideal,
    };
  });
});

describe('chordal thickness', () => {
  check('chordal-spur-12', (i) => {
    const spec = makeSpec({ teeth: i.z, module: i.module_mm, profileShift: i.x });
    const chord = findChordalThickness(spec);
    return {
      tooth_thickness_mm: referenceToothThickness(spec),
      half_angle_deg: deg(referenceToothThickness(spec) / (i.z * i.module_mm)),
      chordal_thickness_mm: chord.thickness,
      chordal_addendum_mm: chord.height,
    };
  });
  check('chordal-rack', (i) => {
    const chord = findChordalThickness(makeSpec({ kind: 'rack', teeth: 9, module: i.module_mm }));
    return { chordal_thickness_mm: chord.thickness, chordal_addendum_mm: chord.height };
  });
  check('chordal-helical-transverse-20', (i) => {
    const beta = rad(i.helix_angle_deg);
    const spec = makeSpec({
      teeth: i.z,
      module: i.transverse_module_mm * Math.cos(beta),
      pressureAngle: Math.atan(Math.tan(rad(20)) * Math.cos(beta)),
      helixAngle: beta,
      profileShift: i.xt / Math.cos(beta),
    });
    const virtual = i.z / Math.cos(beta) ** 3;
    const thickness = referenceToothThickness(spec);
    return {
      normal_tooth_thickness_mm: thickness,
      virtual_teeth: virtual,
      half_angle_deg: deg(thickness / (virtual * spec.module)),
    };
  });
});

describe('contact ratio', () => {
  check('path-of-contact-20-60', (i) => ({
    path_of_contact_mm: findContactRatio(
      makeSpec({ teeth: i.z1, module: i.module_mm }),
      makeSpec({ teeth: i.z2, module: i.module_mm }),
    ).length,
  }));
  check('contact-ratio-20-20', (i) => ({
    contact_ratio: findContactRatio(makeSpec({ teeth: i.z1 }), makeSpec({ teeth: i.z2 })).transverse,
  }));
  check('contact-ratio-shift-12-24', (i) => ({
    contact_ratio: findContactRatio(
      makeSpec({ teeth: i.z1, module: 3, profileShift: i.x1, tipDiameter: i.tip_diameter_mm[0] }),
      makeSpec({ teeth: i.z2, module: 3, profileShift: i.x2, tipDiameter: i.tip_diameter_mm[1] }),
      { centerDistance: i.center_distance_mm },
    ).transverse,
  }));
});

describe('undercut', () => {
  check('undercut-limit-sdp', (i) => ({
    min_teeth_rounded_up: i.pressure_angle_deg.map((a: number) => Math.ceil(findLeastTeeth(1, rad(a), 0))),
  }));
  check('undercut-limit-exact', (i) => ({
    min_teeth_theoretical: i.pressure_angle_deg.map((a: number) => findLeastTeeth(1, rad(a), 0)),
  }));
  check('undercut-min-shift-20', (i) => ({
    x_min: i.z.map((z: number) => findUndercutShift(z, 1, rad(20), 0)),
  }));
});

check('tip-thickness-16', (i) => {
  const spec = makeSpec({ teeth: i.z, module: i.module_mm, profileShift: i.x });
  const { tip, base } = findDiameters(spec);
  const angle = Math.acos(base / tip);
  return {
    tip_pressure_angle_deg: deg(angle),
    inv_tip: involute(angle),
    half_tip_angle_deg: deg(findTipLand(spec) / tip),
    tip_thickness_mm: findTipLand(spec),
  };
});

check('backlash-cd-coefficients', (i) => {
  // A wheel lifted off a rack by 1 mm: there the first-order coefficient is exact.
  const [old, now] = i.pressure_angle_deg.map((a: number) => {
    const wheel = makeSpec({ teeth: 40, pressureAngle: rad(a) });
    const rack = makeSpec({ kind: 'rack', teeth: 9, pressureAngle: rad(a) });
    return 1 / findPairClearances(wheel, rack, 21).backlash;
  });
  return { delta_a_over_delta_j: [old, now], extra_backlash_20_vs_14p5_percent: 100 * (old / now - 1) };
});

describe('conversions and identification', () => {
  check('dp-trap-metric48', (i) => ({ diametral_pitch_per_in: 25.4 / i.module_mm }));
  check('dp-trap-32', (i) => ({ module_mm: toModule('diametral-pitch', i.diametral_pitch_per_in) }));
  check('dp-48-to-64-teeth', (i) => {
    const turned = (z: number): number =>
      (z * toModule('diametral-pitch', 48)) / toModule('diametral-pitch', 64);
    return {
      z_64dp: turned(i.z_48dp),
      pinion_64dp: turned(i.pinion_48dp),
      ratio: i.z_48dp / i.pinion_48dp,
    };
  });
  check('dp-module-equivalents', (i) => ({
    circular_pitch_in: i.diametral_pitch_per_in.map(
      (p: number) => (toModule('diametral-pitch', p) * Math.PI) / 25.4,
    ),
    module_mm: i.diametral_pitch_per_in.map((p: number) => toModule('diametral-pitch', p)),
  }));
  for (const id of ['catalogue-48dp', 'catalogue-32dp']) {
    check(id, (i) => {
      const specs = i.z.map((teeth: number) =>
        makeSpec({
          teeth,
          module: toModule('diametral-pitch', i.diametral_pitch_per_in),
          pressureAngle: rad(14.5),
        }),
      );
      return {
        pitch_diameter_in: specs.map((spec: GearSpec) => findDiameters(spec).reference / 25.4),
        outside_minus_pitch_diameter_in:
          (findDiameters(specs[0]).tip - findDiameters(specs[0]).reference) / 25.4,
      };
    });
  }
  check('identify-7x10-lathe-gear', (i) => {
    const pitch = 25.4 / toModule('circular-pitch', i.measured_circular_pitch_in);
    // The source goes on from its rounded pitch.
    const module = toModule('diametral-pitch', Math.round(pitch * 100) / 100);
    return {
      diametral_pitch_per_in: pitch,
      module_mm: module,
      nominal_module_mm: Math.round(module * 10) / 10,
    };
  });
});

describe('basic racks', () => {
  check('basic-rack-iso53', () => {
    // Profiles B and C differ from A at the root corner alone, so the library keeps A and D.
    const { full, deep } = basicRacks;
    const rows = [full, { ...full, rootRadius: 0.3 }, { ...full, rootRadius: 0.25 }, deep];
    return {
      addendum: rows.map((row) => row.addendum),
      dedendum: rows.map((row) => row.dedendum),
      clearance: rows.map((row) => row.dedendum - row.addendum),
      root_fillet_radius: rows.map((row) => row.rootRadius),
    };
  });
  check('agma-fine-pitch-rack', (i) => {
    const module = toModule('diametral-pitch', i.diametral_pitch_per_in);
    const { addendum, dedendum, extraDedendum } = basicRacks.fineInch;
    const inch = (mm: number): number => mm / 25.4;
    const deep = dedendum * module + extraDedendum;
    return {
      addendum_in: inch(addendum * module),
      dedendum_in: inch(deep),
      whole_depth_in: inch(addendum * module + deep),
      clearance_in: inch(deep - addendum * module),
    };
  });
  check('brown-sharpe-14p5-depth', (i) => {
    const { addendum, dedendum } = basicRacks.oldFull;
    return {
      whole_depth_in: ((addendum + dedendum) * toModule('diametral-pitch', i.diametral_pitch_per_in)) / 25.4,
    };
  });
});

check('caliper-odd-geometry', (i) => {
  // Pointed teeth: jaws on bare tips. A 30° wheel so tall that its land is gone reads the handbook's cosines.
  const factor = (z: number, jaws: 'rocked' | 'settled'): number => {
    const tooth = {
      kind: 'external',
      teeth: z,
      pressureAngle: rad(20),
      helixAngle: 0,
      addendum: 3,
      dedendum: 1.25,
      extraDedendum: 0,
      profileShift: 0,
    } as const;
    const length = { of: 'outside', jaws } as Parameters<typeof respond>[0];
    const [mode] = respond(length, tooth, 1);
    return mode.value / (z + 2 * tooth.addendum);
  };
  return {
    narrow_jaw_tip_to_tip_max: i.z.map((z: number) => factor(z, 'rocked')),
    flat_jaw_min_one_tip_vs_two: i.z.map((z: number) => factor(z, 'settled')),
  };
});

test('no handbook case is left out', () => {
  expect([...seen].sort()).toEqual(handbookCases.map((one) => one.id).sort());
});
