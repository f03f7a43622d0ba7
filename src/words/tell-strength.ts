import { solidRim } from '../strength/find-root-stress.ts';
import type { Range } from '../strength/range.ts';
import type { StrengthReport } from '../strength/strength-report.ts';
import { capitalize } from './capitalize.ts';

/**
 * What the strength of a wheel comes to, in plain sentences, the weightiest first: what governs and by how much, what
 * the teeth carry, heat, wall, press fit, and why the old wheel broke. Figures are rounded to what they are worth.
 */
export function tellStrength(report: StrengthReport): readonly string[] {
  return [
    tellVerdict(report),
    ...report.criteria.filter(({ kind }) => kind !== report.governs).map(tellCriterion),
    tellCarried(report),
    ...tellHeat(report),
    ...tellWall(report),
    ...tellPress(report),
    ...tellGround(report),
    ...tellBreak(report),
  ];
}

type Criterion = StrengthReport['criteria'][number];

const namesOfCriteria: Readonly<Record<Criterion['kind'], string>> = {
  'root-running': 'bending at the root while it runs',
  'root-stall': 'bending at the root in a stall',
  'flank-running': 'pressure on the flanks',
};

function wordVerdict({ kind, verdict }: Criterion): string {
  if (verdict === 'holds') return 'It should hold';
  if (verdict === 'doubtful') return 'It may hold, but not surely';
  return kind === 'flank-running' ? 'Its flanks will not last' : 'It is likely to break';
}

function tellVerdict(report: StrengthReport): string {
  const { governs, verdict, heat, wall } = report;
  if (governs === 'heat')
    return `${report.material.name}: too warm. ${round(report.temperatureC)} °C is over the ${round(heat.warmLimitC.value)} °C that its teeth stand for years.`;
  if (governs === 'wall' && wall)
    return `The wall between root and bore is too thin: ${round(wall.mm)} mm, ${round(wall.inToothDepths)} of a tooth's depth.`;
  const criterion = report.criteria.find(({ kind }) => kind === governs);
  if (!criterion || verdict === 'no-load')
    return 'No load is known, so nothing is judged by it. Give the torque on this shaft, running and in a stall.';
  return `${wordVerdict(criterion)}: ${tellMargin(criterion)}`;
}

function tellCriterion(criterion: Criterion): string {
  return capitalize(tellMargin(criterion));
}

function tellMargin({ kind, stressMpa, allowableMpa, margin, wanted }: Criterion): string {
  return `${namesOfCriteria[kind]} is ${round(stressMpa.value)} MPa of ${round(allowableMpa.value)} MPa, a margin of ${round(margin.value)} where ${wanted} is wanted; the data leave ${tellRange(margin)} open.`;
}

function tellCarried({ carries, criteria }: StrengthReport): string {
  const running = carries.runningNmm ?? carries.runningN;
  const stall = carries.stallNmm ?? carries.stallN;
  const unit = carries.runningNmm ? 'N mm' : 'N';
  const lead = criteria.length === 0 ? 'Its teeth carry' : 'With the margins wanted, its teeth carry';
  return `${lead} about ${round(running.value)} ${unit} running (${tellRange(running)}) and ${round(stall.value)} ${unit} once, in a stall (${tellRange(stall)}).`;
}

function tellHeat({ governs, heat, material }: StrengthReport): string[] {
  if (governs === 'heat' || heat.verdict === 'cool') return [];
  return [
    `${material.name} stands ${round(heat.warmLimitC.low)} to ${round(heat.warmLimitC.high)} °C for years: ${round(heat.leftC)} degrees are left. Keep air moving.`,
  ];
}

function tellWall({ governs, wall }: StrengthReport): string[] {
  if (governs === 'wall' || !wall || wall.verdict === 'enough') return [];
  return [
    `The wall between root and bore is ${round(wall.mm)} mm, ${wall.inToothDepths.toFixed(2)} of a tooth's depth; from ${solidRim} on it bears the teeth as solid ground does.`,
  ];
}

