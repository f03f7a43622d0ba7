import type { Wheel } from '../../index.ts';

/** The job says what the wheel was made to be: it needs no readings to be known. */
export function isSpecified({ kind, spec, diameterMm, pitchMm }: Wheel): boolean {
  const teeth = spec?.teeth;
  if (kind === 'pulley') {
    const pitch = pitchMm ?? spec?.pitchMm;
    return (diameterMm ?? spec?.diameterMm) !== undefined || (teeth !== undefined && pitch !== undefined);
  }
  if (kind === 'rack') return spec?.moduleMm !== undefined;
  const isGear = kind === undefined || kind === 'external' || kind === 'internal';
  return teeth !== undefined && (!isGear || spec?.moduleMm !== undefined);
}

/** It is known by its spec alone: no tooth of it was counted or measured. */
export function isKnownBySpec(wheel: Wheel): boolean {
  return isSpecified(wheel) && !(wheel.readings ?? []).some((reading) => reading.of === 'teeth');
}
