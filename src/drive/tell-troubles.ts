import type { DriveModel, DriveWheel } from './drive-model.ts';
import type { DriveTrouble } from './drive-report.ts';
import { type DriveEnds, listNames } from './find-ends.ts';
import { findJoined } from './find-joined.ts';
import { findNeededCount } from './find-needed-count.ts';
import { findBeltDiameter, rackNode } from './list-relations.ts';
import type { Contradiction, Speeds } from './solve-speeds.ts';

/**
 * What of a drive's speeds can't be, can't be known or can't be reached, in words, and what is worth a note though
 * it keeps nothing from being known.
 */
export function tellTroubles(
  model: DriveModel,
  ends: DriveEnds,
  speeds: Speeds,
  isOutputKnown: boolean,
): { readonly troubles: readonly DriveTrouble[]; readonly notes: readonly string[] } {
  const troubles: DriveTrouble[] = [
    ...speeds.impossible.map(({ mesh, message, remedy }): DriveTrouble => {
      const { driver, driven } = model.meshes[mesh];
      return { kind: 'cannot-mesh', about: [...new Set([driver, driven])], message, remedy };
    }),
    ...speeds.contradictions.map(tellContradiction),
  ];
  const notes = speeds.slips.map(({ mesh, percent }) => {
    const { driver, driven } = model.meshes[mesh];
    return `the belt from "${driver}" to "${driven}" closes a loop and has to slip by ${percent.toPrecision(2)} %`;
  });
  if (ends.from === undefined || speeds.contradictions.length > 0) return { troubles, notes };

  // 1. Wheels that no mesh joins to the input.
  const joined = findJoined(model, ends.from);
  const apart = model.wheels.filter((wheel) => !joined.has(wheel.shaft));
  if (apart.length > 0) {
    troubles.push({
      kind: 'not-reached',
      about: apart.map((wheel) => wheel.id),
      message: `no mesh joins ${listNames(apart.map((wheel) => wheel.id))} to "${ends.from}", where the drive begins`,
      remedy: 'Add the mesh that drives it, or the shaft it shares with another wheel.',
    });
  }

  // 2. Wheels whose count is missing, where that matters.
  const open = model.wheels.filter((wheel) => joined.has(wheel.shaft) && lacksSize(model, wheel));
  if (!isOutputKnown && ends.to !== undefined && open.length > 0) {
    troubles.push(tellUncounted(model, ends, open));
  } else {
    notes.push(...open.map((wheel) => tellOpenWheel(model, wheel)));
  }

  // 3. All counted, and still free.
  const isFree = !isOutputKnown && open.length === 0 && ends.to !== undefined && joined.has(ends.to);
  if (isFree && speeds.ambiguous.length > 0) {
    const wheels = speeds.ambiguous.flatMap((mesh) => [model.meshes[mesh].driver, model.meshes[mesh].driven]);
    troubles.push({
      kind: 'undetermined',
      about: [...new Set(wheels)],
      message: `a carrier takes in wheels on crossing axes (${listNames([...new Set(wheels)])}), and which way those turn can't be told from counts`,
      remedy: 'Turn it by hand once and count; sets of bevel wheels on a carrier are not worked out.',
    });
  } else if (isFree) {
    const missing =
      ends.rack && !speeds.speeds.has(rackNode(ends.rack.id)) ? [ends.rack.id] : [ends.to ?? ''];
    const isPitch = ends.rack !== undefined && speeds.speeds.has(rackNode(ends.rack.id));
    troubles.push({
      kind: 'undetermined',
      about: missing,
      message: isPitch
        ? `the bar "${ends.rack?.id}" moves, but how far a tooth is isn't known`
        : `"${missing[0]}" can turn as it likes: nothing holds the rest of the set it belongs to`,
      remedy: isPitch
        ? 'Measure the bar, or give the module of the wheel that runs on it.'
        : 'Say which shaft of the planetary set is held still, or what else drives it.',
    });
  } else if (!isOutputKnown && ends.to !== undefined && open.length === 0 && apart.length === 0) {
    troubles.push({
      kind: 'not-reached',
      about: [ends.to],
      message: `no mesh joins "${ends.to}" to "${ends.from}", where the drive begins`,
      remedy: 'Add the mesh that drives it.',
    });
  }
  return { troubles, notes };
}

