import { processes } from '../../gear-library/processes.ts';
import { calibrate } from '../../src/making/calibrate.ts';
import type { Compensation } from '../../src/making/compensation.ts';
import { startRandom } from '../../src/numeric/random.ts';
import { findErrorPrior } from '../../src/readings/error-prior.ts';
import { drawCoupons, drawMachine } from '../making/draw-coupons.ts';

const keys = [
  'outsidePerSideMm',
  'teethPerSideMm',
  'holesPerSideMm',
] as const satisfies (keyof Compensation)[];

/**
 * How near a calibration comes to the machine, by how many coupons were read, beside plain averaging of what each
 * reading says alone. Machines, prints and readings are drawn from the library's own spreads.
 */
export function run(brief: boolean): void {
  console.log('coupon: root mean square error, mm a side: outside, teeth, holes');
  for (const key of brief ? ['filament-0.4'] : ['filament-0.4', 'resin']) {
    const process = processes.find((one) => one.key === key);
    if (!process) throw new Error(key);
    for (const count of [0, 1, 3, 5]) {
      const random = startRandom(1000 + count);
      const draws = brief ? 10 : 200;
      const squares = keys.map(() => 0);
      const plain = [0, 0];
      const times: number[] = [];
      let inside = 0;
      for (let draw = 0; draw < draws; draw++) {
        const machine = drawMachine(process, random);
        const scatter = findErrorPrior(process).betweenPrints * Math.exp(0.6 * random.normal());
        const coupons = drawCoupons(machine, count, scatter, random);
        const start = performance.now();
        const found = calibrate(process, coupons);
        times.push(performance.now() - start);
        keys.forEach((one, k) => {
          const apart = found.compensation[one] - machine[one];
          squares[k] += apart ** 2 / draws;
          if (Math.abs(apart) < 1.96 * found.uncertainty[one]) inside += 1 / (draws * keys.length);
        });
        (['outside', 'bore'] as const).forEach((of, k) => {
          const apart = coupons
            .flat()
            .filter((one) => one.of === of)
            .map((one) => (((one.mm as number) - (one.nominalMm ?? 0)) / 2) * (of === 'bore' ? -1 : 1));
          const mean = apart.reduce((a, b) => a + b, 0) / Math.max(1, apart.length);
          plain[k] += (mean - machine[of === 'bore' ? 'holesPerSideMm' : 'outsidePerSideMm']) ** 2 / draws;
        });
      }
      times.sort((a, b) => a - b);
      const root = (list: readonly number[]): string =>
        list.map((one) => Math.sqrt(one).toFixed(4)).join(' ');
      const beside = count === 0 ? '' : `; plain mean: outside, holes ${root(plain)}`;
      console.log(
        `  ${key}, ${count} coupons, ${draws} draws: ${root(squares)}${beside}; ${(100 * inside).toFixed(1)} % within 1.96 of the stated; median ${times[draws >> 1].toFixed(1)} ms (to ${times[Math.floor(0.9 * draws)].toFixed(1)}), checksum ${squares.reduce((a, b) => a + b, 0).toFixed(9)}`,
      );
    }
  }
}
