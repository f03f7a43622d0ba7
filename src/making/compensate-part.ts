import { Fail } from '../fail.ts';
import { growTeeth } from '../involute/grow-teeth.ts';
import { traceOutline } from '../involute/trace-outline.ts';
import { bisect } from '../numeric/bisect.ts';
import { checkForm } from '../solid/check-form.ts';
import type { Bore, ToothedSection, WheelForm } from '../solid/wheel-form.ts';
import type { Compensation } from './compensation.ts';

/** A part drawn so that the machine makes of it what was meant. */
export interface CompensatedPart {
  readonly form: WheelForm;
  /** What was changed in the drawing, each figure labelled, mm; empty where nothing was */
  readonly changes: readonly DrawingChange[];
  /** The face to lay on the bed */
  readonly faceDown: 'bottom' | 'top';
  /** Plain sentences for who makes it */
  readonly advice: readonly string[];
}

export interface DrawingChange {
  readonly of: 'scale' | 'outside' | 'teeth' | 'holes' | 'first-layer';
  /** Of the drawing: negative takes material off outsides and teeth, positive opens holes; percent for the scale */
  readonly perSideMm?: number;
  readonly onDiameterMm?: number;
  readonly percent?: number;
}

/**
 * The form to draw of a part, so that a machine with this compensation's errors makes the part that was meant: the
 * teeth's exact parallel curve (`growTeeth`), bore, hubs and rim moved a side each, then all of the section scaled.
 * Heights stay: nothing here is known of them.
 *
 * The first layers' bulge is met by the rim chamfer, deepened to it, where the form allows one; it takes the bulge off
 * the tips alone, and advice says what stays. Convex corners come back rounded by as much as the outsides were taken
 * in: no drawing can give a round tool a sharp corner. Holes lose no more than the chord error to their facets.
 *
 * A compensation of nothing returns the form itself. Throws Fail `bad-geometry` where the part itself has no solid;
 * else with the field of the compensation where an offset eats the tooth, closes a gap or breaks a wall, and the
 * greatest that works.
 */
export function compensatePart(form: WheelForm, compensation: Compensation): CompensatedPart {
  checkMakeable(form);
  const drawn = draw(form, compensation);
  const problem = findProblem(drawn);
  if (problem) throw explain(form, compensation, problem);
  const faceDown = form.hubs.some(({ side }) => side === 'bottom') ? 'top' : 'bottom';
  return {
    form: drawn,
    changes: listChanges(compensation),
    faceDown,
    advice: advise(form, drawn, compensation, faceDown),
  };
}

function draw(form: WheelForm, compensation: Compensation): WheelForm {
  const { outsidePerSideMm: outside, holesPerSideMm: holes } = compensation;
  const scale = 1 / (1 + compensation.scalePercent / 100);
  const chamfer = chooseChamfer(form, compensation.firstLayerPerSideMm);
  return {
    ...form,
    ...drawSection(form, compensation, scale),
    chamfer,
    bore: openBore(form.bore, holes, scale),
    ...(form.others === undefined
      ? {}
      : { others: form.others.map((other) => ({ ...other, ...drawSection(other, compensation, scale) })) }),
    ...(form.rimDiameter === undefined ? {} : { rimDiameter: (form.rimDiameter - 2 * outside) * scale }),
    ...(form.marks && form.marks.count > 0
      ? { marks: { ...form.marks, diameter: (form.marks.diameter + 2 * holes) * scale } }
      : {}),
  };
}

/** Teeth, hubs and flanges of one toothing taken in, its holes opened; of a web only the places move, with the scale. */
function drawSection(
  section: ToothedSection,
  { outsidePerSideMm: outside, teethPerSideMm: teeth, holesPerSideMm: holes }: Compensation,
  scale: number,
): Partial<ToothedSection> & Pick<ToothedSection, 'spec' | 'hubs'> {
  const takeIn = (diameter: number): number => (diameter - 2 * outside) * scale;
  const { sector, web, holes: lightening, flanges } = section;
  return {
    spec: growTeeth(section.spec, { flanks: -teeth, tips: -outside, scale }),
    hubs: section.hubs.map((hub) => ({ ...hub, diameter: takeIn(hub.diameter) })),
    ...(sector?.restDiameter === undefined
      ? {}
      : { sector: { ...sector, restDiameter: takeIn(sector.restDiameter) } }),
    ...(web
      ? { web: { ...web, hubDiameter: web.hubDiameter * scale, rimDiameter: web.rimDiameter * scale } }
      : {}),
    ...(lightening
      ? {
          holes: {
            ...lightening,
            diameter: (lightening.diameter + 2 * holes) * scale,
            circleDiameter: lightening.circleDiameter * scale,
          },
        }
      : {}),
    ...(flanges ? { flanges: flanges.map((one) => ({ ...one, diameter: takeIn(one.diameter) })) } : {}),
  };
}

/** A chamfer as deep as the bulge, where the form has room for one; never less than the form's own. */
function chooseChamfer(form: WheelForm, firstLayer: number): number {
  if (form.spec.kind === 'rack' || firstLayer <= form.chamfer) return form.chamfer;
  const wanted = { ...form, chamfer: firstLayer };
  return findProblem(wanted) ? form.chamfer : firstLayer;
}

