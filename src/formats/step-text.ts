/** The data section of a STEP file under construction (ISO 10303-21). */
export interface StepText {
  /** Adds an entity; returns its name, such as #12 */
  readonly add: (entity: string) => string;
  /** As `add`, but what was written before is named again */
  readonly share: (entity: string) => string;
  readonly number: (value: number) => string;
  /** A text in apostrophes, what ISO 10303-21 does not allow there escaped */
  readonly quote: (text: string) => string;
  readonly finish: () => string;
}

export function startStepText(): StepText {
  const lines: string[] = [];
  const known = new Map<string, string>();
  const add = (entity: string): string => {
    const name = `#${lines.length + 1}`;
    lines.push(`${name}=${entity};`);
    return name;
  };
  return {
    add,
    share: (entity) => {
      const found = known.get(entity);
      if (found) return found;
      const name = add(entity);
      known.set(entity, name);
      return name;
    },
    number: writeNumber,
    quote: (text) => `'${escapeText(text)}'`,
    finish: () => lines.join('\n'),
  };
}

/** A real with nine decimals, a millionth of a micrometer; always with its point, never with a negative zero. */
function writeNumber(value: number): string {
  if (!Number.isFinite(value)) throw new Error(`the number ${value} in a STEP file`);
  const rounded = Math.round(value * 1e9) / 1e9;
  if (rounded === 0) return '0.';
  const text = String(rounded);
  if (text.includes('e')) return rounded.toFixed(9);
  return text.includes('.') ? text : `${text}.`;
}

/** Apostrophes and backslashes doubled, other characters as 16 or 32 bits in hexadecimal. */
function escapeText(text: string): string {
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
  return escaped;
}

function hex(code: number, digits: number): string {
  return code.toString(16).toUpperCase().padStart(digits, '0');
}
