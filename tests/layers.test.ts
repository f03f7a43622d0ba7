import { spawnSync } from 'node:child_process';
import { copyFileSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';

/**
 * Plants files in a house of their own that has this one's rules, and lints it: never among the real sources, where
 * another run would trip over them.
 */
function lintPlanted(files: Readonly<Record<string, string>>): { status: number | null; output: string } {
  const house = mkdtempSync(join(tmpdir(), 'planted-'));
  try {
    copyFileSync('biome.json', `${house}/biome.json`);
    for (const [path, text] of Object.entries(files)) {
      mkdirSync(`${house}/${dirname(path)}`, { recursive: true });
      writeFileSync(`${house}/${path}`, text);
    }
    const run = spawnSync(
      process.execPath,
      [resolve('node_modules/@biomejs/biome/bin/biome'), 'lint', '--vcs-enabled=false', '.'],
      { encoding: 'utf8', cwd: house },
    );
    return { status: run.status, output: run.stdout + run.stderr };
  } finally {
    rmSync(house, { recursive: true, force: true });
  }
}

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
      'rolling on readings',
      'src/rolling/planted.ts',
      "import { judge } from '../readings/judge.ts';\nexport const planted = judge;\n",
    ],
    [
      'trains on involute',
      'src/trains/planted.ts',
      "import { findBasePitch } from '../involute/base-pitch.ts';\nexport const planted = findBasePitch;\n",
    ],
    [
      'drive on stock',
      'src/drive/planted.ts',
      "import { match } from '../stock/match.ts';\nexport const planted = match;\n",
    ],
    [
      'strength on solid',
      'src/strength/planted.ts',
      "import { buildSolid } from '../solid/build-solid.ts';\nexport const planted = buildSolid;\n",
    ],
    [
      'stock on making',
      'src/stock/planted.ts',
      "import { planPart } from '../making/plan-part.ts';\nexport const planted = planPart;\n",
    ],
    [
      'a room on a verb',
      'src/making/planted.ts',
      "import { make } from '../make.ts';\nexport const planted = make;\n",
    ],
    [
      'cli on a verb past the index',
      'src/cli/planted.ts',
      "import { make } from '../make.ts';\nexport const planted = make;\n",
    ],
    [
      'a verb on a front end',
      'src/planted.ts',
      "import { runCommandLine } from './cli/run-command-line.ts';\nexport const planted = runCommandLine;\n",
    ],
    [
      'cli past the index',
      'src/cli/planted.ts',
      "import { judge } from '../readings/judge.ts';\nexport const planted = judge;\n",
    ],
  ])('lint refuses %s', (_, path, text) => {
    const { status, output } = lintPlanted({ [path]: text });
    expect(status).not.toBe(0);
    expect(output).toContain('noRestrictedImports');
  });

  test('lint refuses a circle', () => {
    const { status, output } = lintPlanted({
      'src/numeric/planted-a.ts': "import { b } from './planted-b.ts';\nexport const a: number = b + 1;\n",
      'src/numeric/planted-b.ts': "import { a } from './planted-a.ts';\nexport const b: number = a + 1;\n",
    });
    expect(status).not.toBe(0);
    expect(output).toContain('noImportCycles');
  });

  test('the pure rooms know no Node and no DOM', () => {
    // A fresh clone has no such folder yet.
    mkdirSync('.cache', { recursive: true });
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
