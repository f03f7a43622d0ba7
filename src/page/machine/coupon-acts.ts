import { type CompensationFile, couponForm, processes } from '../../index.ts';

type Coupon = NonNullable<CompensationFile['coupons']>[number];
export type CouponReading = NonNullable<Coupon['readings']>[number];

/** One reading to take off a coupon. */
export interface CouponAct {
  readonly of: 'outside' | 'foot' | 'bore' | 'gap';
  readonly nominalMm?: number | undefined;
}

/** Every reading that a coupon of a process has, in the order in which a hand takes them. */
export function listCouponActs(processKey: string | undefined): CouponAct[] {
  const isLayered = processes.find(({ key }) => key === processKey)?.isLayered === true;
  const { widths, bores } = couponForm;
  return [
    ...widths.map((nominalMm): CouponAct => ({ of: 'outside', nominalMm })),
    ...(isLayered ? widths.map((nominalMm): CouponAct => ({ of: 'foot', nominalMm })) : []),
    ...bores.map((nominalMm): CouponAct => ({ of: 'bore', nominalMm })),
    { of: 'gap' },
  ];
}

export function isSameAct(
  a: CouponAct,
  b: { of?: string | undefined; nominalMm?: number | undefined },
): boolean {
  return a.of === b.of && a.nominalMm === b.nominalMm;
}

/** The file with a reading put into one of its coupons, in place of the one that was there. */
export function putCouponReading(
  file: CompensationFile,
  coupon: number,
  reading: CouponReading,
): CompensationFile {
  const coupons = [...(file.coupons ?? [])];
  while (coupons.length <= coupon) coupons.push({ readings: [] });
  const others = (coupons[coupon].readings ?? []).filter(
    (one) => !isSameAct({ of: reading.of ?? 'gap', nominalMm: reading.nominalMm }, one),
  );
  coupons[coupon] = { ...coupons[coupon], readings: [...others, reading] };
  return { ...file, coupons };
}

/** What is read, what is laid where, in words. */
export function tellCouponAct({ of, nominalMm }: CouponAct): {
  readonly title: string;
  readonly label: string;
  readonly how: string;
} {
  switch (of) {
    case 'outside':
      return {
        title: `Across the ${nominalMm} mm width`,
        label: 'What the caliper shows; several takings with a space between',
        how: "Jaws well above the side that lay on the bed, at two places. Don't squeeze.",
      };
    case 'foot':
      return {
        title: `Across the ${nominalMm} mm width, at the bed's side`,
        label: 'What the caliper shows; several takings with a space between',
        how: 'The same width, the jaws at the very first layers: they may bulge.',
      };
    case 'bore':
      return {
        title: `The ${nominalMm} mm hole`,
        label: 'Thickest drill shank that goes in, then the next one that stops',
        how: 'Shanks, each measured first. One number alone counts as read by inside jaws, which is less sure.',
      };
    case 'gap':
      return {
        title: 'The notch, with a drill shank laid in it',
        label: 'From the far edge over the shank, then the shank itself',
        how: `A shank of ${couponForm.gap.leastPin} to ${couponForm.gap.greatestPin} mm, laid into the notch along its flanks.`,
      };
  }
}

/** A reading from the lengths in its field, mm; what is missing where they are not enough. */
export function readCouponAct(
  act: CouponAct,
  lengths: readonly number[],
): { readonly reading: CouponReading } | { readonly wrong: string } {
  const { of, nominalMm } = act;
  switch (of) {
    case 'outside':
    case 'foot':
      return { reading: { of, nominalMm, mm: lengths.length === 1 ? lengths[0] : [...lengths] } };
    case 'bore':
      if (lengths.length === 1) return { reading: { of, nominalMm, mm: lengths[0] } };
      if (lengths.length === 2 && lengths[0] < lengths[1])
        return { reading: { of, nominalMm, goesMm: lengths[0], stopsMm: lengths[1] } };
      return { wrong: 'Two numbers: first the shank that goes in, then a thicker one that stops.' };
    case 'gap': {
      const { leastPin, greatestPin } = couponForm.gap;
      if (lengths.length !== 2) return { wrong: 'Two numbers: over the shank, then the shank itself.' };
      if (lengths[1] < leastPin || lengths[1] > greatestPin)
        return { wrong: `The shank has to be ${leastPin} to ${greatestPin} mm, or it rests on no flank.` };
      return { reading: { of, mm: lengths[0], pinMm: lengths[1] } };
    }
  }
}
