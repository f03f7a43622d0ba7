import type { RollingProof, RollingReason } from '../rolling/rolling-proof.ts';

/** Why a pair doesn't simply turn, as a person at the bench says it. */
export function tellReason(reason: RollingReason, proof: RollingProof): string {
  const found = Number(reason.value.toPrecision(3));
  const limit = Number(reason.limit.toPrecision(3));
  switch (reason.kind) {
    case 'helix':
      return `the two helices stand ${((reason.value * 180) / Math.PI).toFixed(1)} degrees apart, where ${((reason.limit * 180) / Math.PI).toFixed(1)} would do`;
    case 'jams':
      return proof.freeFrom === undefined
        ? 'the teeth bind at every distance that was tried'
        : `the teeth bind at this distance and as far as it may be off; they are free from ${tellMm(proof.freeFrom)} mm`;
    case 'jams-at-mean':
      return proof.freeFrom === undefined
        ? 'the teeth bind at this very distance'
        : `the teeth bind at this very distance; they are free from ${tellMm(proof.freeFrom)} mm`;
    case 'contact-ratio':
      return `one tooth lets go before the next takes over: contact ratio ${found}, where ${limit} is the least`;
    case 'transmission-error':
      // Without end where no tooth holds the wheel.
      if (!Number.isFinite(reason.value)) return 'for part of the turn no tooth drives the driven wheel';
      return `the driven wheel runs unevenly by ${found} mm (transmission error), where ${limit} mm would do`;
    case 'backlash':
      return `there is ${found} mm of play at the tightest (backlash), where ${limit} mm is the least`;
  }
}

function tellMm(value: number): string {
  return value.toFixed(2);
}
