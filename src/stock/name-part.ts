import type { GearSpec } from '../involute/gear-spec.ts';
import type { PartSize, StockPart } from './stock-part.ts';

/** A size in the words that sellers list it by. */
export function nameSize({ system, size, module }: PartSize): string {
  if (system === 'diametral-pitch') return `${trim(size)} DP`;
  if (system === 'circular-pitch') return `circular pitch ${trim(size)} in`;
  return `module ${trim(module)}`;
}

/**
 * Words to search for, as sellers put them.
 *
 * @example `spur gear, module 0.5, 24 teeth, bore 2 mm, POM, width 4 mm`
 */
export function nameSearch(part: StockPart, size: PartSize, spec: GearSpec): string {
  const angle = Math.round(((spec.pressureAngle * 180) / Math.PI) * 10) / 10;
  return [
    'spur gear',
    nameSize(size),
    `${part.teeth} teeth`,
    ...(angle === 20 ? [] : [`${angle} degrees`]),
    ...(part.bore === null || part.bore.shape === 'none' ? [] : [`bore ${trim(part.bore.diameter)} mm`]),
    ...(part.material === '' ? [] : [part.material]),
    ...(part.faceWidth === null ? [] : [`width ${trim(part.faceWidth)} mm`]),
  ].join(', ');
}

/** @example `16 teeth, module 0.5, brass, tin 2` */
export function namePart(part: StockPart, size: PartSize): string {
  const fat = part.profileShift >= 0.1 ? `fat teeth (shift ${trim(part.profileShift)})` : '';
  return [
    `${part.teeth} teeth`,
    nameSize(size),
    fat,
    part.material,
    part.bore === null ? '' : part.bore.shape === 'none' ? 'no bore' : `bore ${trim(part.bore.diameter)} mm`,
    part.from === 'range' ? part.name : part.name || part.notes,
    part.kept,
  ]
    .filter((word) => word !== '')
    .join(', ');
}

function trim(value: number): string {
  return String(Number(value.toFixed(4)));
}