/** A flat stands across from a wall: both move, so the distance between changes by twice the offset. */
function openBore(bore: Bore, holes: number, scale: number): Bore {
  const open = (length: number): number => (length + 2 * holes) * scale;
  switch (bore.shape) {
    case 'none':
      return bore;
    case 'round':
      return { shape: 'round', diameter: open(bore.diameter) };
    case 'd':
    case 'double-d':
      return { shape: bore.shape, diameter: open(bore.diameter), flat: open(bore.flat) };
    case 'hex':
    case 'square':
      return { shape: bore.shape, acrossFlats: open(bore.acrossFlats) };
    case 'spline':
      return { ...bore, diameter: open(bore.diameter), depth: bore.depth * scale, width: open(bore.width) };
    case 'knurl':
      return { ...bore, diameter: open(bore.diameter), depth: bore.depth * scale };
  }
}

function checkMakeable(form: WheelForm): void {
  const problem = findProblem(form);
  if (problem) throw problem;
}

/** Why a form has no solid; undefined where it has one. The outline is traced coarsely: it is only looked at. */
function findProblem(form: WheelForm): Fail | undefined {
  try {
    traceOutline(form.spec, 0.05 * form.spec.module);
    checkForm(form);
    return undefined;
  } catch (error) {
    if (error instanceof Fail) return error;
    throw error;
  }
}

/** Which figure breaks the part, and the greatest share of it that doesn't. */
function explain(form: WheelForm, compensation: Compensation, problem: Fail): Fail {
  const none = {
    scalePercent: 0,
    outsidePerSideMm: 0,
    teethPerSideMm: 0,
    holesPerSideMm: 0,
    firstLayerPerSideMm: 0,
  };
  const keys = ['teethPerSideMm', 'holesPerSideMm', 'outsidePerSideMm', 'scalePercent'] as const;
  const isFine = (one: Compensation): boolean => findProblem(draw(form, one)) === undefined;
  const alone = keys.find((key) => !isFine({ ...none, [key]: compensation[key] }));
  // Together they may break what none breaks alone: then the teeth's is cut back.
  const key = alone ?? 'teethPerSideMm';
  const base = alone === undefined ? compensation : none;
  const value = compensation[key];
  const { holding } = bisect((part) => isFine({ ...base, [key]: value * part }), 0, 1);
  const works = Math.trunc(value * holding * 1000) / 1000;
  const unit = key === 'scalePercent' ? 'percent' : 'mm a side';
  const canWork = isFine({ ...base, [key]: works });
  return new Fail(
    'bad-geometry',
    `compensation.${key}`,
    `${sayEffect(key, value)}: ${problem.message}`,
    canWork
      ? `Use ${works} ${unit} at most${value < 0 ? ' below 0' : ''}, or a machine that is nearer to the drawing.`
      : 'Use smaller figures, or a machine that is nearer to the drawing.',
    { key, value, ...(canWork ? { works } : {}), cause: problem.field },
  );
}

function sayEffect(key: keyof Compensation, value: number): string {
  switch (key) {
    case 'teethPerSideMm':
      return value > 0
        ? `taking ${value} mm a side off the teeth leaves no tooth to draw`
        : `putting ${-value} mm a side on the teeth closes the gaps between them`;
    case 'holesPerSideMm':
      return `moving the wall of the hole by ${value} mm a side leaves no part to draw`;
    case 'outsidePerSideMm':
      return `moving the outsides by ${value} mm a side leaves no part to draw`;
    default:
      return `a scale of ${value} percent leaves no part to draw`;
  }
}

function listChanges(compensation: Compensation): DrawingChange[] {
  const changes: DrawingChange[] = [];
  const { scalePercent: scale } = compensation;
  if (scale !== 0) changes.push({ of: 'scale', percent: 100 / (1 + scale / 100) - 100 });
  const push = (of: DrawingChange['of'], perSideMm: number): void => {
    if (perSideMm !== 0) changes.push({ of, perSideMm, onDiameterMm: 2 * perSideMm });
  };
  push('outside', -compensation.outsidePerSideMm);
  push('teeth', -compensation.teethPerSideMm);
  push('holes', compensation.holesPerSideMm);
  push('first-layer', -compensation.firstLayerPerSideMm);
  return changes;
}

function advise(
  form: WheelForm,
  drawn: WheelForm,
  compensation: Compensation,
  faceDown: 'bottom' | 'top',
): string[] {
  const advice: string[] = [];
  const both = form.hubs.length > 1;
  const plain = form.hubs.length > 0 ? ' with the plain face down' : '';
  advice.push(
    both
      ? 'It has a hub on both sides: lay it flat with the shorter one down and supports under the teeth, or ask for it in two pieces.'
      : `Lay it flat${plain}, its axis upright: the allowance is meant for the plane of the layers${faceDown === 'top' ? ', so turn the file over' : ''}.`,
  );
  const bulge = compensation.firstLayerPerSideMm;
  if (bulge > 0) {
    const taken =
      drawn.chamfer > form.chamfer ? 'The rims are chamfered for it at the tips only' : 'It is not drawn in';
    advice.push(
      `The first layers come out ${bulge.toFixed(2)} mm a side (${(2 * bulge).toFixed(2)} on the diameter) wider. ${taken}: scrape the edge of the flanks and of the hole, or set a first-layer offset of -${bulge.toFixed(2)} mm a side where the machine's program has one.`,
    );
  }
  return advice;
}
