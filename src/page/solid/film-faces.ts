import { BufferAttribute, BufferGeometry, FrontSide, ShaderMaterial, Vector3 } from 'three';
import type { DrawnFaces } from '../../index.ts';

export function faceGeometry({ positions, triangles }: DrawnFaces): BufferGeometry {
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(positions, 3));
  geometry.setIndex(new BufferAttribute(triangles, 1));
  return geometry;
}

/** Matte film: a face is lighter the more it looks up and left, and nothing shines. */
export function filmMaterial(): ShaderMaterial {
  return new ShaderMaterial({
    uniforms: { lit: { value: new Vector3() }, shade: { value: new Vector3() } },
    vertexShader: `
varying vec3 seen;
void main() {
  vec4 at = modelViewMatrix * vec4(position, 1.0);
  seen = at.xyz;
  gl_Position = projectionMatrix * at;
}`,
    fragmentShader: `
uniform vec3 lit;
uniform vec3 shade;
varying vec3 seen;
void main() {
  vec3 normal = normalize(cross(dFdx(seen), dFdy(seen)));
  float light = 0.5 + 0.5 * dot(normal, vec3(-0.41, 0.76, 0.5));
  gl_FragColor = vec4(mix(shade, lit, light), 1.0);
}`,
    side: FrontSide,
    // Faces step back behind the lines that end them.
    polygonOffset: true,
    polygonOffsetFactor: 1.5,
    polygonOffsetUnits: 2,
  });
}

/** Film hatched at 45° where it was cut, lines as far apart as `spacing` (mm) says. Hatching keeps to the part. */
export function hatchMaterial(): ShaderMaterial {
  return new ShaderMaterial({
    uniforms: {
      film: { value: new Vector3() },
      ink: { value: new Vector3() },
      slope: { value: new Vector3() },
      spacing: { value: 1 },
      pen: { value: 1 },
    },
    vertexShader: `
uniform vec3 slope;
uniform float spacing;
varying float lines;
void main() {
  lines = dot(position, slope) / spacing;
  gl_Position = projectionMatrix * modelViewMatrix * vec4(position, 1.0);
}`,
    fragmentShader: `
uniform vec3 film;
uniform vec3 ink;
uniform float pen;
varying float lines;
void main() {
  float wide = length(vec2(dFdx(lines), dFdy(lines)));
  float distance = abs(fract(lines) - 0.5) / max(wide, 1e-6);
  float cover = clamp(pen * 0.5 + 0.5 - distance, 0.0, 1.0);
  // Seen nearly edge on, lines run together: then they fade to their mean.
  cover = mix(cover, pen * wide, smoothstep(0.3, 0.6, wide));
  gl_FragColor = vec4(mix(film, ink, min(cover, 1.0)), 1.0);
}`,
    polygonOffset: true,
    polygonOffsetFactor: 1.5,
    polygonOffsetUnits: 2,
  });
}
