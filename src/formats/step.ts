import type {
  ExactBody,
  ExactCurve,
  ExactSurface,
  Knots,
  Patch,
  SpaceSpline,
  Triple,
} from '../solid/exact-body.ts';
import { quoteText, type StepText, startStepText } from './step-text.ts';

/**
 * Exact bodies as a STEP file (ISO 10303-21 text, AP214 schema `automotive_design`): unit millimeter, one product, each
 * body a closed solid. Nothing in it depends on clock or place: same bodies and name, same bytes.
 *
 * @param name the product's; characters beyond printable ASCII are written as ISO 10303-21 escapes them
 */
export function encodeStep(
  bodies: readonly { readonly body: ExactBody; readonly x: number }[],
  name: string,
  description: string,
): Uint8Array {
  const head = [
    'ISO-10303-21;',
    'HEADER;',
    `FILE_DESCRIPTION((${quoteText(description)}),'2;1');`,
    // A time stamp would make every run another file.
    `FILE_NAME(${quoteText(`${name}.step`)},'',(''),(''),'','Sparetooth','');`,
    "FILE_SCHEMA(('AUTOMOTIVE_DESIGN { 1 0 10303 214 1 1 1 1 }'));",
    'ENDSEC;',
    'DATA;',
    '',
  ];
  const text = startStepText(head.join('\n'));
  const context = writeContext(text);
  const origin = text.add(`AXIS2_PLACEMENT_3D('',${point(text, [0, 0, 0])},$,$)`);
  const solids = bodies.map(({ body, x }) => writeBody(text, body, x, name));
  const shape = text.add(
    `ADVANCED_BREP_SHAPE_REPRESENTATION(${quoteText(name)},(${[origin, ...solids].join(',')}),${context})`,
  );
  writeProduct(text, shape, name, description);
  return text.finish('ENDSEC;\nEND-ISO-10303-21;\n');
}

/** Millimeter, radian, and how exactly the file's curves meet: what its digits and helices leave. */
function writeContext(text: StepText): string {
  const length = text.add('(LENGTH_UNIT()NAMED_UNIT(*)SI_UNIT(.MILLI.,.METRE.))');
  const angle = text.add('(NAMED_UNIT(*)PLANE_ANGLE_UNIT()SI_UNIT($,.RADIAN.))');
  const solid = text.add('(NAMED_UNIT(*)SI_UNIT($,.STERADIAN.)SOLID_ANGLE_UNIT())');
  const precision = text.add(
    `UNCERTAINTY_MEASURE_WITH_UNIT(LENGTH_MEASURE(1.E-06),${length},'distance_accuracy_value','')`,
  );
  return text.add(
    `(GEOMETRIC_REPRESENTATION_CONTEXT(3)GLOBAL_UNCERTAINTY_ASSIGNED_CONTEXT((${precision}))GLOBAL_UNIT_ASSIGNED_CONTEXT((${length},${angle},${solid}))REPRESENTATION_CONTEXT('',''))`,
  );
}

function writeProduct(text: StepText, shape: string, name: string, description: string): void {
  const application = text.add("APPLICATION_CONTEXT('automotive design')");
  text.add(
    `APPLICATION_PROTOCOL_DEFINITION('international standard','automotive_design',2000,${application})`,
  );
  const product = text.add(
    `PRODUCT(${quoteText(name)},${quoteText(name)},${quoteText(description)},(${text.add(`PRODUCT_CONTEXT('',${application},'mechanical')`)}))`,
  );
  text.add(`PRODUCT_RELATED_PRODUCT_CATEGORY('part','',(${product}))`);
  const formation = text.add(`PRODUCT_DEFINITION_FORMATION('','',${product})`);
  const design = text.add(`PRODUCT_DEFINITION_CONTEXT('part definition',${application},'design')`);
  const definition = text.add(`PRODUCT_DEFINITION('design','',${formation},${design})`);
  const definitionShape = text.add(`PRODUCT_DEFINITION_SHAPE('','',${definition})`);
  text.add(`SHAPE_DEFINITION_REPRESENTATION(${definitionShape},${shape})`);
}

