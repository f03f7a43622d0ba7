import { mkdirSync } from 'node:fs';
import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core';
import { afterAll, expect, inject, onTestFinished } from 'vitest';
import { chromiumArgs } from './chromium-args.ts';

export interface PageOptions {
  readonly width?: number;
  readonly height?: number;
  readonly dark?: boolean;
  readonly touch?: boolean;
  /** The built page where left out */
  readonly address?: string;
  /** Behind the address, such as `#/job` */
  readonly hash?: string;
  /** Another window of the same browser: same storage */
  readonly beside?: Page;
  /** Runs in the page before its own script */
  readonly prepare?: () => void;
  /** Steps without animation, as the person asked their system for; true where left out */
  readonly isStill?: boolean;
}

let browser: Promise<Browser> | undefined;
afterAll(async () => {
  await (await browser)?.close();
});

/** One browser a test file, started when first needed. */
export function openBrowser(): Promise<Browser> {
  browser ??= chromium.launch({
    executablePath: inject('chromium'),
    args: [
      ...chromiumArgs,
      // Even a name that slips through finds nobody.
      '--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1, EXCLUDE localhost',
    ],
  });
  return browser;
}

/**
 * The built page in a window of its own. When the test is over, a request beyond the page's own address, a failed
 * one, an error on the console, an error that nobody caught, or a breach of the content policy fails the test.
 */
export async function openPage(options: PageOptions = {}): Promise<Page> {
  const address = options.address ?? inject('pageAddress');
  const context = options.beside?.context() ?? (await newContext(options));
  const page = await context.newPage();
  const faults = watch(page, address);
  onTestFinished(async () => {
    await page.close();
    if (!options.beside) await context.close();
    expect(faults).toEqual([]);
  });
  if (options.prepare) await page.addInitScript(options.prepare);
  await page.goto(address + (options.hash ?? ''), { waitUntil: 'load' });
  return page;
}

async function newContext({
  width = 1440,
  height = 900,
  dark,
  touch,
  isStill = true,
}: PageOptions): Promise<BrowserContext> {
  const context = await (await openBrowser()).newContext({
    viewport: { width, height },
    colorScheme: dark ? 'dark' : 'light',
    hasTouch: touch ?? false,
    reducedMotion: isStill ? 'reduce' : 'no-preference',
    acceptDownloads: true,
  });
  context.setDefaultTimeout(30_000);
  return context;
}

/** Collects what a page must not do, for as long as it is open. */
export function watch(page: Page, address: string): string[] {
  const faults: string[] = [];
  const { protocol, origin } = new URL(address);
  const isOwn = (url: string): boolean =>
    /^(blob|data|about):/.test(url) ||
    (protocol === 'file:' ? url.split('#')[0] === address : new URL(url).origin === origin);
  page.on('request', (request) => {
    if (!isOwn(request.url())) faults.push(`asked for ${request.url()}`);
  });
  page.on('response', (response) => {
    if (response.status() >= 400) faults.push(`${response.status()} for ${response.url()}`);
  });
  page.on('console', (message) => {
    if (message.type() === 'error') faults.push(`console: ${message.text()}`);
  });
  page.on('pageerror', (error) => faults.push(`error: ${error.message}`));
  page.on('crash', () => faults.push('the window crashed'));
  void page.addInitScript(() => {
    document.addEventListener('securitypolicyviolation', ({ violatedDirective, blockedURI }) => {
      console.error(`content policy: ${violatedDirective} ${blockedURI}`);
    });
  });
  return faults;
}

/** A picture of the window for people to look at: `.cache/shots/NAME-WxH.png`. */
export async function look(page: Page, name: string): Promise<string> {
  const { width, height } = page.viewportSize() ?? { width: 0, height: 0 };
  mkdirSync('.cache/shots', { recursive: true });
  const path = `.cache/shots/${name}-${width}x${height}.png`;
  await page.screenshot({ path });
  return path;
}
