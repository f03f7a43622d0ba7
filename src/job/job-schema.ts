import { z } from 'zod/mini';
import { compensationSchema } from './compensation-schema.ts';
import { identifier, type Known, numberWithin } from './field-schemas.ts';
import { counts, limits } from './limits.ts';
import { readingSchema } from './reading-schema.ts';
import { specSchema } from './spec-schema.ts';

const damageSchema = z.looseObject({
  kind: z.optional(z.enum(['teeth-missing', 'split', 'worn', 'crumbling', 'swollen'])),
  count: z.optional(numberWithin('someTeeth')),
  gapMm: z.optional(numberWithin('lengthOrNone')),
  where: z.optional(z.string()),
});

const kinds = z.enum([
  'external',
  'internal',
  'rack',
  'worm',
  'worm-wheel',
  'pulley',
  'bevel',
  'crown',
  'ratchet',
  'other',
]);

/** The part that was made for a wheel, and what a caliper says of it. */
const madeSchema = z.looseObject({
  process: z.optional(z.string()),
  material: z.optional(z.string()),
  /** What it was meant to be, where that is not what is planned now */
  spec: z.optional(specSchema),
  /** What the file took back; left out where it took back nothing */
  compensation: z.optional(compensationSchema),
  uncertainty: z.optional(compensationSchema),
  readings: z.optional(z.array(readingSchema).check(z.maxLength(counts.readings.greatest))),
});

const touchedSchema = z.looseObject({
  wheel: z.optional(identifier),
  heightMm: z.optional(numberWithin('lengthOrNone')),
  widthMm: z.optional(numberWithin('length')),
});

/** How the part that replaces a wheel is to be made, and where it will run. */
const makingSchema = z.looseObject({
  /** Who makes it: a key of the makers. */
  maker: z.optional(z.string()),
  /** Whose errors the drawing takes back: the name of a measured machine, kept apart from the job. */
  machine: z.optional(z.string()),
  process: z.optional(z.string()),
  material: z.optional(z.string()),
  /** Keys of changes that are not to be made. */
  off: z.optional(z.array(z.string()).check(z.maxLength(counts.takings.greatest))),
  /** How it is to sit on its shaft; chosen where left out. */
  hold: z.optional(z.enum(['bond', 'flat', 'knurl', 'bush', 'press', 'turns'])),
  /** Of the teeth while they run; or what is near. */
  temperatureC: z.optional(numberWithin('temperature')),
  near: z.optional(z.enum(['motor', 'lamp', 'neither'])),
  wet: z.optional(z.boolean()),
  /** How much wider the teeth may be before something is in the way. */
  roomMm: z.optional(numberWithin('lengthOrNone')),
  /** Straight teeth in place of slanted ones; on both wheels of a pair. */
  spur: z.optional(z.boolean()),
});

const wheelSchema = z.looseObject({
  id: identifier,
  name: z.optional(z.string()),
  notes: z.optional(z.string()),
  kind: z.optional(kinds),
  shaft: z.optional(identifier),
  part: z.optional(identifier),
  post: z.optional(identifier),
  state: z.optional(z.enum(['sound', 'damaged', 'lost'])),
  damage: z.optional(z.array(damageSchema).check(z.maxLength(counts.links.greatest))),
  material: z.optional(z.string()),
  readings: z.optional(z.array(readingSchema).check(z.maxLength(counts.readings.greatest))),
  spec: z.optional(specSchema),
  made: z.optional(madeSchema),
  making: z.optional(makingSchema),
  /** Meant to give way before any other. */
  sacrificial: z.optional(z.boolean()),
  /** What it looks like, as the person chose from pictures. */
  look: z.optional(z.string()),
  /** Readings that can't be taken on this wheel, such as "span~3": not asked for again. */
  leftOut: z.optional(z.array(z.string()).check(z.maxLength(counts.readings.greatest))),
  tipWearMm: z.optional(numberWithin('lengthOrNone')),
  missing: z.optional(z.array(numberWithin('someTeeth')).check(z.maxLength(limits.teeth.greatest))),
  runoutMm: z.optional(numberWithin('lengthOrNone')),
  /** Its post, where the wheel is lost; `clip`: a groove that a clip sat in. */
  postSize: z.optional(
    z.looseObject({
      diameterMm: z.optional(numberWithin('length')),
      freeHeightMm: z.optional(numberWithin('length')),
      clip: z.optional(z.boolean()),
    }),
  ),
  /** Neighbors that bear its tracks, at what height over the plate and how wide. */
  touched: z.optional(z.array(touchedSchema).check(z.maxLength(counts.links.greatest))),
  /** Rows of teeth: two of a compound gear. */
  rows: z.optional(numberWithin('rows')),
  /** Its train is timed: how its teeth stood to the others matters. */
  timed: z.optional(z.boolean()),
  diameterMm: z.optional(numberWithin('length')),
  pitchMm: z.optional(numberWithin('length')),
  /** The piece that stood here before another was accepted, with its readings. */
  replaced: z.optional(z.looseObject({})),
});

