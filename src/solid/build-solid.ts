import { findDiameters } from '../involute/gear-diameters.ts';
import { traceOutline } from '../involute/trace-outline.ts';
import { traceBore, traceCircle } from './bore-outline.ts';
import { fillLoop, fillRackFace, fillRingFace, fillWheelFace } from './fill-cap.ts';
import { type Mesh, type MeshBuilder, startMesh } from './mesh.ts';
import { checkForm, findMarkCircle, type WheelForm } from './wheel-form.ts';

/**
 * The closed, outward triangle mesh of a wheel, ring or rack: no chord of its section strays further than
 * `chordError` (mm) from the exact curves, nor do the steps of a helix.
 *
 * The lower face lies at z = 0, hubs above and below. A helical toothing turns by 2 z tan β/d at height z. A chamfer
 * c goes straight, along each point's own radius, from min(r, r_tip − c) at the face (internal: max(r, r_tip + c)) to
 * the point's own radius r at depth c; so a section's area is quadratic in the depth. A chord error coarser than
 * 0.004 of the root diameter counts as that, so that walls stay walls. Throws Fail `bad-geometry` and the Fails of
 * `traceOutline`.
 *
 * @example buildSolid({ spec, faceWidth: 4, bore: { shape: 'none' }, hubs: [], chamfer: 0 }, 0.002)
 */
export function buildSolid(form: WheelForm, chordError: number): Mesh {
  checkForm(form);
  if (form.spec.kind === 'rack') return buildRack(form, chordError);
  const error = Math.min(chordError, 0.004 * findDiameters(form.spec).root);
  return form.spec.kind === 'internal' ? buildRing(form, error) : buildWheel(form, error);
}

/** One level of the toothing: height, turn about the axis, and the chamfer's share there (1 at a face, 0 above). */
interface Layer {
  readonly z: number;
  readonly turn: number;
  readonly share: number;
}

function buildWheel(form: WheelForm, chordError: number): Mesh {
  const { spec, faceWidth, hubs } = form;
  const outline = traceOutline(spec, chordError);
  const layers = listLayers(form, chordError);
  const holes = [traceBore(form.bore, chordError), ...traceMarks(form, chordError)].filter(
    (one) => one.length > 0,
  );
  const holePoints = joinLoops(holes);
  const hubLoops = { top: hubLoop(form, 'top', chordError), bottom: hubLoop(form, 'bottom', chordError) };
  const n = outline.points.length / 2;
  const loops = holePoints.length + hubLoops.top.length + hubLoops.bottom.length;
  const mesh = startMesh(n * layers.length + loops + 8, 2 * n * layers.length + 6 * n + 12 * loops + 64);
  const cuts = startCuts(form, outline.points);
  const rings = addLayers(mesh, layers, cuts, false);
  const holeRings = { top: -1, bottom: -1 };
  for (const side of ['bottom', 'top'] as const) {
    const layer = side === 'top' ? layers[layers.length - 1] : layers[0];
    const ring = side === 'top' ? rings[rings.length - 1] : rings[0];
    const flip = side === 'bottom';
    const hub = hubs.find((one) => one.side === side);
    const face = turnPoints(cuts(layer.share), layer.turn);
    if (!hub) {
      holeRings[side] = mesh.addRing(holePoints, layer.z, 0, 0);
      mesh.addCap(fillWheelFace(face, outline.perTooth, holes), n, ring, holeRings[side], flip);
      continue;
    }
    const loop = hubLoops[side];
    const end = side === 'top' ? faceWidth + hub.length : -hub.length;
    const foot = mesh.addRing(loop, layer.z, 0, 0);
    const head = mesh.addRing(loop, end, 0, 0);
    holeRings[side] = mesh.addRing(holePoints, end, 0, 0);
    mesh.addCap(fillWheelFace(face, outline.perTooth, [loop]), n, ring, foot, flip);
    if (side === 'top') mesh.addWall(foot, head, loop.length / 2, false);
    else mesh.addWall(head, foot, loop.length / 2, false);
    mesh.addCap(fillLoop(loop, holes), loop.length / 2, head, holeRings[side], flip);
  }
  let start = 0;
  for (const hole of holes) {
    mesh.addWall(holeRings.bottom + start, holeRings.top + start, hole.length / 2, true);
    start += hole.length / 2;
  }
  return mesh.finish();
}

function joinLoops(loops: readonly Float64Array[]): Float64Array {
  const joined = new Float64Array(loops.reduce((sum, loop) => sum + loop.length, 0));
  let end = 0;
  for (const loop of loops) {
    joined.set(loop, end);
    end += loop.length;
  }
  return joined;
}

/** Round through holes that tell trial parts apart, side by side on an arc halfway between bore and root. */
function traceMarks(form: WheelForm, chordError: number): Float64Array[] {
  const { marks } = form;
  if (!marks || marks.count === 0) return [];
  const radius = findMarkCircle(form);
  const apart = (1.6 * marks.diameter) / radius;
  return Array.from({ length: marks.count }, (_, k) => {
    const angle = Math.PI / 2 + (k - (marks.count - 1) / 2) * apart;
    const circle = traceCircle(marks.diameter / 2, chordError);
    for (let i = 0; i < circle.length; i += 2) {
      circle[i] += radius * Math.cos(angle);
      circle[i + 1] += radius * Math.sin(angle);
    }
    return circle;
  });
}

