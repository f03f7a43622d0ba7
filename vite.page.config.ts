import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

// The page as files for the server: three and its scene load only when the solid is asked for.
export default defineConfig({
  root: 'src/page',
  base: './',
  plugins: [react()],
  worker: { format: 'es' },
  build: {
    outDir: '../../dist/page',
    emptyOutDir: true,
    target: 'es2022',
    // Fonts stay files: inlined, they would be read twice as often as they are needed.
    assetsInlineLimit: 0,
    // The view of the solid is the largest, and loads only when it is asked for.
    chunkSizeWarningLimit: 800,
  },
});
