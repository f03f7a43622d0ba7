import { findDiameters } from '../involute/gear-diameters.ts';
import type { GearSpec } from '../involute/gear-spec.ts';
import { referenceToothThickness } from '../involute/tooth-thickness.ts';

/** One row of the gear data table: a number with its decimals and unit, or words. */
export interface GearDatum {
  readonly key: string;
  readonly name: string;
  /** Letter of ISO 701 as ISO 21771 uses it, spelt without Greek letters */
  readonly symbol: string;
  readonly value: number | string;
  readonly digits: number;
  readonly unit: '' | 'mm' | 'deg';
}

/** The wheel that it runs with, as far as it is known. */
export interface SheetMate {
  readonly id: string;
  readonly teeth: number;
  readonly centerDistance: number | undefined;
}

/**
 * What a gear drawing's table holds (ISO 1340, list from memory): teeth, module, pressure angle, basic rack, helix,
 * profile shift, diameters, tooth thickness, and the mate. Angles in degrees, lengths mm.
 */
export function listGearData(spec: GearSpec, mates: readonly SheetMate[]): readonly GearDatum[] {
  const rows: GearDatum[] = [];
  const add = (
    key: string,
    name: string,
    symbol: string,
    value: number | string,
    digits = 0,
    unit: GearDatum['unit'] = '',
  ): void => {
    rows.push({ key, name, symbol, value, digits, unit });
  };
  const degrees = (angle: number): number => (angle * 180) / Math.PI;
  add('kind', 'Kind', '', { external: 'external gear', internal: 'internal gear', rack: 'rack' }[spec.kind]);
  add('teeth', 'Number of teeth', 'z', spec.teeth);
  add('module', 'Normal module', 'mn', spec.module, 4, 'mm');
  add('pressureAngle', 'Normal pressure angle', 'alpha n', degrees(spec.pressureAngle), 3, 'deg');
  add('addendum', 'Basic rack: addendum, in modules', 'haP*', spec.addendum, 3);
  add('dedendum', 'Basic rack: dedendum, in modules', 'hfP*', spec.dedendum, 3);
  add('rootRadius', 'Basic rack: root radius, in modules', 'rhofP*', spec.rootRadius, 3);
  add('helixAngle', 'Helix angle', 'beta', degrees(Math.abs(spec.helixAngle)), 3, 'deg');
  add('hand', 'Hand of helix', '', spec.helixAngle === 0 ? 'spur' : spec.helixAngle > 0 ? 'right' : 'left');
  add('profileShift', 'Profile shift coefficient', 'x', spec.profileShift, 4);
  if (spec.kind !== 'rack') {
    const { reference, base, tip, root } = findDiameters(spec);
    add('reference', 'Reference diameter', 'd', reference, 3, 'mm');
    add('base', 'Base diameter', 'db', base, 3, 'mm');
    add('tip', 'Tip diameter', 'da', tip, 3, 'mm');
    add('root', 'Root diameter', 'df', root, 3, 'mm');
  }
  add('thickness', 'Tooth thickness, arc at d', 'sn', referenceToothThickness(spec), 3, 'mm');
  if (spec.thinning !== 0) add('thinning', 'of which taken off for backlash', '', spec.thinning, 3, 'mm');
  for (const mate of mates) {
    add(`mate ${mate.id}`, `Mate: ${mate.id}`, 'z', mate.teeth);
    if (mate.centerDistance !== undefined)
      add(`distance ${mate.id}`, `Center distance to ${mate.id}`, 'a', mate.centerDistance, 3, 'mm');
  }
  return rows;
}
