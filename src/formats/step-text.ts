/** The data section of a STEP file under construction (ISO 10303-21). */
export interface StepText {
  /** Adds an entity; returns its name, such as #12 */
  readonly add: (entity: string) => string;
  /** As `add`, but what was written before is named again */
  readonly share: (entity: string) => string;
  /** Adds a point, as `add` would: most of a file is points, so their digits go straight into its bytes */
  readonly addPoint: (x: number, y: number, z: number) => string;
  readonly number: (value: number) => string;
  /** The file's bytes: head, data, tail */
  readonly finish: (tail: string) => Uint8Array;
}

export function startStepText(head: string): StepText {
  const encoder = new TextEncoder();
  const known = new Map<string, string>();
  // Knots and directions come again and again.
  const numbers = new Map<number, string>();
  const digits = new Uint8Array(longestPoint);
  let bytes = new Uint8Array(usualSize);
  let at = 0;
  let count = 0;
  const makeRoom = (more: number): void => {
    if (at + more <= bytes.length) return;
    const larger = new Uint8Array(Math.max(2 * bytes.length, at + more));
    larger.set(bytes.subarray(0, at));
    bytes = larger;
  };
  // Entities are ASCII: a character is a byte.
  const put = (text: string): void => {
    makeRoom(text.length);
    at += encoder.encodeInto(text, bytes.subarray(at)).written;
  };
  const add = (entity: string): string => {
    const name = `#${++count}`;
    put(`${name}=${entity};\n`);
    return name;
  };
  put(head);
  return {
    add,
    share: (entity) => {
      const found = known.get(entity);
      if (found) return found;
      const name = add(entity);
      known.set(entity, name);
      return name;
    },
    addPoint: (x, y, z) => {
      const name = `#${++count}`;
      put(name);
      put("=CARTESIAN_POINT('',(");
      makeRoom(longestPoint);
      at = putNumber(bytes, at, x);
      bytes[at++] = comma;
      at = putNumber(bytes, at, y);
      bytes[at++] = comma;
      at = putNumber(bytes, at, z);
      put('));\n');
      return name;
    },
    number: (value) => {
      let text = numbers.get(value);
      if (text === undefined) {
        text = String.fromCharCode(...digits.subarray(0, putNumber(digits, 0, value)));
        numbers.set(value, text);
      }
      return text;
    },
    finish: (tail) => {
      put(tail);
      return bytes.subarray(0, at);
    },
  };
}

/** Bytes to begin with: a small wheel's file. */
const usualSize = 1 << 20;

const comma = 44;

/** Three numbers of sign, seven digits, point and nine decimals, and what stands between them. */
const longestPoint = 64;

/** No length here comes near it, and below it a whole number of picometers is exact. */
const farthest = 1e6;

/** A real with nine decimals, a millionth of a micrometer, without trailing zeros; always its point, no negative zero. */
function putNumber(bytes: Uint8Array, from: number, value: number): number {
  if (!(Math.abs(value) < farthest)) throw new Error(`the number ${value} in a STEP file`);
  let at = from;
  const billionths = Math.round(Math.abs(value) * 1e9);
  if (value < 0 && billionths > 0) bytes[at++] = 45;
  const whole = Math.floor(billionths / 1e9);
  let power = 1;
  while (power * 10 <= whole) power *= 10;
  for (let left = whole; power >= 1; power /= 10) {
    const digit = Math.floor(left / power);
    bytes[at++] = 48 + digit;
    left -= digit * power;
  }
  bytes[at++] = 46;
  let rest = billionths - whole * 1e9;
  for (let place = 1e8; rest > 0; place /= 10) {
    const digit = (rest / place) | 0;
    bytes[at++] = 48 + digit;
    rest -= digit * place;
  }
  return at;
}

/** A text in apostrophes: those within and backslashes doubled, other characters as 16 or 32 bits in hexadecimal. */
export function quoteText(text: string): string {
  let escaped = '';
  for (const letter of text) {
    const code = letter.codePointAt(0) ?? 63;
    if (letter === "'" || letter === '\\') escaped += letter + letter;
    else if (code >= 32 && code < 127) escaped += letter;
    // Half of a pair is no character.
    else if (code >= 0xd800 && code <= 0xdfff) escaped += '?';
    else if (code > 0xffff) escaped += `\\X4\\${hex(code, 8)}\\X0\\`;
    else escaped += `\\X2\\${hex(code, 4)}\\X0\\`;
  }
  return `'${escaped}'`;
}

function hex(code: number, digits: number): string {
  return code.toString(16).toUpperCase().padStart(digits, '0');
}
