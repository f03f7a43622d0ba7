import { spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'vite';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type ServedPage, servePage } from '../../src/cli/serve-page.ts';
import { findFreePort } from '../page/find-free-port.ts';
import { runInProcess } from './run-in-process.ts';

const policy = "default-src 'self'; script-src 'self'";
let folder = '';
let port = 0;
let served: ServedPage;

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'sparetooth-'));
  mkdirSync(join(folder, 'page', 'assets'), { recursive: true });
  writeFileSync(
    join(folder, 'page', 'index.html'),
    `<!doctype html><meta http-equiv="Content-Security-Policy"\n content="${policy}"><p>the page`,
  );
  writeFileSync(join(folder, 'page', 'assets', 'main-1a2b.js'), 'void 0;');
  writeFileSync(join(folder, 'secret.txt'), 'not for the page');
  symlinkSync(join(folder, 'secret.txt'), join(folder, 'page', 'link.txt'));
  port = await findFreePort();
  served = await servePage(join(folder, 'page'), port);
});
afterAll(async () => {
  await served.stop();
  rmSync(folder, { recursive: true, force: true });
});

interface Got {
  readonly status: number | undefined;
  readonly headers: Readonly<Record<string, string | string[] | undefined>>;
  readonly body: string;
}

/** One request as it stands: no library tidies its path or its Host. */
function ask(path: string, host = `127.0.0.1:${port}`, method = 'GET'): Promise<Got> {
  return new Promise((done, lost) => {
    const asking = request({ host: '127.0.0.1', port, path, method, headers: { Host: host } }, (response) => {
      let body = '';
      response.on('data', (part: Buffer) => {
        body += part.toString();
      });
      response.on('end', () => done({ status: response.statusCode, headers: response.headers, body }));
    });
    asking.once('error', lost);
    asking.end();
  });
}

describe('the served page', () => {
  test('comes with its own content policy, strict headers, and is asked for anew each time', async () => {
    const { status, headers, body } = await ask('/');
    expect(status).toBe(200);
    expect(body).toContain('the page');
    expect(headers).toMatchObject({
      'content-type': 'text/html; charset=utf-8',
      'content-security-policy': `${policy}; frame-ancestors 'none'`,
      'x-content-type-options': 'nosniff',
      'referrer-policy': 'no-referrer',
      'cross-origin-opener-policy': 'same-origin',
      'cache-control': 'no-cache',
    });
  });

  test('keeps files whose name says their content for good', async () => {
    const { headers } = await ask('/assets/main-1a2b.js?x=1');
    expect(headers).toMatchObject({
      'content-type': 'text/javascript; charset=utf-8',
      'cache-control': 'public, max-age=31536000, immutable',
    });
  });

  test('HEAD is GET without the body', async () => {
    const { status, headers, body } = await ask('/', undefined, 'HEAD');
    expect([status, body]).toEqual([200, '']);
    expect(Number(headers['content-length'])).toBeGreaterThan(10);
  });

  test.each(['POST', 'PUT', 'DELETE', 'OPTIONS'])('%s is refused', async (method) => {
    expect((await ask('/', undefined, method)).status).toBe(405);
  });

  test.each([
    '/../secret.txt',
    '/..%2fsecret.txt',
    '/%2e%2e/secret.txt',
    '/assets/../../secret.txt',
    '//secret.txt',
    '/assets\\..\\..\\secret.txt',
    '/link.txt',
    '/assets/',
    '/%00',
    '/%',
    '/__proto__',
  ])('%s leads nowhere', async (path) => {
    const { status, body } = await ask(path);
    expect(status).toBe(404);
    expect(body).not.toContain('not for the page');
  });

  test('localhost is sent to 127.0.0.1, where the work is, path and all', async () => {
    const { status, headers } = await ask('/?a=1', `localhost:${port}`);
    expect([status, headers.location]).toEqual([308, `http://127.0.0.1:${port}/?a=1`]);
  });

  test.each(['elsewhere.example', 'elsewhere.example:80', '127.0.0.1', '127.0.0.1:1', '[::1]'])(
    'a page that calls it %j gets nothing',
    async (host) => {
      const { status, body } = await ask('/', host);
      expect(status).toBe(403);
      expect(body).not.toContain('the page');
    },
  );
});

describe('the command', () => {
  test('refuses a port that is taken', async () => {
    await expect(servePage(join(folder, 'page'), port)).rejects.toMatchObject({ code: 'no-port' });
  });

  test.each(['0', '65536', '-1', '80x', '', '1e3'])('--port=%s is no port', async (typed) => {
    const { code, out, err } = await runInProcess(['serve', `--port=${typed}`]);
    expect([code, out]).toEqual([2, '']);
    expect(err).toContain('port');
  });

  test('says what to do where no page was built', async () => {
    await expect(async () => servePage(join(folder, 'nothing'), port)).rejects.toMatchObject({
      code: 'no-page',
      remedy: expect.stringContaining('npm run build'),
    });
  });

  test('works from its own folder alone, says where it is, refuses a second on the port, and stops on Ctrl-C', async () => {
    const own = join(folder, 'dist');
    await build({
      configFile: 'vite.config.ts',
      logLevel: 'error',
      build: { ssr: 'src/cli/main.ts', outDir: own },
    });
    writeFileSync(join(own, 'package.json'), '{"type":"module"}');
    mkdirSync(join(own, 'page'));
    writeFileSync(
      join(own, 'page', 'index.html'),
      `<meta http-equiv="Content-Security-Policy" content="${policy}">`,
    );
    const free = await findFreePort();
    const start = () =>
      spawn(process.execPath, [join(own, 'sparetooth.js'), 'serve', '--port', String(free)], {
        cwd: tmpdir(),
      });
    const first = start();
    const said = listen(first);
    await expect.poll(() => said.out, { timeout: 20_000 }).toContain(`http://127.0.0.1:${free}/`);
    const second = listen(start());
    expect(await second.ended).toBe(2);
    expect(second.out).toBe('');
    expect(second.err).toContain(`port ${free} is taken`);
    first.kill('SIGINT');
    expect(await said.ended).toBe(0);
    expect([said.out, said.err]).toEqual([expect.stringContaining('Stopped.'), '']);
  });
});

function listen(child: ReturnType<typeof spawn>): {
  out: string;
  err: string;
  ended: Promise<number | null>;
} {
  const said = {
    out: '',
    err: '',
    ended: new Promise<number | null>((done) => child.once('close', (code) => done(code))),
  };
  child.stdout?.on('data', (part: Buffer) => {
    said.out += part.toString();
  });
  child.stderr?.on('data', (part: Buffer) => {
    said.err += part.toString();
  });
  return said;
}
