import { type UsualSize, usualSizes } from '../../gear-library/bores-and-shafts.ts';

/**
 * The usual shafts that a measured diameter may be, nearest first: those within twice its standard uncertainty. Only
 * a hint: a shaft that is none of them is as good as any.
 *
 * @param measured mm
 * @param uncertainty standard uncertainty of `measured`, mm
 * @example findUsualShafts(2.98, 0.025)[0].name = '3 mm'
 */
export function findUsualShafts(measured: number, uncertainty: number): UsualSize[] {
  const off = ({ diameterMm }: UsualSize): number => Math.abs(diameterMm - measured);
  return usualSizes.filter((size) => off(size) <= 2 * uncertainty).sort((a, b) => off(a) - off(b));
}
