import { createHash } from 'node:crypto';
import { fileURLToPath } from 'node:url';
import react from '@vitejs/plugin-react';
import { defineConfig, type Plugin } from 'vite';

// The whole page in one file that opens by double click: no server, so nothing may be fetched, not even its own parts.
export default defineConfig({
  root: 'src/page',
  base: './',
  plugins: [react(), putIntoOneFile('sparetooth.html')],
  resolve: {
    alias: [
      {
        find: /^.*\/start-worker\.ts$/,
        replacement: fileURLToPath(new URL('src/page/worker/start-worker-inline.ts', import.meta.url)),
      },
    ],
  },
  // A page from disk may start classic workers only: it has no origin that a module could come from.
  worker: { format: 'iife' },
  build: {
    outDir: '../../dist',
    // The command line and the page's files lie in the same folder.
    emptyOutDir: false,
    target: 'es2022',
    assetsInlineLimit: Number.MAX_SAFE_INTEGER,
    cssCodeSplit: false,
    modulePreload: false,
    // One file is the point.
    chunkSizeWarningLimit: 10_000,
    rolldownOptions: { output: { codeSplitting: false } },
  },
});

/** Puts script and style into the HTML and lets the file's own content policy run that one script alone. */
function putIntoOneFile(fileName: string): Plugin {
  return {
    name: 'put-into-one-file',
    enforce: 'post',
    generateBundle(_options, bundle) {
      const index = bundle['index.html'];
      if (index?.type !== 'asset') throw new Error('the build gave no index.html');
      let html = String(index.source);
      let script = '';
      let style = '';
      for (const [name, part] of Object.entries(bundle)) {
        delete bundle[name];
        if (part === index) continue;
        if (part.type === 'chunk' && part.isEntry) script = part.code;
        else if (part.type === 'asset' && name.endsWith('.css')) style = String(part.source);
        else throw new Error(`${name} would have to be fetched`);
      }
      // What is loaded when asked for lies in this very script: there is nothing to load beforehand. Without files of
      // their own the mark for it stays in, a name that nobody has defined.
      script = script.replaceAll('__VITE_PRELOAD__', 'void 0');
      // A script ends at the first closing tag in it, and a comment's opening can hide one.
      script = script.replaceAll(/<\/(?=script)/gi, '<\\/').replaceAll('<!--', '<\\!--');
      const hash = createHash('sha256').update(script).digest('base64');
      html = html
        .replace(/\s*<script\b[^>]*><\/script>/g, '')
        .replace(/\s*<link\b[^>]*rel="stylesheet"[^>]*>/g, '');
      html = replaceOnce(
        html,
        /(http-equiv="Content-Security-Policy"\s+content=")[^"]*/,
        (_, lead) => `${lead}${policyFor(hash)}`,
      );
      html = replaceOnce(html, '</head>', () => `<style>${style}</style>\n  </head>`);
      html = replaceOnce(html, '</body>', () => `<script type="module">${script}</script>\n  </body>`);
      this.emitFile({ type: 'asset', fileName, source: html });
    },
  };
}

function policyFor(hash: string): string {
  return [
    "default-src 'none'",
    `script-src 'sha256-${hash}'`,
    "style-src 'unsafe-inline'",
    'img-src blob: data:',
    'font-src data:',
    'worker-src blob:',
    "connect-src 'none'",
    "object-src 'none'",
    "base-uri 'none'",
    "form-action 'none'",
  ].join('; ');
}

/** Functions as replacements, since a script is full of `$`. */
function replaceOnce(text: string, what: string | RegExp, by: (...found: string[]) => string): string {
  const replaced = text.replace(what, by);
  if (replaced === text) throw new Error(`the page has no ${what}`);
  return replaced;
}
