import { capitalize, type DriveReport, isCovered, type Job, type WheelReport } from '../../index.ts';
import { findSeat } from '../state/edit-train.ts';
import { isSpecified } from '../state/is-specified.ts';
import { nameWheel } from '../words/name-wheel.ts';
import { withNames } from '../words/with-names.ts';
import { termOf } from './wish-of.ts';

/** One thing to do about the train, and on which wheel. */
export type TrainAct =
  | { readonly of: 'add' | 'motor' | 'wanted' }
  | { readonly of: 'kind' | 'against' | 'seat' | 'gear' | 'fits' | 'size'; readonly wheelId: string }
  | { readonly of: 'distance' | 'see'; readonly wheelId: string; readonly mate: string };

export interface TrainNext {
  readonly act: TrainAct;
  /** Why this, as a sentence */
  readonly why: string;
}

/** A gear's next reading tells less than this many bits: not worth a walk to the bench. */
const leastGain = 0.05;

/**
 * Everything worth doing about the train, the most useful first: what keeps it from running, what keeps it from being
 * worked out, the gear whose next reading tells most, the distances, the motor, what is wanted, what to put in place of
 * what is broken.
 */
export function listTrainActs(
  job: Job,
  report: DriveReport | undefined,
  answers: Readonly<Record<string, WheelReport | undefined>>,
): TrainNext[] {
  const wheels = job.wheels ?? [];
  if (wheels.length < 2) {
    const why =
      wheels.length === 0
        ? 'Begin with any gear of the machine.'
        : 'Add the gear it runs against, or any other of the machine.';
    return [{ act: { of: 'add' }, why }];
  }
  const next: TrainNext[] = [];
  const add = (act: TrainAct, why: string): void => {
    if (!next.some((one) => isSameAct(one.act, act))) next.push({ act, why });
  };
  const name = (id: string): string => nameWheel(job, id);
  const isWheel = (id: string): boolean => wheels.some((one) => one.id === id);
  for (const trouble of report?.troubles ?? []) {
    const about = trouble.about.filter(isWheel);
    const why = withNames(`${sentence(trouble.message)} ${trouble.remedy}`, job);
    const [first, second] = about;
    if (trouble.kind === 'cannot-mesh' && second !== undefined)
      add({ of: 'distance', wheelId: first, mate: second }, why);
    else if (trouble.kind === 'contradiction' && first !== undefined)
      add({ of: 'against', wheelId: first }, why);
    else if (trouble.kind === 'unknown-teeth' && first !== undefined) add(countAct(job, first), why);
  }
  for (const wheel of wheels) {
    if (isJoined(job, wheel.id)) continue;
    add({ of: 'against', wheelId: wheel.id }, `Nothing says yet what ${name(wheel.id)} runs against.`);
  }
  for (const mesh of report?.meshes ?? []) {
    if (mesh.verdict !== 'jams') continue;
    const broken = [mesh.driven, mesh.driver].find((id) => stateOf(job, id) !== 'sound') ?? mesh.driven;
    add(
      { of: 'fits', wheelId: broken },
      `${capitalize(name(mesh.driver))} and ${name(mesh.driven)} jam: see what fits instead.`,
    );
  }
  const gains = wheels.flatMap((wheel) => {
    const answer = answers[wheel.id];
    if (!answer || !isCovered(wheel) || isSpecified(wheel)) return [];
    if (answer.verdict === 'certain' || answer.ending) return [];
    const gain = answer.candidates.length === 0 ? 1 : (answer.next[0]?.gainBits ?? 0);
    return gain >= leastGain ? [{ wheel, gain }] : [];
  });
  gains.sort((a, b) => b.gain - a.gain);
  for (const { wheel } of gains)
    add(
      { of: 'gear', wheelId: wheel.id },
      `What ${name(wheel.id)} is can't be told yet: a reading there tells most.`,
    );
  for (const mesh of report?.meshes ?? []) {
    if (mesh.centerMm !== null || mesh.kind === 'belt') continue;
    if (isLeftOut(job, mesh.driven, mesh.driver)) continue;
    add(
      { of: 'distance', wheelId: mesh.driven, mate: mesh.driver },
      `How far the posts of ${name(mesh.driver)} and ${name(mesh.driven)} stand apart decides whether they run.`,
    );
  }
  const isNotStarting = report?.troubles.some((trouble) => trouble.kind === 'no-input') ?? false;
  const leftOut = job.leftOut ?? [];
  if (isNotStarting || (job.motor?.rpm === undefined && !leftOut.includes('motor')))
    add(
      { of: 'motor' },
      isNotStarting
        ? 'Nothing says yet where the turning starts.'
        : 'Then every post can be given its speed.',
    );
  if (termOf(job.wanted) === undefined && job.wanted?.unknown !== true)
    add({ of: 'wanted' }, 'Then it can be said how far off it runs.');
  for (const wheel of wheels) {
    if (stateOf(job, wheel.id) === 'sound') continue;
    const how = wheel.state === 'lost' ? 'is lost' : 'is damaged';
    add(
      { of: 'fits', wheelId: wheel.id },
      `${sentence(`${name(wheel.id)} ${how}`)} See what can be put in its place.`,
    );
  }
  return next;
}

export function isSameAct(a: TrainAct, b: TrainAct): boolean {
  return actKey(a) === actKey(b);
}

export function actKey(act: TrainAct): string {
  return [act.of, 'wheelId' in act ? act.wheelId : '', 'mate' in act ? act.mate : ''].join('~');
}

/** Counting is done at the gear; what has no gear readings, such as a screw, is asked here. */
function countAct(job: Job, wheelId: string): TrainAct {
  const kind = job.wheels?.find((one) => one.id === wheelId)?.kind;
  return {
    of: kind === undefined || kind === 'external' || kind === 'internal' || kind === 'rack' ? 'gear' : 'size',
    wheelId,
  };
}

function isJoined(job: Job, wheelId: string): boolean {
  const wheel = job.wheels?.find((one) => one.id === wheelId);
  if (!wheel) return true;
  if ((job.meshes ?? []).some((mesh) => mesh.driver === wheelId || mesh.driven === wheelId)) return true;
  const seat = findSeat(job, wheel);
  return seat.how === 'one-piece' || seat.how === 'same-shaft';
}

/** A wheel is sound unless the job says that something is wrong with it. */
function stateOf(job: Job, wheelId: string): 'sound' | 'damaged' | 'lost' {
  const wheel = job.wheels?.find((one) => one.id === wheelId);
  if (wheel?.state !== undefined) return wheel.state;
  return (wheel?.damage ?? []).length > 0 ? 'damaged' : 'sound';
}

function isLeftOut(job: Job, wheelId: string, mate: string): boolean {
  const wheel = job.wheels?.find((one) => one.id === wheelId);
  return (wheel?.leftOut ?? []).includes(`center-distance~${mate}`);
}

function sentence(text: string): string {
  return `${capitalize(text)}${/[.!?]$/.test(text) ? '' : '.'}`;
}
