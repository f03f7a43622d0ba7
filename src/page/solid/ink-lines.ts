import {
  BufferAttribute,
  type BufferGeometry,
  InstancedBufferGeometry,
  InstancedInterleavedBuffer,
  InterleavedBufferAttribute,
  ShaderMaterial,
  Vector2,
  Vector3,
} from 'three';

/** Segments as strips as wide as a pen, each drawn from one small quad. */
export function lineGeometry(segments: Float32Array, hasNormals: boolean): BufferGeometry {
  const geometry = new InstancedBufferGeometry();
  // x: which end; y: which side of the line.
  geometry.setAttribute(
    'position',
    new BufferAttribute(Float32Array.of(0, -1, 0, 1, -1, 0, 1, 1, 0, 0, 1, 0), 3),
  );
  geometry.setIndex([0, 1, 2, 0, 2, 3]);
  const stride = hasNormals ? 12 : 6;
  const buffer = new InstancedInterleavedBuffer(segments, stride, 1);
  const names = ['start', 'end', ...(hasNormals ? ['oneNormal', 'otherNormal'] : [])];
  names.forEach((name, k) => {
    geometry.setAttribute(name, new InterleavedBufferAttribute(buffer, 3, 3 * k));
  });
  geometry.instanceCount = segments.length / stride;
  return geometry;
}

/**
 * Ink for those strips, smooth at its edges without multisampling. With normals, a segment is drawn only where the
 * surface turns away from the eye at it: one of its faces is seen and the other isn't. Dashes follow ISO 128-2's
 * long-dashed dotted line.
 */
export function lineMaterial(kind: 'edge' | 'turning' | 'axis'): ShaderMaterial {
  return new ShaderMaterial({
    uniforms: {
      ink: { value: new Vector3() },
      sheet: { value: new Vector2(1, 1) },
      pen: { value: 2 },
    },
    defines: { ...(kind === 'turning' ? { TURNING: 1 } : {}), ...(kind === 'axis' ? { DASHED: 1 } : {}) },
    vertexShader: placeStrip,
    fragmentShader: inkStrip,
    transparent: true,
    depthWrite: false,
  });
}

const placeStrip = `
attribute vec3 start;
attribute vec3 end;
#ifdef TURNING
attribute vec3 oneNormal;
attribute vec3 otherNormal;
#endif
uniform vec2 sheet;
uniform float pen;
varying vec2 place;
varying float span;

void main() {
  // The eye is far away: it looks along the same line at every point.
  vec3 toEye = vec3(modelViewMatrix[0][2], modelViewMatrix[1][2], modelViewMatrix[2][2]);
#ifdef TURNING
  if (dot(oneNormal, toEye) * dot(otherNormal, toEye) > 0.0) {
    gl_Position = vec4(2.0, 2.0, 2.0, 1.0);
    return;
  }
#endif
  vec4 a = projectionMatrix * modelViewMatrix * vec4(start, 1.0);
  vec4 b = projectionMatrix * modelViewMatrix * vec4(end, 1.0);
  vec2 way = (b.xy - a.xy) * sheet * 0.5;
  span = length(way);
  vec2 along = span > 1e-4 ? way / span : vec2(1.0, 0.0);
  vec2 across = vec2(-along.y, along.x);
  float reach = pen * 0.5 + 0.75;
  place = vec2(position.x * span + (2.0 * position.x - 1.0) * reach, position.y * reach);
  vec4 at = mix(a, b, position.x);
  at.xy += ((2.0 * position.x - 1.0) * along + position.y * across) * reach * 2.0 / sheet;
  at.z -= 2e-4;
  gl_Position = at;
}`;

const inkStrip = `
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
  gl_FragColor = vec4(ink, cover);
}`;
