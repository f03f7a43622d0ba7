import type { DriveMesh, DriveModel, DriveWheel } from '../drive/drive-model.ts';
import { findEnds } from '../drive/find-ends.ts';
import { divide, multiply, type Rational, rationalOf, toNumber } from '../numeric/rational.ts';
import type { PairQuestion, PairSide } from './list-wheel-groups.ts';
import { findOutput } from './output-speed.ts';

/** The meshes of a drive whose wheels may change while their posts stay, and what their ratios must multiply to. */
export interface PostsPlan {
  readonly posts: readonly PairQuestion[];
  /** Product of driven over driver counts, over all posts */
  readonly wanted: Rational;
  /** Whether that is what the person wants; else what the drive has now */
  readonly isWanted: boolean;
  /** Part by which it may be off */
  readonly tolerance: number;
  readonly notes: readonly string[];
}

/** Why there is nothing to search. */
export interface NoPlan {
  readonly why: string;
}

/**
 * Plans the search for substitute trains: the tooth meshes between input and output in which a wheel may change, each
 * with its distance, and the product of ratios that keeps the speed. What other meshes, belts and worms do is worked
 * out by the drive itself, with the posts' wheels alike.
 *
 * A wheel that stands in two meshes stays as it is: its count changes no speed, and what it runs with on both sides would
 * have to change at once. Meshes on a carrier, with a rack, or that no change of counts lets the output feel are left
 * aside.
 */
export function planPosts(
  model: DriveModel,
  mayChange: ReadonlySet<string>,
  sideOf: (wheel: DriveWheel, mayChange: boolean) => PairSide,
): PostsPlan | NoPlan {
  const notes: string[] = [];
  const meshesOf = (id: string): number =>
    model.meshes.filter(({ driver, driven }) => driver === id || driven === id).length;
  const wheelOf = (id: string): DriveWheel | undefined => model.wheels.find((wheel) => wheel.id === id);
  const found: { mesh: DriveMesh; driver: DriveWheel; driven: DriveWheel }[] = [];
  for (const mesh of model.meshes) {
    const driver = wheelOf(mesh.driver);
    const driven = wheelOf(mesh.driven);
    if (!driver || !driven || mesh.kind !== 'teeth' || mesh.carrier !== undefined) continue;
    if (driver.kind === 'rack' || driven.kind === 'rack') continue;
    const free = [driver, driven].filter(
      ({ id, kind }) => mayChange.has(id) && kind === 'external' && meshesOf(id) === 1,
    );
    for (const one of [driver, driven]) {
      if (mayChange.has(one.id) && meshesOf(one.id) > 1)
        notes.push(`"${one.id}" runs with two wheels at once, so it stays as it is here`);
    }
    if (free.length > 0) found.push({ mesh, driver, driven });
  }
  const drives = found.flatMap((one) => orient(model, found, one));
  if (drives.length === 0) return { why: 'no wheel that may change decides the speed of the output' };
  const without = drives.find(({ mesh }) => mesh.center === undefined);
  if (without) {
    return {
      why: `the distance between the shafts of "${without.driver.id}" and "${without.driven.id}" was not measured: other counts can't be told to fit`,
    };
  }
  const output = findOutput(withAlikeCounts(model, drives));
  const wish = findWish(model);
  if (!output || !wish)
    return { why: 'nothing says what the speed should be, and the drive as it stands does not tell' };
  const wanted = wish.isTravel
    ? rationalOf(Number(((toNumber(output.turns) * output.step) / wish.value).toPrecision(12)))
    : multiply(rationalOf(wish.value), output.turns);
  return {
    posts: drives.map(({ mesh, driver, driven }) => ({
      centerDistance: mesh.center?.mm ?? 0,
      uncertainty: mesh.center?.uMm ?? 0,
      driver: sideOf(
        driver,
        mayChange.has(driver.id) && meshesOf(driver.id) === 1 && driver.kind === 'external',
      ),
      driven: sideOf(
        driven,
        mayChange.has(driven.id) && meshesOf(driven.id) === 1 && driven.kind === 'external',
      ),
    })),
    wanted: wish.exact ? multiply(wish.exact, output.turns) : wanted,
    isWanted: wish.isWanted,
    tolerance: (model.wanted?.tolerancePercent ?? usualTolerance) / 100,
    notes: [...new Set(notes)],
  };
}

/** Percent, where nobody says: as the check of the drive against its wish takes it. */
const usualTolerance = 0.5;

type Post = { readonly mesh: DriveMesh; readonly driver: DriveWheel; readonly driven: DriveWheel };

function withAlikeCounts(
  model: DriveModel,
  posts: readonly Post[],
  odd?: { readonly id: string },
): DriveModel {
  const ids = new Set(posts.flatMap(({ driver, driven }) => [driver.id, driven.id]));
  return {
    ...model,
    wheels: model.wheels.map((wheel) =>
      wheel.id === odd?.id
        ? { ...wheel, teeth: 2 * alike }
        : ids.has(wheel.id)
          ? { ...wheel, teeth: alike }
          : wheel,
    ),
  };
}

/** Any count will do. */
const alike = 100;

/** A post the way power runs through it; none where the output does not feel its counts. */
function orient(model: DriveModel, posts: readonly Post[], post: Post): Post[] {
  const [driverMeshes, drivenMeshes] = [post.driver, post.driven].map(
    ({ id }) => model.meshes.filter((mesh) => mesh.driver === id || mesh.driven === id).length,
  );
  const before = findOutput(withAlikeCounts(model, posts));
  // The side that stands in no other mesh shows what this mesh alone does.
  const isByDriver = driverMeshes === 1 || drivenMeshes > 1;
  const after = findOutput(withAlikeCounts(model, posts, isByDriver ? post.driver : post.driven));
  if (!before || !after) return [];
  const change = toNumber(divide(after.turns, before.turns));
  const power = isByDriver ? change : 1 / change;
  if (power === 2) return [post];
  if (power === 0.5) return [{ mesh: post.mesh, driver: post.driven, driven: post.driver }];
  return [];
}

interface Wish {
  readonly value: number;
  readonly isTravel: boolean;
  readonly isWanted: boolean;
  /** Where the value is a ratio that is known exactly */
  readonly exact?: Rational;
}

function findWish(model: DriveModel): Wish | undefined {
  const { ratio, travelMmPerTurn } = model.wanted ?? {};
  const isTravel = findEnds(model).rack !== undefined;
  if (isTravel && travelMmPerTurn !== undefined) return { value: travelMmPerTurn, isTravel, isWanted: true };
  if (!isTravel && ratio !== undefined) return { value: ratio, isTravel, isWanted: true };
  const now = findOutput(model);
  if (!now) return undefined;
  const turns = toNumber(now.turns);
  if (isTravel) return { value: turns * now.step, isTravel, isWanted: false };
  return { value: 1 / turns, isTravel, isWanted: false, exact: divide({ num: 1n, den: 1n }, now.turns) };
}