function tellPress({ press, material, broke }: StrengthReport): string[] {
  if (!press) return [];
  const size = `on the ${round(press.shaftMm)} mm shaft, ${material.name} stands an interference of ${micro(press.lastingMm)} mm for years`;
  if (!press.isWithinReach) {
    return [
      `No press fit: ${size}, bores come out ${round(press.boreScatterMm)} mm apart, and a caliper is a little off too. Make a slip fit and bond it, or use a flat, a knurl or a metal bush.`,
    ];
  }
  return [
    `A press fit is within reach: ${size}. After 1,000 hours it still holds about ${round(press.laterGripNmm)} N mm of the ${round(press.freshGripNmm)} it holds at first.${broke[0]?.cause === 'hub-split' ? ' The old one split that way all the same: a slip fit, bonded, is surer.' : ''}`,
  ];
}

/** What the figures stand on, where that is thin. */
function tellGround(report: StrengthReport): string[] {
  const said: string[] = [];
  if (!report.isMaterialOfProcess)
    said.push(`A ${report.process.name} does not usually make gears of ${report.material.name}.`);
  if (report.isTrial) said.push("What the wheel is isn't sure yet, so its strength isn't either.");
  if (!report.form.isConcentrationInRange)
    said.push(
      'The corner at the root is sharper than the formula covers: the true stress is higher. Round it.',
    );
  if (report.mate && report.form.contactRatio === null)
    said.push('It does not run with its mate as the job has them, so the load is taken at the tip.');
  else if (report.mate?.isMaterialAssumed)
    said.push("The mate's material isn't known; steel stands for it, which is hardest on these flanks.");
  if (report.criteria.length > 0)
    said.push('Wear is in none of these figures: grease it with what suits it, and look at it again.');
  if (report.allowableBasis === 'share-of-strength' && report.criteria.length > 0)
    said.push('No tests of gears of this material are held: a share of its strength stands for them.');
  return said;
}

function tellBreak({ broke, stretch }: StrengthReport): string[] {
  const said = broke
    .filter(({ probability }, i) => i === 0 || probability >= 0.15)
    .map(
      ({ name, likelihood, figure, test }) =>
        `Why the old one broke, ${likelihood}: ${name}${figure ? ` (${tellFigure(figure)})` : ''}. ${test}`,
    );
  if (stretch) said.push(tellStretch(stretch));
  return said;
}

type Figure = NonNullable<StrengthReport['broke'][number]['figure']>;

function tellFigure({ of, value }: Figure): string {
  switch (of) {
    case 'strain-over-lasting':
      return `its bore was stretched to ${round(value)} times what lasts`;
    case 'stall-margin':
      return `a stall took it to a margin of ${round(value)}`;
    case 'running-margin':
      return `running left a margin of ${round(value)}`;
    case 'degrees-left':
      return value < 0
        ? `${round(-value)} degrees over its limit`
        : `${round(value)} degrees under its limit`;
    case 'growth-percent':
      return `it grows ${round(value)} % when soaked`;
  }
}

function tellStretch({ strain, from, hoop }: NonNullable<StrengthReport['stretch']>): string {
  const start = `${from === 'gap' ? 'Its gap' : 'Shaft and bore'} mean${from === 'gap' ? 's' : ''} that the bore was stretched by ${round(strain * 100)} %, by the press fit and by what it shrank since`;
  if (!hoop) return `${start}.`;
  return `${start}; ${round(hoop.lastingStrain * 100)} % lasts for years. That pulled with ${round(hoop.freshMpa)} MPa when new and still with ${round(hoop.laterMpa)} MPa after 1,000 hours, of the ${round(hoop.strengthMpa)} MPa that it stands for minutes only.`;
}

function tellRange({ low, high }: Range): string {
  return `${round(low)} to ${round(high)}`;
}

/** Two digits that count; no more is known. */
function round(value: number): string {
  if (!Number.isFinite(value)) return 'any';
  return String(Number(value.toPrecision(Math.abs(value) >= 100 ? 3 : 2)));
}

/** Interferences are micrometers: three decimals of a millimeter. */
function micro(value: number): string {
  return value.toFixed(3);
}
