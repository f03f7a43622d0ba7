import type { HandedOver } from './hand-over.ts';
import { findDiameters } from './involute/gear-diameters.ts';
import { traceOutline } from './involute/trace-outline.ts';
import { roundNumbers } from './job/round-numbers.ts';
import { fieldsOfSpec } from './job/spec-fields.ts';
import type { SpecFields } from './job/spec-schema.ts';
import { traceBore } from './solid/bore-outline.ts';
import { type Bore, findBoreRadius, type Hub, type WheelForm } from './solid/wheel-form.ts';

/** A part's form, ready to draw from the front and cut along its axis. Lengths mm. */
export interface FormDrawing {
  readonly kind: WheelForm['spec']['kind'];
  /** x0, y0, … closed, counter-clockwise, tooth 0 on +x; a rack lies along x with its datum line at y = 0 */
  readonly outline: Float64Array;
  /** The bore's wall; empty where there is none */
  readonly bore: Float64Array;
  /** Half of the bore's greatest width */
  readonly boreRadius: number;
  /** Of a rack: how far tips and roots lie from the datum line */
  readonly tipRadius: number;
  readonly rootRadius: number;
  readonly referenceRadius: number;
  /** Of an internal wheel's ring */
  readonly rimRadius: number | undefined;
  readonly faceWidth: number;
  readonly hubs: readonly Hub[];
}

/** The old wheel and the part in its place, one over the other. */
export interface DesignDrawing {
  readonly old: FormDrawing;
  readonly meant: FormDrawing;
}

/** Both forms of what is handed over, as drawings. @param chordError greatest stray of a chord from the exact curve, mm */
export function drawDesign({ old, meant }: HandedOver['forms'], chordError: number): DesignDrawing {
  return { old: drawForm(old, chordError), meant: drawForm(meant, chordError) };
}

function drawForm(form: WheelForm, chordError: number): FormDrawing {
  const { spec, bore, faceWidth, hubs, rimDiameter } = form;
  const isRack = spec.kind === 'rack';
  const diameters = isRack ? undefined : findDiameters(spec);
  const hasBore = bore.shape !== 'none' && spec.kind === 'external';
  return {
    kind: spec.kind,
    outline: traceOutline(spec, chordError).points,
    bore: hasBore ? traceBore(bore, chordError) : new Float64Array(),
    boreRadius: hasBore ? findBoreRadius(bore) : 0,
    tipRadius: diameters ? diameters.tip / 2 : spec.module * (spec.addendum + spec.profileShift),
    rootRadius: diameters ? diameters.root / 2 : spec.module * (spec.profileShift - spec.dedendum),
    referenceRadius: diameters ? diameters.reference / 2 : 0,
    rimRadius: rimDiameter === undefined ? undefined : rimDiameter / 2,
    faceWidth,
    hubs,
  };
}

/** A form as the job file has a made part: what it was meant to be, for holding its readings against it. */
export function describeMeant({ spec, bore, faceWidth, hubs }: WheelForm): SpecFields {
  return roundNumbers({
    ...fieldsOfSpec(spec),
    faceWidthMm: faceWidth,
    bore: describeBore(bore),
    hubs: hubs.map(({ side, diameter, length }) => ({ side, diameterMm: diameter, lengthMm: length })),
  });
}

/** Shapes that the job file has no fields for are left as the circle about them. */
function describeBore(bore: Bore): NonNullable<SpecFields['bore']> {
  switch (bore.shape) {
    case 'none':
      return { shape: 'none' };
    case 'd':
    case 'double-d':
      return { shape: bore.shape, diameterMm: bore.diameter, flatMm: bore.flat };
    case 'hex':
    case 'square':
      return { shape: bore.shape, acrossFlatsMm: bore.acrossFlats };
    default:
      return { shape: 'round', diameterMm: bore.diameter };
  }
}
