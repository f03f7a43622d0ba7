import {
  BufferAttribute,
  BufferGeometry,
  CustomBlending,
  DynamicDrawUsage,
  MaxEquation,
  MinEquation,
  ShaderMaterial,
  Vector2,
  Vector3,
} from 'three';
import type { SolidDrawing } from '../../index.ts';
import type { Ground } from './read-ground.ts';

/** Segments as strips as wide as a pen, and which of them are drawn. */
export interface InkLines {
  readonly geometry: BufferGeometry;
  /** Chooses the segments that are seen from where the eye is: a direction from the part to it, in its own axes */
  readonly choose: (x: number, y: number, z: number) => void;
}

/**
 * The edges of a solid. What the part itself is sure to hide isn't drawn at all: a sharp edge whose faces both look
 * away, and any other but where the surface turns away. Four corners a strip rather than one quad repeated: drawing in
 * software takes each repetition for a picture of its own.
 */
export function edgeLines({ sharp, bent }: SolidDrawing['edges']): InkLines {
  const sharpCount = sharp.length / 12;
  const count = sharpCount + bent.length / 12;
  const all = new Float32Array(12 * count);
  all.set(sharp);
  all.set(bent, sharp.length);
  const geometry = layStrips(all, 12);
  const index = new BufferAttribute(new Uint32Array(6 * count), 1).setUsage(DynamicDrawUsage);
  geometry.setIndex(index);
  return {
    geometry,
    choose(x, y, z) {
      let at = 0;
      for (let k = 0, from = 0; k < count; k++, from += 12) {
        const one = all[from + 6] * x + all[from + 7] * y + all[from + 8] * z;
        const other = all[from + 9] * x + all[from + 10] * y + all[from + 11] * z;
        if (k < sharpCount ? one < 0 && other < 0 : one * other > 0) continue;
        at = putStrip(index.array, at, k);
      }
      geometry.setDrawRange(0, at);
      index.clearUpdateRanges();
      index.addUpdateRange(0, at);
      index.needsUpdate = true;
    },
  };
}

/** Plain segments, all of them drawn from everywhere: x0 y0 z0 x1 y1 z1, … */
export function plainLines(segments: Float32Array): InkLines {
  const geometry = layStrips(segments, 6);
  const index = new Uint32Array(segments.length);
  for (let k = 0, at = 0; 6 * k < segments.length; k++) at = putStrip(index, at, k);
  geometry.setIndex(new BufferAttribute(index, 1));
  return { geometry, choose() {} };
}

function layStrips(segments: Float32Array, stride: number): BufferGeometry {
  const count = segments.length / stride;
  const starts = new Float32Array(12 * count);
  const ends = new Float32Array(12 * count);
  const corners = new Float32Array(8 * count);
  for (let k = 0; k < count; k++) {
    for (let corner = 0; corner < 4; corner++) {
      for (let i = 0; i < 3; i++) {
        starts[12 * k + 3 * corner + i] = segments[stride * k + i];
        ends[12 * k + 3 * corner + i] = segments[stride * k + 3 + i];
      }
    }
    corners.set(quad, 8 * k);
  }
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(starts, 3));
  geometry.setAttribute('end', new BufferAttribute(ends, 3));
  geometry.setAttribute('corner', new BufferAttribute(corners, 2));
  return geometry;
}

/** x: which end; y: which side of the line. */
const quad = [0, -1, 1, -1, 1, 1, 0, 1];

function putStrip(index: { [at: number]: number }, at: number, k: number): number {
  index[at] = 4 * k;
  index[at + 1] = 4 * k + 1;
  index[at + 2] = 4 * k + 2;
  index[at + 3] = 4 * k;
  index[at + 4] = 4 * k + 2;
  index[at + 5] = 4 * k + 3;
  return at + 6;
}

/**
 * Ink for those strips, smooth at its edges without multisampling. Dashes follow ISO 128-2's long-dashed dotted line.
 */
export function lineMaterial(kind: 'edge' | 'axis'): ShaderMaterial {
  return new ShaderMaterial({
    uniforms: {
      film: { value: new Vector3() },
      ink: { value: new Vector3() },
      sheet: { value: new Vector2(1, 1) },
      pen: { value: 2 },
    },
    defines: kind === 'axis' ? { DASHED: 1 } : {},
    vertexShader: placeStrip,
    fragmentShader: inkStrip,
    transparent: true,
    blending: CustomBlending,
    blendEquation: MinEquation,
    depthWrite: false,
  });
}

/**
 * Inks a line material for a ground. Where strips overlap, at every joint, the stronger of two inks stays: added up,
 * their soft edges would make beads of the joints.
 */
export function inkLines(material: ShaderMaterial, { film, ink, isDark }: Ground): void {
  material.uniforms.film.value.copy(film);
  material.uniforms.ink.value.copy(ink);
  material.blendEquation = isDark ? MaxEquation : MinEquation;
}

const placeStrip = `
attribute vec3 end;
attribute vec2 corner;
uniform vec2 sheet;
uniform float pen;
varying vec2 place;
varying float span;

void main() {
  vec4 a = projectionMatrix * modelViewMatrix * vec4(position, 1.0);
  vec4 b = projectionMatrix * modelViewMatrix * vec4(end, 1.0);
  vec2 way = (b.xy - a.xy) * sheet * 0.5;
  span = length(way);
  vec2 along = span > 1e-4 ? way / span : vec2(1.0, 0.0);
  vec2 across = vec2(-along.y, along.x);
  float reach = pen * 0.5 + 0.5;
  place = vec2(corner.x * span + (2.0 * corner.x - 1.0) * reach, corner.y * reach);
  vec4 at = mix(a, b, corner.x);
  at.xy += ((2.0 * corner.x - 1.0) * along + corner.y * across) * reach * 2.0 / sheet;
  at.z -= 2e-4;
  gl_Position = at;
}`;

const inkStrip = `
uniform vec3 film;
uniform vec3 ink;
uniform float pen;
varying vec2 place;
varying float span;

void main() {
  float beyond = max(max(-place.x, place.x - span), 0.0);
  float distance = length(vec2(beyond, place.y));
  float cover = clamp(pen * 0.5 + 0.5 - distance, 0.0, 1.0);
#ifdef DASHED
  float step = mod(place.x, 33.0 * pen);
  if (step > 24.0 * pen && (step < 28.0 * pen || step > 29.0 * pen)) discard;
#endif
  if (cover <= 0.0) discard;
  gl_FragColor = vec4(mix(film, ink, cover), 1.0);
}`;
