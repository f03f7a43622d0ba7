import { defineConfig } from 'vite';

// The command line as one file and, beside it, what only some verbs need: no node_modules needed to run it.
export default defineConfig({
  ssr: { noExternal: true },
  build: {
    outDir: 'dist',
    target: 'node20',
    // The page lies in the same folder; tools/build.mjs clears it before all of them are built.
    emptyOutDir: false,
    // A cold start pays for every byte it parses.
    minify: true,
    rollupOptions: {
      output: { entryFileNames: 'sparetooth.js', chunkFileNames: 'sparetooth-[name].js' },
      treeshake: { moduleSideEffects: false },
    },
  },
});
