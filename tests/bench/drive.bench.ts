import type { DriveModel } from '../../src/drive/drive-model.ts';
import { listRelations, shaftNode } from '../../src/drive/list-relations.ts';
import { reportDrive } from '../../src/drive/report-drive.ts';
import { solveSpeeds } from '../../src/drive/solve-speeds.ts';
import {
  add,
  divide,
  isSame,
  multiply,
  negate,
  type Rational,
  toNumber,
  unity,
  zero,
} from '../../src/numeric/rational.ts';
import { makeDrive, makeTrain } from '../drive/make-drive.ts';

/**
 * Exact speeds of trains and of planetary sets in a row, beside plain elimination of the same equations with the same
 * fractions, which takes every shaft as unknown at once. Time is never asserted; that both agree is.
 */
export async function run(brief: boolean): Promise<void> {
  const sizes = brief ? [10, 30] : [10, 30, 100, 300, 1000];
  const rounds = brief ? 2 : 15;
  console.log(`drive: pairs of 12–18 into 60–72 teeth in a row, ${rounds} rounds each`);
  const medians: [number, number][] = [];
  for (const size of sizes) {
    const model = makeTrain(Array.from({ length: size - 1 }, (_, k) => [12 + (k % 7), 60 + (k % 13)]));
    const end = `s${size - 1}`;
    let turns = zero;
    const own = measure(rounds, () => {
      turns = speedOf(model, 's0', end);
    });
    medians.push([size, own.median]);
    const whole = measure(Math.min(rounds, 5), () => {
      reportDrive(model);
    });
    console.log(
      `  ${size} shafts: ${own.words}, checksum ${turns.num % 1_000_000_007n}/${turns.den % 1_000_000_007n}; with all that is reported ${whole.median.toFixed(1)} ms`,
    );
    if (size <= 100) compare(model, 's0', end, turns, brief ? 1 : 3);
  }
  const [[small, first], [large, last]] = [medians[0], medians[medians.length - 1]];
  console.log(
    `  growth exponent ${small} to ${large} shafts: ${(Math.log(last / first) / Math.log(large / small)).toFixed(2)}`,
  );
  const sets = brief ? 5 : 50;
  const model = makeSets(sets);
  let turns = zero;
  const own = measure(rounds, () => {
    turns = speedOf(model, 'a0', `a${sets}`);
  });
  console.log(
    `  ${sets} planetary sets of 16/16/48 in a row: ${own.words}, checksum ${toNumber(turns).toExponential(6)}`,
  );
  compare(model, 'a0', `a${sets}`, turns, 1);
}

function compare(model: DriveModel, from: string, to: string, turns: Rational, rounds: number): void {
  let plain = zero;
  const { words } = measure(rounds, () => {
    plain = eliminateAll(model, from, to);
  });
  if (!isSame(plain, turns)) throw new Error(`plain elimination has another speed for ${to}`);
  console.log(`    plain elimination of all equations: ${words}, the same fraction`);
}

function speedOf(model: DriveModel, from: string, to: string): Rational {
  const speed = solveSpeeds(model, from).speeds.get(shaftNode(to));
  if (!speed) throw new Error(`no speed for ${to}`);
  return speed.turns;
}

function makeSets(count: number): DriveModel {
  const sets = Array.from({ length: count }, (_, k) => k);
  return makeDrive(
    sets.flatMap((k) => [
      { id: `sun${k}`, teeth: 16, shaft: `a${k}` },
      { id: `planet${k}`, teeth: 16 },
      { id: `ring${k}`, teeth: 48, kind: 'internal', shaft: 'frame' } as const,
    ]),
    sets.flatMap((k) => [
      { driver: `sun${k}`, driven: `planet${k}`, carrier: `a${k + 1}` },
      { driver: `planet${k}`, driven: `ring${k}`, carrier: `a${k + 1}` },
    ]),
    { fixed: ['frame'] },
  );
}

/** Gauss-Jordan on the full matrix, one row an equation, one column a shaft. */
function eliminateAll(model: DriveModel, from: string, to: string): Rational {
  const { relations } = listRelations(model);
  const nodes = [...new Set(relations.flatMap(({ terms }) => [...terms.keys()]))];
  const rows = relations.map(({ terms }) => [...nodes.map((node) => terms.get(node) ?? zero), zero]);
  const pin = (shaft: string, value: Rational): void => {
    rows.push([...nodes.map((node) => (node === shaftNode(shaft) ? unity : zero)), value]);
  };
  pin(from, unity);
  for (const shaft of model.fixed) pin(shaft, zero);
  nodes.forEach((_, column) => {
    const at = rows.findIndex((row, k) => k >= column && row[column].num !== 0n);
    if (at < 0) throw new Error('the equations leave a shaft free');
    [rows[column], rows[at]] = [rows[at], rows[column]];
    const pivot = rows[column];
    rows[column] = pivot.map((value) => divide(value, pivot[column]));
    for (const [k, row] of rows.entries()) {
      if (k === column || row[column].num === 0n) continue;
      const by = negate(row[column]);
      rows[k] = row.map((value, j) => add(value, multiply(by, rows[column][j])));
    }
  });
  return rows[nodes.indexOf(shaftNode(to))][nodes.length];
}

/** Median and spread over all rounds but the first fifth, which warm up. */
function measure(rounds: number, work: () => void): { readonly median: number; readonly words: string } {
  const times: number[] = [];
  for (let round = 0; round < rounds; round++) {
    const start = performance.now();
    work();
    times.push(performance.now() - start);
  }
  const warm = times.slice(Math.floor(rounds / 5)).sort((a, b) => a - b);
  const at = (part: number): number => warm[Math.floor(part * (warm.length - 1))];
  const words = `median ${at(0.5).toFixed(2)} ms (least ${at(0).toFixed(2)}, a tenth ${at(0.1).toFixed(2)} to ${at(0.9).toFixed(2)})`;
  return { median: at(0.5), words };
}
