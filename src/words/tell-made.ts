import type { MadeReport } from '../job/made-report.ts';
import { nameReading } from './name-reading.ts';
import { tellOdds } from './tell-odds.ts';

/** What a check of a made part says, in plain sentences, the verdict first. */
export function tellMade(report: MadeReport): string[] {
  return [
    tellVerdict(report),
    ...tellSuspects(report),
    ...report.dimensions.flatMap((one) => (one.isRead ? [tellDimension(one)] : [])),
    ...tellRound(report),
    ...tellProof(report),
    ...tellUnread(report),
    tellNext(report),
  ];
}

function tellVerdict({ verdict, chance }: MadeReport): string {
  switch (verdict) {
    case 'fits':
      return `It fits: ${tellOdds(chance)} by its least sure dimension.`;
    case 'tight':
      return `It is tight: ${tellOdds(chance)}.`;
    case 'loose':
      return `It is loose: ${tellOdds(chance)}.`;
    case 'warped':
      return `It is warped, more than measuring can account for: ${tellOdds(chance)}.`;
    case 'unread':
      return 'How thick its teeth are was not read yet, so it is not judged.';
  }
}

function tellSuspects({ residuals }: MadeReport): string[] {
  return residuals.flatMap(({ isSuspect, isLeftOut, of, reading, readMm, expectedMm }) =>
    isSuspect
      ? [
          `Reading ${reading + 1} (${nameReading({ of })}) says ${readMm.toFixed(2)} where the rest and the process say ${expectedMm.toFixed(2)}: ${isLeftOut ? 'it was left out; measure it again' : 'measure it again before you believe the verdict'}.`,
        ]
      : [],
  );
}

const dimensionNames: Readonly<Record<MadeReport['dimensions'][number]['of'], string>> = {
  'tip-diameter': 'Across the tips (diameter)',
  'tooth-thickness': 'Tooth thickness (both flanks together)',
  bore: 'Bore (diameter)',
  'hub-diameter': 'Hub (diameter)',
};

function tellDimension(one: MadeReport['dimensions'][number]): string {
  const { of, madeMm, meantMm, errorMm, uMm, verdict } = one;
  const off = `${signed(errorMm)} mm, give or take ${uMm.toFixed(2)}`;
  const said = verdict === 'fits' || of === 'hub-diameter' ? '' : `: ${verdict}`;
  return `${dimensionNames[of]}: ${madeMm.toFixed(2)} made, ${meantMm.toFixed(2)} meant, ${off}${said}.`;
}

function tellRound({ outOfRound, verdict }: MadeReport): string[] {
  if (!outOfRound || (verdict !== 'warped' && outOfRound.mm < 2 * outOfRound.uMm)) return [];
  return [
    `Its takings differ by ${outOfRound.rangeMm.toFixed(2)} mm from place to place; about ${outOfRound.mm.toFixed(2)} mm of it is the part's.`,
  ];
}

function tellProof({ proof, proofMissing }: MadeReport): string[] {
  if (!proof) return [`Not rolled against its mate: ${proofMissing ?? 'no reason is known'}.`];
  if (proof.backlashMinMm === null || proof.backlashMaxMm === null) {
    return [
      `At ${proof.centerMm.toFixed(2)} mm its teeth do not reach those of ${proof.mate}: check the distance and the counts.`,
    ];
  }
  const at = `Rolled as measured against ${proof.mate} at ${proof.centerMm.toFixed(2)} mm`;
  if (proof.verdict === 'jams') {
    const from =
      proof.freeFromMm === null ? '' : ` It would be free from ${proof.freeFromMm.toFixed(2)} mm on.`;
    return [`${at}, it jams.${from}`];
  }
  if (proof.reasons.some(({ kind }) => kind === 'jams-at-mean')) {
    return [`${at}, it jams; within the give or take of the distance it is free.`];
  }
  const how = proof.verdict === 'turns' ? 'it turns' : 'it turns, but roughly';
  return [
    `${at}, ${how}: ${proof.backlashMinMm.toFixed(2)} to ${proof.backlashMaxMm.toFixed(2)} mm of backlash, ${proof.contactRatio.toFixed(2)} teeth in contact.`,
  ];
}

const unreadNames = {
  span: 'across two or three teeth (span)',
  outside: 'across the tips',
  bore: 'the bore, best by drill shanks',
} as const;

function tellUnread({ unread }: MadeReport): string[] {
  if (unread.length === 0) return [];
  return [`Still to measure: ${unread.map((one) => unreadNames[one]).join('; ')}.`];
}

function tellNext({ next }: MadeReport): string {
  const { compensation: c, uncertainty: u } = next;
  const row = (name: string, value: number, give: number): string =>
    `${name} ${signed(value)}, give or take ${give.toFixed(2)}`;
  return `For the next one, what this machine adds a side (twice that on a diameter), mm: ${[
    row('outside', c.outsidePerSideMm, u.outsidePerSideMm),
    row('teeth', c.teethPerSideMm, u.teethPerSideMm),
    row('holes', c.holesPerSideMm, u.holesPerSideMm),
  ].join('; ')}.`;
}

function signed(value: number): string {
  const text = value.toFixed(2);
  return value > 0 && Number(text) !== 0 ? `+${text}` : Number(text) === 0 ? '0.00' : text;
}
