import { crc32, inflateRawSync } from 'node:zlib';
import type { Mesh } from '../../src/solid/mesh.ts';

export interface ReadThreeMf {
  readonly parts: readonly string[];
  readonly unit: string;
  readonly name: string;
  readonly metadata: Readonly<Record<string, string>>;
  readonly mesh: Mesh;
  readonly model: string;
}

/**
 * A reader of 3MF that shares no code with the writer: finds the model by its relationship, as the standard asks,
 * checks that the XML is well formed and that every prefix is declared.
 */
export function readThreeMf(bytes: Uint8Array): ReadThreeMf {
  const parts = unzip(Buffer.from(bytes));
  const types = parseXml(textOf(parts, '[Content_Types].xml'));
  const relation = parseXml(textOf(parts, '_rels/.rels')).find(
    (tag) => tag.attributes.Type === 'http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel',
  );
  const path = relation?.attributes.Target?.replace(/^\//, '') ?? '';
  const extension = path.split('.').pop();
  if (!types.some((tag) => tag.name === 'Default' && tag.attributes.Extension === extension))
    throw new Error(`no content type for ${path}`);
  const model = textOf(parts, path);
  const tags = parseXml(model);
  const root = tags[0];
  const metadata: Record<string, string> = {};
  for (const tag of tags.filter((one) => one.name === 'metadata')) {
    const [prefix, local] = (tag.attributes.name ?? '').split(':');
    if (local && !root.attributes[`xmlns:${prefix}`]) throw new Error(`prefix ${prefix} is not declared`);
    metadata[tag.attributes.name ?? ''] = tag.text;
  }
  const numbers = (name: string, keys: readonly string[]): number[] =>
    tags.filter((tag) => tag.name === name).flatMap((tag) => keys.map((key) => Number(tag.attributes[key])));
  const object = tags.find((tag) => tag.name === 'object');
  const item = tags.find((tag) => tag.name === 'item');
  if (item?.attributes.objectid !== object?.attributes.id) throw new Error('the build item names no object');
  return {
    parts: [...parts.keys()],
    unit: root.attributes.unit ?? '',
    name: object?.attributes.name ?? '',
    metadata,
    mesh: {
      positions: Float64Array.from(numbers('vertex', ['x', 'y', 'z'])),
      triangles: Uint32Array.from(numbers('triangle', ['v1', 'v2', 'v3'])),
    },
    model,
  };
}

function textOf(parts: ReadonlyMap<string, Buffer>, name: string): string {
  const part = parts.get(name);
  if (!part) throw new Error(`no part ${name}`);
  return part.toString('utf8');
}

/** The files of a zip by its central directory (PKWARE APPNOTE 4.3.12, 4.3.16), checksums tried. */
function unzip(zip: Buffer): Map<string, Buffer> {
  const end = zip.lastIndexOf(Buffer.from('PK\u0005\u0006', 'latin1'));
  const parts = new Map<string, Buffer>();
  let at = zip.readUInt32LE(end + 16);
  for (let k = 0; k < zip.readUInt16LE(end + 10); k++) {
    const method = zip.readUInt16LE(at + 10);
    const sum = zip.readUInt32LE(at + 16);
    const packed = zip.readUInt32LE(at + 20);
    const nameLength = zip.readUInt16LE(at + 28);
    const name = zip.toString('utf8', at + 46, at + 46 + nameLength);
    const local = zip.readUInt32LE(at + 42);
    const start = local + 30 + zip.readUInt16LE(local + 26) + zip.readUInt16LE(local + 28);
    const raw = zip.subarray(start, start + packed);
    const content = method === 0 ? raw : inflateRawSync(raw);
    if (crc32(content) !== sum) throw new Error(`checksum of ${name}`);
    parts.set(name, content);
    at += 46 + nameLength + zip.readUInt16LE(at + 30) + zip.readUInt16LE(at + 32);
  }
  return parts;
}

interface Tag {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string | undefined>>;
  text: string;
}

/** Start tags in order with their text. Throws where tags don't nest or anything is left between them. */
function parseXml(xml: string): Tag[] {
  const tags: Tag[] = [];
  const open: Tag[] = [];
  const pattern = /<\?[^>]*\?>|<\/([\w:.-]+)>|<([\w:.-]+)((?:\s+[\w:.-]+="[^"<]*")*)\s*(\/?)>|([^<]+)/gy;
  let end = 0;
  for (const [all, closing, opening, attributes, isEmpty, text] of xml.matchAll(pattern)) {
    end += all.length;
    if (text !== undefined) {
      const innermost = open.at(-1);
      if (innermost) innermost.text += unescapeXml(text);
      else if (text.trim() !== '') throw new Error(`text outside the root: ${text}`);
    } else if (closing !== undefined) {
      if (open.pop()?.name !== closing) throw new Error(`</${closing}> closes another`);
    } else if (opening !== undefined) {
      const tag: Tag = { name: opening, attributes: readAttributes(attributes), text: '' };
      tags.push(tag);
      if (!isEmpty) open.push(tag);
    }
  }
  if (end !== xml.length || open.length > 0) throw new Error(`not well formed at ${end} of ${xml.length}`);
  return tags;
}

function readAttributes(text: string): Record<string, string> {
  const found: Record<string, string> = {};
  for (const [, key, value] of text.matchAll(/([\w:.-]+)="([^"]*)"/g)) {
    if (key in found) throw new Error(`attribute ${key} twice`);
    found[key] = unescapeXml(value);
  }
  return found;
}

function unescapeXml(text: string): string {
  if (/&(?!(?:lt|gt|amp|quot|apos);)/.test(text)) throw new Error(`a bare & in ${text}`);
  return text
    .replace(/&lt;/g, '<')
    .replace(/&gt;/g, '>')
    .replace(/&quot;/g, '"')
    .replace(/&apos;/g, "'")
    .replace(/&amp;/g, '&');
}