function writeBody(text: StepText, { vertices, edges, faces }: ExactBody, x: number, name: string): string {
  const moved = ([px, py, pz]: Triple): Triple => (x === 0 ? [px, py, pz] : [px + x, py, pz]);
  const corners = vertices.map((at) => point(text, moved(at)));
  const vertexPoints = corners.map((at) => text.add(`VERTEX_POINT('',${at})`));
  const curves = edges.map(({ from, to, curve }) => {
    const geometry =
      curve.kind === 'line'
        ? line(text, corners[from], vertices[from], vertices[to])
        : curveOf(text, curve, moved, corners[from], corners[to]);
    return text.add(`EDGE_CURVE('',${vertexPoints[from]},${vertexPoints[to]},${geometry},.T.)`);
  });
  const written = faces.map(({ surface, isAlong, loops }) => {
    const bounds = loops.map((loop, k) => {
      const uses = loop.map(({ edge, isForward }) =>
        text.add(`ORIENTED_EDGE('',*,*,${curves[edge]},${isForward ? '.T.' : '.F.'})`),
      );
      const ring = text.add(`EDGE_LOOP('',(${uses.join(',')}))`);
      return text.add(`${k === 0 ? 'FACE_OUTER_BOUND' : 'FACE_BOUND'}('',${ring},.T.)`);
    });
    const geometry = surfaceOf(text, surface, moved);
    return text.add(`ADVANCED_FACE('',(${bounds.join(',')}),${geometry},${isAlong ? '.T.' : '.F.'})`);
  });
  return text.add(
    `MANIFOLD_SOLID_BREP(${quoteText(name)},${text.add(`CLOSED_SHELL('',(${written.join(',')}))`)})`,
  );
}

function point(text: StepText, [x, y, z]: Triple): string {
  return text.addPoint(x, y, z);
}

function direction(text: StepText, at: Triple): string {
  return text.share(`DIRECTION('',(${at.map(text.number).join(',')}))`);
}

function line(text: StepText, start: string, from: Triple, to: Triple): string {
  const along: Triple = [to[0] - from[0], to[1] - from[1], to[2] - from[2]];
  const length = Math.hypot(...along);
  const [x, y, z] = along;
  const way = direction(text, [x / length, y / length, z / length]);
  return text.add(`LINE('',${start},${text.share(`VECTOR('',${way},1.)`)})`);
}

function placement(text: StepText, at: string, axis: Triple, reference: Triple): string {
  return text.add(`AXIS2_PLACEMENT_3D('',${at},${direction(text, axis)},${direction(text, reference)})`);
}

function curveOf(
  text: StepText,
  curve: Exclude<ExactCurve, { readonly kind: 'line' }>,
  moved: (at: Triple) => Triple,
  from: string,
  to: string,
): string {
  if (curve.kind === 'arc') {
    const at = placement(text, point(text, moved(curve.center)), curve.axis, curve.reference);
    return text.add(`CIRCLE('',${at},${text.number(curve.radius)})`);
  }
  return splineOf(text, curve.spline, moved, [from, to]);
}

/** `ends`: points that stand already where the spline begins and ends. */
function splineOf(
  text: StepText,
  { degree, points, knots }: SpaceSpline,
  moved: (at: Triple) => Triple,
  ends?: readonly [string, string],
): string {
  const last = points.length - 1;
  const written = points.map((at, k) => {
    if (ends && k === 0) return ends[0];
    return ends && k === last ? ends[1] : point(text, moved(at));
  });
  return text.add(
    `B_SPLINE_CURVE_WITH_KNOTS('',${degree},(${written.join(',')}),.UNSPECIFIED.,.F.,.F.,${knotsText(text, knots)},.UNSPECIFIED.)`,
  );
}

/** How often each knot counts, and the knots. */
function knotsText(text: StepText, { values, counts }: Knots): string {
  return `(${counts.join(',')}),(${Array.from(values, text.number).join(',')})`;
}

function surfaceOf(text: StepText, surface: ExactSurface, moved: (at: Triple) => Triple): string {
  if (surface.kind === 'patch') return patchOf(text, surface.patch, moved);
  if (surface.kind === 'extrusion') {
    const way = text.share(`VECTOR('',${direction(text, surface.direction)},1.)`);
    return text.add(`SURFACE_OF_LINEAR_EXTRUSION('',${splineOf(text, surface.spline, moved)},${way})`);
  }
  const at = point(text, moved(surface.at));
  if (surface.kind === 'plane')
    return text.add(`PLANE('',${placement(text, at, surface.normal, surface.reference)})`);
  const place = placement(text, at, surface.axis, surface.reference);
  if (surface.kind === 'cylinder')
    return text.add(`CYLINDRICAL_SURFACE('',${place},${text.number(surface.radius)})`);
  return text.add(
    `CONICAL_SURFACE('',${place},${text.number(surface.radius)},${text.number(surface.halfAngle)})`,
  );
}

function patchOf(text: StepText, patch: Patch, moved: (at: Triple) => Triple): string {
  const { degreeU, degreeV, points, knotsU, knotsV } = patch;
  const net = points.map((column) => `(${column.map((at) => point(text, moved(at))).join(',')})`).join(',');
  const knots = `(${knotsU.counts.join(',')}),(${knotsV.counts.join(',')}),(${Array.from(knotsU.values, text.number).join(',')}),(${Array.from(knotsV.values, text.number).join(',')})`;
  return text.add(
    `B_SPLINE_SURFACE_WITH_KNOTS('',${degreeU},${degreeV},(${net}),.UNSPECIFIED.,.F.,.F.,.F.,${knots},.UNSPECIFIED.)`,
  );
}
