import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';

/** Plants a file in a room, runs a tool on it, and takes it out again. */
function plant(
  files: Readonly<Record<string, string>>,
  args: (paths: string[]) => string[],
): { status: number | null; output: string } {
  const paths = Object.keys(files);
  try {
    for (const path of paths) writeFileSync(path, files[path]);
    const run = spawnSync(process.execPath, args(paths), { encoding: 'utf8' });
    return { status: run.status, output: run.stdout + run.stderr };
  } finally {
    for (const path of paths) rmSync(path, { force: true });
  }
}

const lint = (paths: string[]): string[] => ['node_modules/@biomejs/biome/bin/biome', 'lint', ...paths];

describe('imports point down only', () => {
  test.each([
    [
      'involute on readings',
      'src/involute/planted.ts',
      "import { judge } from '../readings/judge.ts';\nexport const planted = judge;\n",
    ],
    ['readings on zod', 'src/readings/planted.ts', "import { z } from 'zod';\nexport const planted = z;\n"],
    [
      'solid on Node',
      'src/solid/planted.ts',
      "import { readFileSync } from 'node:fs';\nexport const planted = readFileSync;\n",
    ],
    [
      'cli past the index',
      'src/cli/planted.ts',
      "import { judge } from '../readings/judge.ts';\nexport const planted = judge;\n",
    ],
  ])('lint refuses %s', (_, path, text) => {
    const { status, output } = plant({ [path]: text }, lint);
    expect(status).not.toBe(0);
    expect(output).toContain('noRestrictedImports');
  });

  test('lint refuses a circle', () => {
    const { status, output } = plant(
      {
        'src/numeric/planted-a.ts': "import { b } from './planted-b.ts';\nexport const a: number = b + 1;\n",
        'src/numeric/planted-b.ts': "import { a } from './planted-a.ts';\nexport const b: number = a + 1;\n",
      },
      lint,
    );
    expect(status).not.toBe(0);
    expect(output).toContain('noImportCycles');
  });

  test('the pure rooms know no Node and no DOM', () => {
    const folder = mkdtempSync('.cache/planted-');
    try {
      const file = `${folder}/planted.ts`;
      const config = `${folder}/tsconfig.json`;
      writeFileSync(file, 'export const planted = [process.pid, document.title];\n');
      writeFileSync(
        config,
        JSON.stringify({ extends: '../../tsconfig.pure.json', include: ['./planted.ts'] }),
      );
      const run = spawnSync(process.execPath, ['node_modules/typescript/bin/tsc', '-p', config], {
        encoding: 'utf8',
      });
      expect(run.status).not.toBe(0);
      expect(run.stdout).toContain('process');
      expect(run.stdout).toContain('document');
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  });
});