function buildRing(form: WheelForm, chordError: number): Mesh {
  const outline = traceOutline(form.spec, chordError);
  const layers = listLayers(form, chordError);
  const rimDiameter = form.rimDiameter ?? 0;
  // The rim's chords run inside it: coarse ones would cut into the roots of a thin wall.
  const wall = (rimDiameter - findDiameters(form.spec).root) / 2;
  const rim = traceCircle(rimDiameter / 2, Math.min(chordError, wall / 4));
  const n = outline.points.length / 2;
  const rimCount = rim.length / 2;
  const mesh = startMesh(n * layers.length + 2 * rimCount, 2 * n * layers.length + 8 * n + 8 * rimCount + 64);
  const cuts = startCuts(form, outline.points);
  const rings = addLayers(mesh, layers, cuts, true);
  const rims: number[] = [];
  for (const at of [0, layers.length - 1]) {
    const layer = layers[at];
    const rimRing = mesh.addRing(rim, layer.z, 0, 0);
    rims.push(rimRing);
    const face = turnPoints(cuts(layer.share), layer.turn);
    mesh.addCap(fillRingFace(rim, face, outline.perTooth), rimCount, rimRing, rings[at], at === 0);
  }
  mesh.addWall(rims[0], rims[1], rimCount, false);
  return mesh.finish();
}

/** A rack's helix shears it along the bar, so two layers are exact. */
function buildRack(form: WheelForm, chordError: number): Mesh {
  const outline = traceOutline(form.spec, chordError);
  const n = outline.points.length / 2;
  const mesh = startMesh(2 * n, 4 * n + 16);
  const moved = form.faceWidth * Math.tan(form.spec.helixAngle);
  const low = mesh.addRing(outline.points, 0, 0, 0);
  const high = mesh.addRing(outline.points, form.faceWidth, 0, moved);
  const triples = fillRackFace(outline.points, outline.perTooth);
  mesh.addCap(triples, n, low, 0, true);
  mesh.addCap(triples, n, high, 0, false);
  mesh.addWall(low, high, n, false);
  return mesh.finish();
}

function hubLoop(form: WheelForm, side: 'top' | 'bottom', chordError: number): Float64Array {
  const hub = form.hubs.find((one) => one.side === side);
  return hub ? traceCircle(hub.diameter / 2, chordError) : new Float64Array(0);
}

/**
 * Levels from the lower to the upper face. Between two of them a point on radius r goes straight where the helix
 * goes round: r Δ²/8 off for a turn Δ, so Δ ≤ √(8 e/r). A turned section joined straight also loses area, Δ²/6 of it
 * at the mean, which the second bound keeps below 1 part in 30,000; a ring loses a multiple of it, so it gets more.
 */
function listLayers(form: WheelForm, chordError: number): Layer[] {
  const { spec, faceWidth, chamfer } = form;
  const { reference, tip, root } = findDiameters(spec);
  const twist = (2 * Math.tan(spec.helixAngle)) / reference;
  const step = Math.min(
    Math.sqrt((16 * chordError) / Math.max(tip, root)),
    spec.kind === 'internal' ? 0.005 : 0.014,
  );
  const levels = chamfer > 0 ? [0, chamfer, faceWidth - chamfer, faceWidth] : [0, faceWidth];
  const shares = chamfer > 0 ? [1, 0, 0, 1] : [0, 0];
  const layers: Layer[] = [];
  for (let k = 0; k + 1 < levels.length; k++) {
    const height = levels[k + 1] - levels[k];
    const count = Math.max(1, Math.ceil(Math.abs(twist * height) / step));
    for (let i = k === 0 ? 0 : 1; i <= count; i++) {
      const z = i === count ? levels[k + 1] : levels[k] + (height * i) / count;
      layers.push({
        z,
        turn: twist * z,
        share: shares[k] + ((shares[k + 1] - shares[k]) * i) / count,
      });
    }
  }
  return layers;
}

function addLayers(
  mesh: MeshBuilder,
  layers: readonly Layer[],
  cuts: (share: number) => Float64Array,
  isHole: boolean,
): number[] {
  const rings = layers.map(({ z, turn, share }) => mesh.addRing(cuts(share), z, turn, 0));
  const count = cuts(0).length / 2;
  for (let k = 0; k + 1 < rings.length; k++) mesh.addWall(rings[k], rings[k + 1], count, isHole);
  return rings;
}

/** The section at a chamfer's share: 0 whole, 1 as at the face. Those two are made once. */
function startCuts(form: WheelForm, whole: Float64Array): (share: number) => Float64Array {
  const { spec, chamfer } = form;
  const isInternal = spec.kind === 'internal';
  const limit = findDiameters(spec).tip / 2 + (isInternal ? chamfer : -chamfer);
  const atFace = chamfer > 0 ? limitRadii(whole, limit, 1, isInternal) : whole;
  return (share) => {
    if (share === 0) return whole;
    return share === 1 ? atFace : limitRadii(whole, limit, share, isInternal);
  };
}

/** Points beyond the limit circle go `share` of the way to it along their radius. */
function limitRadii(points: Float64Array, limit: number, share: number, isInternal: boolean): Float64Array {
  const moved = points.slice();
  const square = limit * limit;
  for (let k = 0; k < points.length; k += 2) {
    const found = points[k] * points[k] + points[k + 1] * points[k + 1];
    if (isInternal ? found >= square : found <= square) continue;
    const factor = 1 + share * (limit / Math.sqrt(found) - 1);
    moved[k] *= factor;
    moved[k + 1] *= factor;
  }
  return moved;
}

function turnPoints(points: Float64Array, turn: number): Float64Array {
  if (turn === 0) return points;
  const c = Math.cos(turn);
  const s = Math.sin(turn);
  const turned = new Float64Array(points.length);
  for (let k = 0; k < points.length; k += 2) {
    turned[k] = points[k] * c - points[k + 1] * s;
    turned[k + 1] = points[k] * s + points[k + 1] * c;
  }
  return turned;
}