const meshSchema = z.looseObject({
  kind: z.optional(z.enum(['teeth', 'worm', 'belt'])),
  driver: z.optional(identifier),
  driven: z.optional(identifier),
  centerMm: z.optional(numberWithin('distance')),
  uMm: z.optional(numberWithin('uncertainty')),
  carrier: z.optional(identifier),
  crossed: z.optional(z.boolean()),
  slipPercent: z.optional(numberWithin('percent')),
});

const machineSchema = z.looseObject({
  kind: z.optional(z.string()),
  made: z.optional(z.enum(['metric-land', 'inch-land', 'unknown'])),
  decade: z.optional(numberWithin('year')),
});

const kitSchema = z.looseObject({
  caliper: z.optional(z.string()),
  uMm: z.optional(numberWithin('uncertainty')),
  zeroMm: z.optional(numberWithin('zero')),
  zeroUMm: z.optional(numberWithin('zeroUncertainty')),
  jawTipMm: z.optional(numberWithin('lengthOrNone')),
  pinsMm: z.optional(z.array(numberWithin('length')).check(z.maxLength(counts.takings.greatest))),
});

const motorSchema = z.looseObject({
  shaft: z.optional(identifier),
  rpm: z.optional(numberWithin('speed')),
  stallTorqueNmm: z.optional(numberWithin('torque')),
  /** At `rpm`. */
  torqueNmm: z.optional(numberWithin('torque')),
});

const wantedSchema = z.looseObject({
  from: z.optional(identifier),
  to: z.optional(identifier),
  ratio: z.optional(numberWithin('ratio')),
  travelMmPerTurn: z.optional(numberWithin('travel')),
  tolerancePercent: z.optional(numberWithin('percent')),
  direction: z.optional(z.enum(['same', 'opposite'])),
  /** The output's speed as a person may know it, in place of `ratio`; the motor's rpm makes one of it. */
  turnsPerMinute: z.optional(numberWithin('speed')),
  beltSpeedMmPerS: z.optional(numberWithin('travel')),
  rollerDiameterMm: z.optional(numberWithin('length')),
  secondsForStroke: z.optional(numberWithin('seconds')),
  /** The person was asked and doesn't know. */
  unknown: z.optional(z.boolean()),
});

const symptomSchema = z.looseObject({
  id: z.optional(z.string()),
  perMinute: z.optional(numberWithin('rate')),
});

/**
 * The job file, version 1. Objects are loose: fields that this program does not know are kept as they stand.
 * Nothing is changed or filled in by parsing, so a parsed job written again is the same job.
 */
export const jobSchema = z.looseObject({
  format: z.literal('sparetooth-job'),
  version: z.literal(1),
  title: z.optional(z.string()),
  invented: z.optional(z.boolean()),
  notes: z.optional(z.string()),
  machine: z.optional(machineSchema),
  kit: z.optional(kitSchema),
  wheels: z.optional(z.array(wheelSchema).check(z.maxLength(counts.wheels.greatest))),
  meshes: z.optional(z.array(meshSchema).check(z.maxLength(counts.meshes.greatest))),
  fixed: z.optional(z.array(identifier).check(z.maxLength(counts.links.greatest))),
  motor: z.optional(motorSchema),
  wanted: z.optional(wantedSchema),
  symptoms: z.optional(z.array(symptomSchema).check(z.maxLength(counts.links.greatest))),
  /** Questions about the whole train that can't be answered, such as "motor": not asked again. */
  leftOut: z.optional(z.array(z.string()).check(z.maxLength(counts.links.greatest))),
});

export type Job = Known<z.infer<typeof jobSchema>>;
export type Wheel = Known<z.infer<typeof wheelSchema>>;
