import type { DriveModel, DriveWheel } from './drive-model.ts';
import type { DriveTrouble } from './drive-report.ts';

export interface DriveEnds {
  readonly from: string | undefined;
  /** A shaft; of a rack, its slide */
  readonly to: string | undefined;
  /** Where the output is a rack */
  readonly rack: DriveWheel | undefined;
  readonly troubles: readonly DriveTrouble[];
}

/**
 * Where the drive is driven and what it drives: as wished; else the motor's shaft or the only one that nothing
 * drives, and the only one that drives nothing (in a planetary set the carrier, where nothing else is left).
 */
export function findEnds(model: DriveModel): DriveEnds {
  const troubles: DriveTrouble[] = [];
  const shafts = listShafts(model);
  const from = findInput(model, shafts, troubles);
  const { to, rack } = findOutput(model, shafts, from, troubles);
  return { from, to, rack, troubles };
}

/** Every shaft of the drive, wheels' first, then carriers and those held still. */
export function listShafts(model: DriveModel): readonly string[] {
  const named = [
    ...model.wheels.map((wheel) => wheel.shaft),
    ...model.meshes.flatMap((mesh) => (mesh.carrier === undefined ? [] : [mesh.carrier])),
    ...model.fixed,
  ];
  return [...new Set(named)];
}

function findInput(
  model: DriveModel,
  shafts: readonly string[],
  troubles: DriveTrouble[],
): string | undefined {
  const asked = model.wanted?.from ?? model.motor?.shaft;
  const slides = new Set(model.wheels.flatMap((wheel) => (wheel.kind === 'rack' ? [wheel.shaft] : [])));
  if (asked !== undefined && slides.has(asked)) {
    troubles.push({
      kind: 'no-input',
      about: [asked],
      message: `the drive begins at "${asked}", a bar, and a bar makes no turns to count from`,
      remedy: 'Name the shaft of a wheel that the bar drives.',
    });
    return undefined;
  }
  if (asked !== undefined) {
    if (shafts.includes(asked)) return asked;
    troubles.push({
      kind: 'no-input',
      about: [asked],
      message: `no wheel sits on a shaft called "${asked}", where the drive should begin`,
      remedy: shafts.length === 0 ? 'Add the wheels first.' : `The shafts are: ${listNames(shafts)}.`,
    });
    return undefined;
  }
  const { driving, driven } = listRoles(model);
  const open = [...driving].filter(
    (shaft) => !driven.has(shaft) && !model.fixed.includes(shaft) && !slides.has(shaft),
  );
  if (open.length === 1) return open[0];
  troubles.push({
    kind: 'no-input',
    about: open,
    message:
      open.length === 0
        ? model.meshes.length === 0
          ? 'no mesh says which wheel drives which'
          : 'every shaft is driven by another: nothing says where the drive begins'
        : `the drive could begin at any of these shafts: ${listNames(open)}`,
    remedy:
      model.meshes.length === 0
        ? 'Say for each pair which wheel drives and which is driven.'
        : 'Name the shaft of the motor, the spring or the hand.',
  });
  return undefined;
}

function findOutput(
  model: DriveModel,
  shafts: readonly string[],
  from: string | undefined,
  troubles: DriveTrouble[],
): { readonly to: string | undefined; readonly rack: DriveWheel | undefined } {
  const rackOf = (shaft: string): DriveWheel | undefined =>
    model.wheels.find((wheel) => wheel.kind === 'rack' && wheel.shaft === shaft);
  const asked = model.wanted?.to;
  if (asked !== undefined) {
    const named = model.wheels.find((wheel) => wheel.kind === 'rack' && wheel.id === asked);
    if (named) return { to: named.shaft, rack: named };
    if (shafts.includes(asked)) return { to: asked, rack: rackOf(asked) };
    troubles.push({
      kind: 'no-output',
      about: [asked],
      message: `no wheel sits on a shaft called "${asked}", which the drive should turn`,
      remedy: shafts.length === 0 ? 'Add the wheels first.' : `The shafts are: ${listNames(shafts)}.`,
    });
    return { to: undefined, rack: undefined };
  }
  if (model.meshes.length === 0) return { to: undefined, rack: undefined };
  const { driving, driven, carriers } = listRoles(model);
  const isFree = (shaft: string): boolean =>
    shaft !== from && !driving.has(shaft) && !model.fixed.includes(shaft);
  const open = [...driven].filter(isFree);
  const carried = carriers.filter((shaft) => isFree(shaft) && !driven.has(shaft));
  // A planet turns on its arm and drives nothing outside; where an arm is left, that is what comes out.
  const planets = planetShafts(model);
  const ends = [...open.filter((shaft) => carried.length === 0 || !planets.has(shaft)), ...carried];
  if (ends.length === 1) return { to: ends[0], rack: rackOf(ends[0]) };
  troubles.push({
    kind: 'no-output',
    about: ends,
    message:
      ends.length === 0
        ? 'every shaft drives another: nothing says where the drive ends'
        : `the drive ends at several shafts: ${listNames(ends)}`,
    remedy: 'Say which of them you want to know about.',
  });
  return { to: undefined, rack: undefined };
}

function listRoles(model: DriveModel): {
  readonly driving: ReadonlySet<string>;
  readonly driven: ReadonlySet<string>;
  readonly carriers: readonly string[];
} {
  const shaftOf = new Map(model.wheels.map((wheel) => [wheel.id, wheel.shaft]));
  const listOf = (end: 'driver' | 'driven'): Set<string> =>
    new Set(model.meshes.map((mesh) => shaftOf.get(mesh[end]) ?? ''));
  const carriers = model.meshes.flatMap((mesh) => (mesh.carrier === undefined ? [] : [mesh.carrier]));
  return { driving: listOf('driver'), driven: listOf('driven'), carriers: [...new Set(carriers)] };
}

/** Shafts whose wheels stand in carried meshes only, two or more of them. */
function planetShafts(model: DriveModel): ReadonlySet<string> {
  const shaftOf = new Map(model.wheels.map((wheel) => [wheel.id, wheel.shaft]));
  const counts = new Map<string, { carried: number; others: number }>();
  for (const mesh of model.meshes) {
    for (const end of [mesh.driver, mesh.driven]) {
      const shaft = shaftOf.get(end) ?? '';
      const count = counts.get(shaft) ?? { carried: 0, others: 0 };
      if (mesh.carrier === undefined) count.others++;
      else count.carried++;
      counts.set(shaft, count);
    }
  }
  const planets = [...counts].filter(([, { carried, others }]) => carried >= 2 && others === 0);
  return new Set(planets.map(([shaft]) => shaft));
}

/** The first few names, and how many more there are. */
export function listNames(names: readonly string[]): string {
  const shown = names.slice(0, 8).map((name) => `"${name}"`);
  return names.length > 8 ? `${shown.join(', ')} and ${names.length - 8} more` : shown.join(', ');
}
