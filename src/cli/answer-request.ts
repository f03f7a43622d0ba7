import type { PageFiles } from './page-files.ts';

/** What matters of a request: its method, its Host header, and the path that it asks for. */
export interface PageRequest {
  readonly method?: string | undefined;
  readonly host?: string | undefined;
  readonly url?: string | undefined;
}

export interface PageAnswer {
  readonly status: number;
  readonly headers: Readonly<Record<string, string>>;
  readonly body: Uint8Array;
}

/**
 * The answer to one request for the page.
 *
 * Only the one address is answered: what a browser stores belongs to it alone, so `localhost` is sent there, and any
 * other name (a foreign page that had its name point here) is refused.
 */
export function answerRequest(
  page: PageFiles,
  port: number,
  { method, host, url = '' }: PageRequest,
): PageAnswer {
  const give = (status: number, headers: Record<string, string>, body: Uint8Array): PageAnswer => ({
    status,
    headers: {
      'Content-Security-Policy': `${page.policy}; frame-ancestors 'none'`,
      'Cross-Origin-Opener-Policy': 'same-origin',
      'Cross-Origin-Resource-Policy': 'same-origin',
      'Referrer-Policy': 'no-referrer',
      'X-Content-Type-Options': 'nosniff',
      'Content-Length': String(body.length),
      ...headers,
    },
    body,
  });
  const say = (status: number, words: string, headers: Record<string, string> = {}): PageAnswer =>
    give(
      status,
      { 'Content-Type': 'text/plain; charset=utf-8', 'Cache-Control': 'no-store', ...headers },
      new TextEncoder().encode(`${words}\n`),
    );

  const here = hostOf('127.0.0.1', port);
  if (!url.startsWith('/')) return say(400, 'No such address.');
  if (host?.toLowerCase() === hostOf('localhost', port)) {
    return say(308, `It is at ${here}.`, { Location: `http://${here}${url}` });
  }
  if (host !== here) return say(403, `Ask for ${here}.`);
  if (method !== 'GET' && method !== 'HEAD')
    return say(405, 'The page is only read.', { Allow: 'GET, HEAD' });
  const [path] = url.split(/[?#]/);
  const file = page.files.get(path === '/' ? '/index.html' : path);
  if (!file) return say(404, 'Nothing is here. The page is at /.');
  const caching = file.isHashed ? 'public, max-age=31536000, immutable' : 'no-cache';
  return give(200, { 'Content-Type': file.type, 'Cache-Control': caching }, file.bytes);
}

function hostOf(name: string, port: number): string {
  return port === 80 ? name : `${name}:${port}`;
}
