/**
 * Where a function of one hump between two bounds is greatest, to about 1/400 of their distance, by golden section; of a
 * function with more humps, one of them. The value is the greatest one seen.
 *
 * @example seekGreatest((x) => -(x - 1) ** 2, 0, 3): at 1, value 0
 */
export function seekGreatest(
  valueAt: (at: number) => number,
  from: number,
  to: number,
): { readonly at: number; readonly value: number } {
  let low = from;
  let high = to;
  let p = high - golden * (high - low);
  let q = low + golden * (high - low);
  let atP = valueAt(p);
  let atQ = valueAt(q);
  let best = atP > atQ ? { at: p, value: atP } : { at: q, value: atQ };
  for (let round = 0; round < rounds; round++) {
    if (atP > atQ) {
      high = q;
      q = p;
      atQ = atP;
      p = high - golden * (high - low);
      atP = valueAt(p);
      if (atP > best.value) best = { at: p, value: atP };
    } else {
      low = p;
      p = q;
      atP = atQ;
      q = low + golden * (high - low);
      atQ = valueAt(q);
      if (atQ > best.value) best = { at: q, value: atQ };
    }
  }
  return best;
}

const golden = (Math.sqrt(5) - 1) / 2;
/** 0.618^13 is 1/500: a kink between two steps of 1/64 is then known to 1/16000. */
const rounds = 12;
