import { readdirSync, readFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { Fail } from '../index.ts';

export interface PageFile {
  readonly bytes: Uint8Array;
  readonly type: string;
  /** Its name says its content, so it never changes */
  readonly isHashed: boolean;
}

/** The built page in memory. Only what was found here is ever given out, so no address leads anywhere else. */
export interface PageFiles {
  /** By its path in an address: `/index.html`, `/assets/…` */
  readonly files: ReadonlyMap<string, PageFile>;
  /** The content policy that the page itself states */
  readonly policy: string;
}

/** Reads a built page. Throws Fail `no-page` where it is missing, or states no content policy. */
export function readPageFiles(folder: string): PageFiles {
  const files = new Map<string, PageFile>();
  try {
    for (const entry of readdirSync(folder, { withFileTypes: true, recursive: true })) {
      if (!entry.isFile()) continue;
      const path = join(entry.parentPath, entry.name);
      const place = `/${relative(folder, path).split(sep).join('/')}`;
      const type = types[entry.name.slice(entry.name.lastIndexOf('.') + 1)] ?? 'application/octet-stream';
      files.set(place, { bytes: readFileSync(path), type, isHashed: place.startsWith('/assets/') });
    }
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'ENOENT') throw error;
  }
  const index = files.get('/index.html');
  if (!index) throw noPage('is not there', folder);
  const [, policy] =
    /http-equiv="Content-Security-Policy"\s+content="([^"]+)"/.exec(new TextDecoder().decode(index.bytes)) ??
    [];
  if (!policy) throw noPage('states no content policy', folder);
  return { files, policy };
}

function noPage(message: string, folder: string): Fail {
  return new Fail('no-page', '', `the built page ${message}`, 'Build it first: npm run build.', { folder });
}

const types: Readonly<Record<string, string>> = {
  html: 'text/html; charset=utf-8',
  js: 'text/javascript; charset=utf-8',
  css: 'text/css; charset=utf-8',
  json: 'application/json',
  svg: 'image/svg+xml',
  png: 'image/png',
  woff2: 'font/woff2',
  wasm: 'application/wasm',
  txt: 'text/plain; charset=utf-8',
};
