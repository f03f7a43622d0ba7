/** One entity of a STEP file: its type and its parameters, lists nested, references as numbers with a #. */
export interface StepEntity {
  readonly type: string;
  readonly parameters: readonly Parameter[];
}

export type Parameter = number | string | readonly Parameter[];

/**
 * The simple entities of a STEP file's data section by name (ISO 10303-21); combined ones such as units are left out.
 * It shares no code with the writer.
 */
export function parseStep(bytes: Uint8Array): Map<string, StepEntity> {
  const text = new TextDecoder('latin1').decode(bytes);
  const data = text.slice(text.indexOf('DATA;') + 5, text.lastIndexOf('ENDSEC;'));
  const found = new Map<string, StepEntity>();
  for (const [, name, type, rest] of data.matchAll(/(#\d+)=([A-Z0-9_]+)\((.*)\);\n/g)) {
    found.set(name, { type, parameters: readList(`${rest})`, { at: 0 }) });
  }
  return found;
}

function readList(text: string, place: { at: number }): Parameter[] {
  const list: Parameter[] = [];
  while (place.at < text.length) {
    const letter = text[place.at];
    if (letter === ')') {
      place.at++;
      return list;
    }
    if (letter === ',') place.at++;
    else if (letter === '(') {
      place.at++;
      list.push(readList(text, place));
    } else if (letter === "'") {
      const match = /'((?:[^']|'')*)'/y;
      match.lastIndex = place.at;
      const [all, inner] = match.exec(text) ?? ["''", ''];
      place.at += all.length;
      list.push(inner.replace(/''/g, "'"));
    } else {
      const match = /[^,()]+/y;
      match.lastIndex = place.at;
      const [all] = match.exec(text) ?? [''];
      place.at += all.length;
      list.push(/^[-+\d]/.test(all) ? Number(all) : all);
    }
  }
  throw new Error(`a list without its end: ${text.slice(0, 60)}`);
}

/** A B-spline of the file, ready to be evaluated. */
export interface ParsedSpline {
  readonly degree: number;
  readonly points: readonly (readonly number[])[];
  /** With repetitions */
  readonly knots: readonly number[];
}

/** Every B-spline curve of a file, and of each B-spline surface the curves along its rows and its columns. */
export function listSplines(entities: ReadonlyMap<string, StepEntity>): ParsedSpline[] {
  const point = (name: Parameter): readonly number[] => {
    const [, at] = entities.get(String(name))?.parameters ?? [];
    return at as readonly number[];
  };
  const repeat = (counts: Parameter, values: Parameter): number[] =>
    (counts as number[]).flatMap((count, k) => Array<number>(count).fill((values as number[])[k]));
  const splines: ParsedSpline[] = [];
  for (const { type, parameters } of entities.values()) {
    if (type === 'B_SPLINE_CURVE_WITH_KNOTS') {
      const [, degree, points, , , , counts, values] = parameters;
      splines.push({
        degree: Number(degree),
        points: (points as Parameter[]).map(point),
        knots: repeat(counts, values),
      });
    }
    if (type === 'B_SPLINE_SURFACE_WITH_KNOTS') splines.push(...sliceSurface(parameters, point, repeat));
  }
  return splines;
}

/** The surface's curves at five even values of each parameter. */
function sliceSurface(
  parameters: readonly Parameter[],
  point: (name: Parameter) => readonly number[],
  repeat: (counts: Parameter, values: Parameter) => number[],
): ParsedSpline[] {
  const [, degreeU, degreeV, net, , , , , countsU, countsV, valuesU, valuesV] = parameters;
  const points = (net as Parameter[][]).map((row) => row.map(point));
  const knotsU = repeat(countsU, valuesU);
  const knotsV = repeat(countsV, valuesV);
  const transposed = points[0].map((_, v) => points.map((row) => row[v]));
  const slices: ParsedSpline[] = [];
  for (const share of [0, 0.25, 0.5, 0.75, 1]) {
    slices.push({
      degree: Number(degreeU),
      knots: knotsU,
      points: points.map((row) => evaluate({ degree: Number(degreeV), points: row, knots: knotsV }, share)),
    });
    slices.push({
      degree: Number(degreeV),
      knots: knotsV,
      points: transposed.map((row) =>
        evaluate({ degree: Number(degreeU), points: row, knots: knotsU }, share),
      ),
    });
  }
  return slices;
}

/** A spline's point at a parameter, by the basis functions' own recursion (Cox and de Boor). */
export function evaluate({ degree, points, knots }: ParsedSpline, parameter: number): number[] {
  const last = knots[knots.length - 1];
  const u = Math.min(parameter, last - 1e-12);
  const basis = (i: number, p: number): number => {
    if (p === 0) return knots[i] <= u && u < knots[i + 1] ? 1 : 0;
    const left = knots[i + p] - knots[i];
    const right = knots[i + p + 1] - knots[i + 1];
    return (
      (left > 0 ? ((u - knots[i]) / left) * basis(i, p - 1) : 0) +
      (right > 0 ? ((knots[i + p + 1] - u) / right) * basis(i + 1, p - 1) : 0)
    );
  };
  const at = [0, 0, 0];
  points.forEach((one, i) => {
    const weight = basis(i, degree);
    if (weight !== 0) for (let k = 0; k < 3; k++) at[k] += weight * one[k];
  });
  return at;
}
