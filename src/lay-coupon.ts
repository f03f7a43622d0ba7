import { encodePart } from './formats/encode-part.ts';
import { partFormats } from './formats/part-formats.ts';
import { type CompensationFile, formatCompensation } from './job/compensation-file.ts';
import type { CouponReading } from './making/calibrate.ts';
import { couponForm } from './making/coupon-form.ts';
import { findProcess } from './making/find-process.ts';
import { shapeCoupon } from './making/shape-coupon.ts';

export interface CouponFiles {
  readonly process: string;
  /** The coupon as triangles, and a compensation file whose readings wait to be filled in */
  readonly files: readonly { readonly name: string; readonly bytes: Uint8Array }[];
  /** What to do, in order */
  readonly steps: readonly string[];
}

const usualChordError = 0.002;

/**
 * The calibration coupon of a process as files, with the file to write its readings into. Throws Fail `bad-usage` for
 * a process that is not known, or that no coupon is made for.
 */
export function layCoupon(processKey: string): CouponFiles {
  const process = findProcess(processKey);
  const { mesh, steps } = shapeCoupon(process, usualChordError);
  const metadata = {
    Title: 'calibration coupon',
    Application: 'Sparetooth',
    Description: 'Unit mm. As drawn.',
  };
  const blank: CompensationFile = {
    format: 'sparetooth-compensation',
    version: 1,
    machine: '',
    material: '',
    process: process.key,
    coupons: [1, 2, 3].map(() => ({ readings: listBlank(process.isLayered) })),
  };
  return {
    process: process.key,
    files: [
      ...partFormats.filter(isOfTriangles).map((format) => ({
        name: `coupon.${format.extension}`,
        bytes: encodePart(format, { mesh, bodies: [] }, 'coupon', metadata),
      })),
      { name: 'coupon-readings.json', bytes: new TextEncoder().encode(formatCompensation(blank)) },
    ],
    steps: [...steps, 'Write each value into coupon-readings.json as "mm" beside its size, then: calibrate.'],
  };
}

/** A coupon is no wheel: formats that are made from a wheel's exact form have none to hold. */
function isOfTriangles({ key }: (typeof partFormats)[number]): boolean {
  return key === 'stl' || key === '3mf';
}

/** Every reading with its drawn size, its value left to be put in. */
function listBlank(isLayered: boolean): CouponReading[] {
  const across = (of: 'outside' | 'foot'): CouponReading[] =>
    couponForm.widths.map((nominalMm) => ({ of, nominalMm }));
  return [
    ...across('outside'),
    ...(isLayered ? across('foot') : []),
    ...couponForm.bores.map((nominalMm): CouponReading => ({ of: 'bore', nominalMm })),
    { of: 'gap' },
  ];
}
