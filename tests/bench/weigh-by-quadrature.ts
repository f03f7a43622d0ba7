import { slipRates, wrongSpread, zeroSlipSpread } from '../../gear-library/slips.ts';
import { jawHabits } from '../../gear-library/tooth-variation.ts';
import { listRepairs } from '../../src/evidence/list-repairs.ts';
import { createWeigher } from '../../src/evidence/weigher.ts';
import { buildSpace, listTeeth } from '../../src/readings/hypothesis-space.ts';
import { listMeasuredLengths } from '../../src/readings/measured-length.ts';
import type { LengthReading, WheelEvidence } from '../../src/readings/wheel-evidence.ts';
import { type DrawnWheel, trueReading } from './draw-wheels.ts';

// Gauss–Hermite nodes and weights for a standard normal, 7 points (Abramowitz & Stegun 25.4.46, table 25.10, scaled).
const nodes7 = [
  -3.750439717725742, -2.366759410734541, -1.154405394739968, 0, 1.154405394739968, 2.366759410734541,
  3.750439717725742,
];
const weights7 = [
  5.48268855972218e-4, 3.07571239675865e-2, 0.240123178605013, 0.457142857142857, 0.240123178605013,
  3.07571239675865e-2, 5.48268855972218e-4,
];
const nodes3 = [-Math.sqrt(3), 0, Math.sqrt(3)];
const weights3 = [1 / 6, 2 / 3, 1 / 6];

/**
 * Probability of each pitch by quadrature of the same model: shift, tip loss and tip land on a product grid of
 * Gauss–Hermite nodes with the readings' full geometry at each node; only thinning, size scale and zero, in which
 * readings are exactly linear, and the slips are left to the weigher. Nothing is linearized and little is pruned, so
 * this is the ceiling that the closed form is held against.
 */
export function weighByQuadrature(evidence: WheelEvidence): Map<string, number> {
  const lengths = listMeasuredLengths(evidence);
  const n = lengths.length;
  const space = buildSpace(evidence);
  const rates = {
    'inch-for-mm': slipRates['inch-for-mm'].chance,
    'radius-for-diameter': slipRates['radius-for-diameter'].chance,
    'swapped-digits': slipRates['swapped-digits'].chance,
    'lost-decimal': slipRates['lost-decimal'].chance,
  };
  const weigher = createWeigher(
    lengths.map((length) => ({
      value: length.value,
      repairs: listRepairs(length.value, rates, length.of === 'outside' || length.of === 'root'),
      logWrong: Math.log(slipRates.wrong.chance),
      wrongVariance: Math.max(wrongSpread.least, wrongSpread.part * length.value) ** 2,
      zeroShare: 1,
    })),
    n > 1
      ? { logChance: Math.log(slipRates['zero-not-set'].chance), variance: zeroSlipSpread.uMm ** 2 }
      : undefined,
  );
  const logs = new Map<string, number[]>();
  const expected = new Float64Array(n);
  for (const count of space.counts) {
    const odd = count.teeth % 2 === 1;
    for (const rack of space.racks) {
      for (const tooth of listTeeth(space, count, rack)) {
        for (const pitch of space.pitches) {
          const prior =
            Math.log(count.weight) + pitch.logWeight + rack.logWeight[pitch.system] + tooth.shift.logWeight;
          if (prior === Number.NEGATIVE_INFINITY) continue;
          const key = pitch.system === 'free' ? 'free' : `${pitch.system} ${pitch.size}`;
          for (const loss of space.tipLosses) {
            const habits =
              odd && lengths.some((l) => l.of === 'outside' && l.jaws === undefined)
                ? jawHabits
                : [{ jaws: undefined, weight: 1 }];
            for (const habit of habits) {
              const readings = lengths.map((length) => {
                const reading = evidence.readings[length.index] as LengthReading;
                return length.of === 'outside' && habit.jaws ? { ...reading, jaws: habit.jaws } : reading;
              });
              const drawn = (x: number, tipLoss: number, kept: number): DrawnWheel => ({
                system: pitch.system,
                size: pitch.size,
                module: pitch.module,
                pressureAngle: rack.pressureAngle,
                teeth: count.teeth,
                addendum: rack.rack.addendum,
                rootDepth: rack.rack.dedendum + rack.rack.extraDedendum / pitch.module,
                shift: x,
                tipLoss,
                thinning: space.thinning.mean,
                scale: 0,
                tipLandKept: kept,
                zero: 0,
              });
              // A first look at the middle: hopeless hypotheses are left out, far beyond what the product leaves out.
              const middle = drawn(tooth.shift.mean, loss.mean, 0.75);
              let far = 0;
              for (let i = 0; i < n; i++) {
                const spread = Math.hypot(
                  pitch.module * (4 * tooth.shift.spread + 4 * loss.spread) * 2,
                  0.02 * lengths[i].value,
                  0.4,
                );
                if (Math.abs(lengths[i].value - trueReading(middle, readings[i])) > spread) far++;
              }
              if (far > 1 || far === n) continue;
              for (let a = 0; a < 7; a++) {
                for (let b = 0; b < 7; b++) {
                  for (let c = 0; c < (odd ? 3 : 1); c++) {
                    const x = tooth.shift.mean + tooth.shift.spread * nodes7[a];
                    const tipLoss = loss.mean + loss.spread * nodes7[b];
                    const kept = 0.75 + 0.2 * (odd ? nodes3[c] : 0);
                    const wheel = drawn(x, tipLoss, kept);
                    for (let i = 0; i < n; i++) {
                      const value = trueReading(wheel, readings[i]) + lengths[i].offset;
                      expected[i] = Number.isFinite(value) ? value : 1e9;
                      weigher.residual[i] = lengths[i].value - expected[i];
                    }
                    const scale = Math.hypot(space.scaleSpread, pitch.spread);
                    for (let i = 0; i < n; i++) {
                      const ti =
                        lengths[i].of === 'span'
                          ? pitch.module * space.thinning.spread * Math.cos(rack.pressureAngle)
                          : 0;
                      for (let j = 0; j <= i; j++) {
                        const tj =
                          lengths[j].of === 'span'
                            ? pitch.module * space.thinning.spread * Math.cos(rack.pressureAngle)
                            : 0;
                        weigher.covariance[i * n + j] =
                          ti * tj +
                          scale * scale * expected[i] * expected[j] +
                          lengths[i].zeroDeviation * lengths[j].zeroDeviation +
                          (i === j ? lengths[i].noise : 0);
                      }
                    }
                    const log =
                      weigher.weigh() +
                      prior +
                      loss.logWeight +
                      Math.log(habit.weight) +
                      Math.log(weights7[a] * weights7[b] * (odd ? weights3[c] : 1));
                    const list = logs.get(key);
                    if (list) list.push(log);
                    else logs.set(key, [log]);
                  }
                }
              }
            }
          }
        }
      }
    }
  }
  let greatest = Number.NEGATIVE_INFINITY;
  for (const list of logs.values()) for (const log of list) if (log > greatest) greatest = log;
  let total = 0;
  const sums = new Map<string, number>();
  for (const [key, list] of logs) {
    const sum = list.reduce((all, log) => all + Math.exp(log - greatest), 0);
    sums.set(key, sum);
    total += sum;
  }
  for (const [key, sum] of sums) sums.set(key, sum / total);
  return sums;
}
