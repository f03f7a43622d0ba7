import { readdirSync } from 'node:fs';
import { defineConfig } from 'vite';

const folder = 'tests/bench';
const benches = readdirSync(folder).filter((name) => name.endsWith('.bench.ts'));

// Benches run as plain modules, built the way the product is, so that the figures are the product's.
export default defineConfig({
  build: {
    ssr: true,
    outDir: '.cache/bench',
    target: 'node20',
    minify: false,
    rollupOptions: {
      input: Object.fromEntries(benches.map((name) => [name.replace('.bench.ts', ''), `${folder}/${name}`])),
    },
  },
});
