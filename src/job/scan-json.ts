import { Fail } from '../fail.ts';
import { formatPath, type Path } from './format-path.ts';

/**
 * Reads a JSON text from end to end and throws a Fail that a person can act on, with line and column: what
 * `JSON.parse` refuses, and what it would take in silence and lose (a field that stands twice, a number too large
 * to hold, nesting deeper than any job).
 *
 * `visit` is called with the path of every value and where it starts, objects and lists before what they hold. The
 * path is reused: copy it to keep it.
 *
 * Throws Fail `not-json`, or `bad-value` for a text that is JSON but loses something.
 */
export function scanJson(text: string, visit: (path: Path, offset: number) => void = () => {}): void {
  const path: (string | number)[] = [];
  let at = 0;
  skipSpace();
  if (at === text.length) {
    throw notJson('the file is empty', 'Save the job again, or start from one of the demo jobs.');
  }
  readValue();
  skipSpace();
  if (at < text.length) {
    throw notJson(`there is more after the end of the job: ${show()}`, 'Remove what follows the last }.');
  }

  function readValue(): void {
    visit(path, at);
    const start = text[at];
    if (start === '{') readObject();
    else if (start === '[') readList();
    else if (start === '"') readString();
    else if (start === '-' || (start >= '0' && start <= '9')) readNumber();
    else readWord();
  }

  function readObject(): void {
    checkDepth();
    const keys = new Set<string>();
    at++;
    skipSpace();
    if (text[at] === '}') {
      at++;
      return;
    }
    for (;;) {
      if (text[at] !== '"') throw explainKey();
      const keyAt = at;
      const key = readString();
      path.push(key);
      if (keys.has(key)) {
        throw new Fail(
          'bad-value',
          formatPath(path),
          `the field stands twice in one place (${position(keyAt)})`,
          'Keep the one that is right and remove the other.',
          locate(keyAt),
        );
      }
      keys.add(key);
      skipSpace();
      if (text[at] !== ':') throw notJson(`a colon is missing after "${key}"`, 'Write "field": value.');
      at++;
      skipSpace();
      readValue();
      path.pop();
      skipSpace();
      if (text[at] === '}') {
        at++;
        return;
      }
      readComma('}');
    }
  }

  function readList(): void {
    checkDepth();
    at++;
    skipSpace();
    if (text[at] === ']') {
      at++;
      return;
    }
    for (let index = 0; ; index++) {
      path.push(index);
      readValue();
      path.pop();
      skipSpace();
      if (text[at] === ']') {
        at++;
        return;
      }
      readComma(']');
    }
  }

  function readComma(close: string): void {
    if (text[at] !== ',') {
      if (at >= text.length) throw cutOff();
      throw notJson(`a comma or ${close} is missing before ${show()}`, 'Put it in.');
    }
    at++;
    if (close === '}' && /^\d/.test(text.slice(at, at + 1))) {
      at--;
      throw notJson('a decimal comma in a number', 'In a job file write numbers with a point: 12.44');
    }
    skipSpace();
    if (text[at] === close) throw notJson(`a comma too many before ${close}`, 'Remove the comma.');
  }

  function readString(): string {
    const start = at++;
    for (;;) {
      const code = text.charCodeAt(at);
      if (Number.isNaN(code)) throw cutOff();
      if (code === 0x22) break;
      if (code < 0x20)
        throw notJson('a line or tab ends inside a text', 'Close the text with " on its own line.');
      if (code === 0x5c) {
        const escaped = /^\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4})/.exec(text.slice(at, at + 6));
        if (!escaped)
          throw notJson(`\\${text[at + 1] ?? ''} means nothing in a text`, 'Write \\\\ for one \\.');
        at += escaped[0].length;
      } else at++;
    }
    at++;
    return JSON.parse(text.slice(start, at)) as string;
  }

  function readNumber(): void {
    numberPattern.lastIndex = at;
    const found = numberPattern.exec(text);
    const typed = found ? found[0] : text[at];
    const after = text[at + typed.length];
    if (!found || (after !== undefined && /[\w.+-]/.test(after))) {
      if (text.startsWith('-Infinity', at)) readWord();
      throw notJson(
        `${show()} is not how a number is written`,
        'Write digits with one point, such as 0.5 or 12.44.',
      );
    }
    if (!Number.isFinite(Number(typed))) {
      throw new Fail(
        'bad-value',
        formatPath(path),
        `${clip(typed)} is too large to be a number (${position(at)})`,
        'Look at the value again: a decimal point may be lost.',
        locate(at),
      );
    }
    at += typed.length;
  }

  function readWord(): void {
    if (at >= text.length) throw cutOff();
    const word = /^-?[A-Za-z_]\w*/.exec(text.slice(at, at + 40))?.[0];
    if (word === 'true' || word === 'false' || word === 'null') {
      at += word.length;
      return;
    }
    const bare = word?.replace('-', '').toLowerCase();
    if (bare === 'nan' || bare === 'infinity') {
      throw notJson(`${word} is not a number`, 'Leave the field out where there is no value.');
    }
    if (word) throw notJson(`${word} stands without quotation marks`, `Write "${word}".`);
    throw explainCharacter();
  }

  function explainKey(): Fail {
    if (at >= text.length) return cutOff();
    const word = /^[A-Za-z_]\w*/.exec(text.slice(at, at + 40))?.[0];
    if (word) return notJson(`the field ${word} stands without quotation marks`, `Write "${word}":`);
    return explainCharacter();
  }

  function explainCharacter(): Fail {
    const found = text[at];
    if (found === '/' || found === '#') {
      return notJson('a comment', 'A job file holds no comments: put the words into a "notes" field.');
    }
    if (found === "'" || found === '‘' || found === '’' || found === '“' || found === '”' || found === '„') {
      return notJson(`${found} is not the quotation mark JSON knows`, 'Use straight double ones: "text".');
    }
    if (/[\s\u200b-\u200f\u2060\ufeff]/.test(found)) {
      const code = found.charCodeAt(0).toString(16).toUpperCase().padStart(4, '0');
      return notJson(`an invisible character, U+${code}`, 'Delete it and type an ordinary space.');
    }
    return notJson(`${show()} can't stand here`, 'This is not a JSON text at this place: look at the line.');
  }

  function skipSpace(): void {
    for (;;) {
      const code = text.charCodeAt(at);
      if (code !== 0x20 && code !== 0x0a && code !== 0x0d && code !== 0x09) break;
      at++;
    }
    if (text[at] === '/' && (text[at + 1] === '/' || text[at + 1] === '*')) throw explainCharacter();
  }

  function checkDepth(): void {
    if (path.length < deepest) return;
    throw new Fail(
      'bad-value',
      formatPath(path.slice(0, 4)),
      `lists and groups stand more than ${deepest} deep in one another (${position(at)})`,
      'No job needs that: look whether the file is damaged.',
      locate(at),
    );
  }

  function cutOff(): Fail {
    at = text.length;
    return notJson(
      'the file ends before the job does',
      'It may have been cut off: copy it again, or close every { with } and every [ with ].',
    );
  }

  function notJson(message: string, remedy: string): Fail {
    const { line, column } = locate(at);
    return new Fail('not-json', `line ${line}, column ${column}`, message, remedy, { line, column });
  }

  function show(): string {
    return `"${clip(text.slice(at, at + 20).split(/\s/, 1)[0])}"`;
  }

  function position(offset: number): string {
    const { line, column } = locate(offset);
    return `line ${line}, column ${column}`;
  }

  function locate(offset: number): { line: number; column: number } {
    return findLine(text, offset);
  }
}

/** Line and column of an offset, both from 1. */
export function findLine(text: string, offset: number): { line: number; column: number } {
  let line = 1;
  let start = 0;
  for (let k = text.indexOf('\n'); k >= 0 && k < offset; k = text.indexOf('\n', k + 1)) {
    line++;
    start = k + 1;
  }
  return { line, column: offset - start + 1 };
}

// A job nests seven deep; unknown fields may go deeper, and the writer walks as deep as this.
const deepest = 50;
const numberPattern = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;

function clip(text: string): string {
  return text.length > 24 ? `${text.slice(0, 24)}…` : text;
}
