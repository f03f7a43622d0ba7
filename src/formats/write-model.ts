import type { Mesh } from '../solid/mesh.ts';

/**
 * The 3MF model part of one object as UTF-8 bytes: `head`, the mesh's vertices and triangles, `tail`.
 *
 * Coordinates are rounded to six decimals of a mm (a nanometer, far below any chord error) without exponents, trailing
 * zeros or a negative zero. Digits go straight into the bytes: a string for each of a hundred thousand elements
 * costs several times as much. A coordinate that is not finite or beyond 1 km is a plain Error.
 */
export function writeModel(head: string, mesh: Mesh, tail: string): Uint8Array {
  const encoder = new TextEncoder();
  const parts = [head, tail].map((text) => encoder.encode(text));
  const { positions, triangles } = mesh;
  const bytes = new Uint8Array(
    parts[0].length +
      parts[1].length +
      (positions.length / 3) * longestVertex +
      (triangles.length / 3) * longestTriangle +
      between.length,
  );
  bytes.set(parts[0]);
  let at = parts[0].length;
  const put = (code: Uint8Array): void => {
    for (let k = 0; k < code.length; k++) bytes[at++] = code[k];
  };
  for (let k = 0; k < positions.length; k += 3) {
    put(vertexX);
    at = putCoordinate(bytes, at, positions[k]);
    put(vertexY);
    at = putCoordinate(bytes, at, positions[k + 1]);
    put(vertexZ);
    at = putCoordinate(bytes, at, positions[k + 2]);
    put(end);
  }
  put(between);
  for (let k = 0; k < triangles.length; k += 3) {
    put(triangle1);
    at = putWhole(bytes, at, triangles[k]);
    put(triangle2);
    at = putWhole(bytes, at, triangles[k + 1]);
    put(triangle3);
    at = putWhole(bytes, at, triangles[k + 2]);
    put(end);
  }
  bytes.set(parts[1], at);
  return bytes.subarray(0, at + parts[1].length);
}

const ascii = (text: string): Uint8Array => Uint8Array.from(text, (letter) => letter.charCodeAt(0));
const vertexX = ascii('<vertex x="');
const vertexY = ascii('" y="');
const vertexZ = ascii('" z="');
const triangle1 = ascii('<triangle v1="');
const triangle2 = ascii('" v2="');
const triangle3 = ascii('" v3="');
const end = ascii('"/>\n');
const between = ascii('</vertices><triangles>\n');

// Sign, seven digits, point and six decimals for a coordinate; ten digits for an index.
const longestVertex = vertexX.length + vertexY.length + vertexZ.length + end.length + 3 * 15;
const longestTriangle = triangle1.length + triangle2.length + triangle3.length + end.length + 3 * 10;

const farthest = 1e6;

function putCoordinate(bytes: Uint8Array, from: number, value: number): number {
  if (!(Math.abs(value) < farthest)) throw new Error(`coordinate ${value}`);
  let at = from;
  const nanometers = Math.round(Math.abs(value) * 1e6);
  if (value < 0 && nanometers > 0) bytes[at++] = 45;
  const whole = Math.floor(nanometers / 1e6);
  at = putWhole(bytes, at, whole);
  let rest = nanometers - whole * 1e6;
  if (rest === 0) return at;
  bytes[at++] = 46;
  for (let place = 1e5; rest > 0; place /= 10) {
    const digit = (rest / place) | 0;
    bytes[at++] = 48 + digit;
    rest -= digit * place;
  }
  return at;
}

function putWhole(bytes: Uint8Array, from: number, value: number): number {
  let length = 1;
  for (let power = 10; power <= value; power *= 10) length++;
  let rest = value;
  for (let k = from + length - 1; k >= from; k--) {
    const tenth = Math.floor(rest / 10);
    bytes[k] = 48 + rest - 10 * tenth;
    rest = tenth;
  }
  return from + length;
}
