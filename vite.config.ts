import { defineConfig } from 'vite';

// One self-contained file for the command line: no node_modules needed to run it.
export default defineConfig({
  ssr: { noExternal: true },
  build: {
    outDir: 'dist',
    target: 'node20',
    // The page lies in the same folder; tools/build.mjs clears it before all of them are built.
    emptyOutDir: false,
    rollupOptions: { output: { entryFileNames: 'sparetooth.js' } },
  },
});
