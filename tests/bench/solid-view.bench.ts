import { spawnSync } from 'node:child_process';
import { createServer } from 'node:http';
import react from '@vitejs/plugin-react';
import { chromium, type Page } from 'playwright-core';
import { build } from 'vite';
import { readPageFiles } from '../../src/cli/page-files.ts';

interface Measured {
  readonly perSecond: number;
  readonly atRest: number;
  readonly perFrame: number;
  readonly triangles: number;
  readonly renderer: string;
}

const ways = ['product', 'plain, smoothed', 'plain'] as const;

/**
 * Frames a second while a 100-tooth solid turns at 900 × 600, beside three's own materials and lines in the same
 * browser, turn about; and what is drawn at rest. The screen's own rate does not hold it back. Time is never asserted.
 */
export async function run(brief: boolean): Promise<void> {
  const found = spawnSync(process.execPath, ['tools/find-chromium.mjs'], { encoding: 'utf8' });
  if (found.status !== 0) {
    console.log('solid view: no Chromium is here, so nothing was measured');
    return;
  }
  const outDir = '.cache/bench-solid-view';
  await build({
    configFile: false,
    root: 'tests/bench/solid-view',
    logLevel: 'error',
    plugins: [react()],
    build: { outDir: `../../../${outDir}`, emptyOutDir: true, target: 'es2022', chunkSizeWarningLimit: 2000 },
  });
  const { files, policy } = readPageFiles(outDir);
  const server = createServer((request, response) => {
    const file = files.get(request.url === '/' ? '/index.html' : (request.url ?? ''));
    response.writeHead(file ? 200 : 404, {
      'Content-Type': file?.type ?? 'text/plain',
      'Content-Security-Policy': policy,
    });
    response.end(file?.bytes);
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const address = server.address();
  const port = typeof address === 'object' ? address?.port : undefined;
  const browser = await chromium.launch({
    executablePath: found.stdout.trim(),
    args: [
      '--no-sandbox',
      '--enable-unsafe-swiftshader',
      '--disable-frame-rate-limit',
      '--disable-gpu-vsync',
    ],
  });
  try {
    const page = await browser.newPage({ viewport: { width: 900, height: 600 } });
    page.on('pageerror', (error) => console.log(`  the page failed: ${error.message}`));
    await page.goto(`http://127.0.0.1:${port}/`);
    await measureAll(page, brief ? 1 : 5, brief ? 0.5 : 2);
  } finally {
    await browser.close();
    server.close();
  }
}

async function measureAll(page: Page, rounds: number, seconds: number): Promise<void> {
  for (const isCut of [false, true]) {
    const rates = new Map<string, Measured[]>();
    for (let round = 0; round < rounds; round++) {
      for (const way of ways) {
        const one = await page.evaluate<Measured>(
          `window.measure(${JSON.stringify(way)}, ${isCut}, ${seconds})`,
        );
        rates.set(way, [...(rates.get(way) ?? []), one]);
      }
    }
    const first = rates.get('product')?.[0];
    console.log(
      `solid view, ${isCut ? 'cut open' : 'whole'}: 100 teeth, ${first?.triangles} triangles, 900 × 600, ${rounds} rounds of ${seconds} s each, ${first?.renderer}`,
    );
    for (const [way, all] of rates) {
      const sorted = all.map((one) => one.perSecond).sort((a, b) => a - b);
      const median = sorted[Math.floor(sorted.length / 2)];
      console.log(
        `  ${way}: median ${median.toFixed(1)} frames a second (${sorted[0].toFixed(1)} to ${sorted[sorted.length - 1].toFixed(1)}), ${all[0].perFrame} draw calls a frame, ${Math.max(...all.map((one) => one.atRest))} in a second at rest`,
      );
    }
  }
}