function tellContradiction({ kind, wheels, quotient }: Contradiction): DriveTrouble {
  const names = listNames(wheels);
  const about = [...wheels];
  switch (kind) {
    case 'locked':
      return {
        kind: 'contradiction',
        about,
        message: `${names} sit on one shaft and are said to mesh: they can't turn`,
        remedy: 'Give them two shafts, or take the mesh out.',
      };
    case 'held':
      return {
        kind: 'contradiction',
        about,
        message:
          wheels.length === 0
            ? 'the shaft where the drive begins is held still'
            : `the drive begins at a shaft that ${names} join to one that is held still`,
        remedy: 'Take the shaft off the list of those held still, or correct the mesh that joins them.',
      };
    case 'carried':
      return {
        kind: 'contradiction',
        about,
        message: `the planetary set of ${names} can't turn as described: its meshes, or what is held still, contradict each other`,
        remedy: 'Count those wheels again, and hold one shaft of the set still, not two.',
      };
    case 'loop': {
      const size = Number(Math.abs(quotient ?? 1).toPrecision(4));
      const how =
        (quotient ?? 1) < 0
          ? 'one way round it should turn against the other way'
          : `one way round a shaft should turn ${size} times as fast as the other way`;
      return {
        kind: 'contradiction',
        about,
        message: `${names} form a loop that can't turn: ${how}`,
        remedy: 'Count the teeth of those wheels again, or take out the mesh that is not there.',
      };
    }
  }
}

function tellUncounted(model: DriveModel, ends: DriveEnds, open: readonly DriveWheel[]): DriveTrouble {
  const teeth = open.length === 1 ? findNeededCount(model, ends, open[0]) : undefined;
  const needed = teeth === undefined ? undefined : { wheel: open[0].id, teeth };
  return {
    kind: 'unknown-teeth',
    about: open.map((wheel) => wheel.id),
    message: `nobody has counted ${listNames(open.map((wheel) => wheel.id))}, and the ratio hangs on ${open.length === 1 ? 'it' : 'them'}`,
    remedy: needed
      ? `For what is wanted it would have ${Number(needed.teeth.toFixed(2))} teeth; its mate and the distance between the shafts should say the same.`
      : tellHowToCount(open),
    ...(needed ? { needed } : {}),
  };
}

function tellHowToCount(open: readonly DriveWheel[]): string {
  if (open.every((wheel) => wheel.isLost))
    return 'It is lost: its mate and the distance between the shafts say what it was, and the speed that is wanted.';
  return open.some((wheel) => wheel.kind === 'pulley')
    ? 'Count the teeth; of a pulley without teeth measure the diameter the belt runs on.'
    : 'Count the teeth; of a broken wheel say how many are left and how many seem gone.';
}

/** Whether what a wheel passes on hangs on a number that nobody has given. */
function lacksSize(model: DriveModel, wheel: DriveWheel): boolean {
  if (wheel.kind === 'rack' || wheel.teeth !== undefined) return false;
  const meshes = model.meshes.filter((mesh) => mesh.driver === wheel.id || mesh.driven === wheel.id);
  return meshes.some((mesh) => mesh.kind !== 'belt' || findBeltDiameter(wheel) === undefined);
}

function tellOpenWheel(model: DriveModel, wheel: DriveWheel): string {
  const meshes = model.meshes.filter((mesh) => mesh.driver === wheel.id || mesh.driven === wheel.id);
  const isAlone = model.wheels.every((one) => one === wheel || one.shaft !== wheel.shaft);
  return isAlone && meshes.length > 1
    ? `"${wheel.id}" is an idler: its count changes no speed but its own, so it needn't be known for the ratio`
    : `how fast "${wheel.id}" turns is open until its teeth are counted`;
}
