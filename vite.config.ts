import { defineConfig } from 'vite';

// One self-contained file for the command line: no node_modules needed to run it.
export default defineConfig({
  ssr: { noExternal: true },
  build: {
    outDir: 'dist',
    target: 'node20',
    emptyOutDir: true,
    rollupOptions: { output: { entryFileNames: 'sparetooth.js' } },
  },
});
