import { namePitch } from '../../index.ts';

/** What a module is called: as an inch size where it is one to a ten-thousandth and no round metric size. */
export function nameModule(moduleMm: number): string {
  const perInch = 25.4 / moduleMm;
  const isInch = Math.abs(perInch / Math.round(perInch) - 1) < 1e-4;
  const isMetric = Math.abs(moduleMm * 100 - Math.round(moduleMm * 100)) < 1e-6;
  return isInch && !isMetric
    ? namePitch({ system: 'diametral-pitch', size: Math.round(perInch) })
    : namePitch({ system: 'module', size: moduleMm });
}
