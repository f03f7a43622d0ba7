import { z } from 'zod';
import { identifier, type Known, numberWithin } from './field-schemas.ts';
import { counts, limits } from './limits.ts';
import { readingSchema } from './reading-schema.ts';
import { specSchema } from './spec-schema.ts';

const damageSchema = z.looseObject({
  kind: z.enum(['teeth-missing', 'split', 'worn', 'crumbling', 'swollen']).optional(),
  count: numberWithin('someTeeth').optional(),
  gapMm: numberWithin('lengthOrNone').optional(),
  where: z.string().optional(),
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

const wheelSchema = z.looseObject({
  id: identifier,
  name: z.string().optional(),
  notes: z.string().optional(),
  kind: kinds.optional(),
  shaft: identifier.optional(),
  part: identifier.optional(),
  post: identifier.optional(),
  state: z.enum(['sound', 'damaged', 'lost']).optional(),
  damage: z.array(damageSchema).max(counts.links.greatest).optional(),
  material: z.string().optional(),
  readings: z.array(readingSchema).max(counts.readings.greatest).optional(),
  spec: specSchema.optional(),
  /** What it looks like, as the person chose from pictures. */
  look: z.string().optional(),
  /** Readings that can't be taken on this wheel, such as "span 3": not asked for again. */
  leftOut: z.array(z.string()).max(counts.readings.greatest).optional(),
  tipWearMm: numberWithin('lengthOrNone').optional(),
  missing: z.array(numberWithin('someTeeth')).max(limits.teeth.greatest).optional(),
  runoutMm: numberWithin('lengthOrNone').optional(),
  diameterMm: numberWithin('length').optional(),
  pitchMm: numberWithin('length').optional(),
});

const meshSchema = z.looseObject({
  kind: z.enum(['teeth', 'worm', 'belt']).optional(),
  driver: identifier.optional(),
  driven: identifier.optional(),
  centerMm: numberWithin('length').optional(),
  uMm: numberWithin('uncertainty').optional(),
  carrier: identifier.optional(),
  crossed: z.boolean().optional(),
  slipPercent: numberWithin('percent').optional(),
});

const machineSchema = z.looseObject({
  kind: z.string().optional(),
  made: z.enum(['metric-land', 'inch-land', 'unknown']).optional(),
  decade: numberWithin('year').optional(),
});

const kitSchema = z.looseObject({
  caliper: z.string().optional(),
  uMm: numberWithin('uncertainty').optional(),
  zeroMm: numberWithin('zero').optional(),
  zeroUMm: numberWithin('zeroUncertainty').optional(),
  jawTipMm: numberWithin('lengthOrNone').optional(),
  pinsMm: z.array(numberWithin('length')).max(counts.takings.greatest).optional(),
});

const motorSchema = z.looseObject({
  shaft: identifier.optional(),
  rpm: numberWithin('speed').optional(),
  stallTorqueNmm: numberWithin('torque').optional(),
});

const wantedSchema = z.looseObject({
  from: identifier.optional(),
  to: identifier.optional(),
  ratio: numberWithin('ratio').optional(),
  travelMmPerTurn: numberWithin('travel').optional(),
  tolerancePercent: numberWithin('percent').optional(),
  direction: z.enum(['same', 'opposite']).optional(),
});

const symptomSchema = z.looseObject({
  id: z.string().optional(),
  perMinute: numberWithin('rate').optional(),
});

/**
 * The job file, version 1. Objects are loose: fields that this program does not know are kept as they stand.
 * Nothing is changed or filled in by parsing, so a parsed job written again is the same job.
 */
export const jobSchema = z.looseObject({
  format: z.literal('sparetooth-job'),
  version: z.literal(1),
  title: z.string().optional(),
  invented: z.boolean().optional(),
  notes: z.string().optional(),
  machine: machineSchema.optional(),
  kit: kitSchema.optional(),
  wheels: z.array(wheelSchema).max(counts.wheels.greatest).optional(),
  meshes: z.array(meshSchema).max(counts.links.greatest).optional(),
  fixed: z.array(identifier).max(counts.links.greatest).optional(),
  motor: motorSchema.optional(),
  wanted: wantedSchema.optional(),
  symptoms: z.array(symptomSchema).max(counts.links.greatest).optional(),
});

export type Job = Known<z.infer<typeof jobSchema>>;
export type Wheel = Known<z.infer<typeof wheelSchema>>;
