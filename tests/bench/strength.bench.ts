import { findFormFactor } from '../../src/strength/find-form-factor.ts';
import { traceToothHalf } from '../../src/strength/trace-tooth-half.ts';
import { makeSpec } from '../involute/make-spec.ts';
import { findLewisY, lewisCounts, lewisTables } from '../strength/lewis-tables.ts';

/**
 * Lewis's tables beside the factors of real outlines, load at the tip, and what one factor takes. Time is never
 * asserted; the tables are, in tests/strength.
 */
export function run(brief: boolean): void {
  console.log('strength: y = Y/pi, printed / from the outline, load at the tip');
  for (const table of lewisTables) {
    const { addendum, dedendum, rootRadius } = table.rack;
    console.log(`  ${table.name}, rack ${addendum} / ${dedendum} / ${rootRadius}: ${table.why}`);
    const cells = lewisCounts.map((teeth, i) => {
      const found = findLewisY(table, teeth);
      const off = (found / table.y[i] - 1) * 100;
      return `${teeth || 'rack'}: ${table.y[i].toFixed(3)} / ${found.toFixed(4)} (${off.toFixed(1)} %)`;
    });
    for (let k = 0; k < cells.length; k += 4) console.log(`    ${cells.slice(k, k + 4).join('   ')}`);
  }
  const times: number[] = [];
  let checksum = 0;
  for (let teeth = 10; teeth < (brief ? 20 : 210); teeth++) {
    const spec = makeSpec({ teeth, profileShift: 0.2 });
    const start = performance.now();
    const { lewis, tangent } = findFormFactor(traceToothHalf(spec));
    times.push(performance.now() - start);
    checksum += lewis.Y + tangent.form;
  }
  const warm = times.slice(Math.floor(times.length / 5)).sort((a, b) => a - b);
  const at = (part: number): string => warm[Math.floor(part * (warm.length - 1))].toFixed(2);
  console.log(
    `  one outline and its factors, ${times.length} counts from 10 up: median ${at(0.5)} ms (a tenth ${at(0.1)} to ${at(0.9)}), checksum ${checksum.toFixed(6)}`,
  );
}
