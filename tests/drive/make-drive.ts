import type { DriveMesh, DriveModel, DriveWheel } from '../../src/drive/drive-model.ts';

/** A drive from what differs from plain external wheels, each on a shaft of its own name, meshing by teeth. */
export function makeDrive(
  wheels: readonly (Partial<DriveWheel> & { readonly id: string })[],
  meshes: readonly (Partial<DriveMesh> & { readonly driver: string; readonly driven: string })[],
  rest: Partial<DriveModel> = {},
): DriveModel {
  return {
    wheels: wheels.map((wheel) => ({
      name: undefined,
      kind: 'external',
      shaft: wheel.id,
      part: undefined,
      post: undefined,
      teeth: undefined,
      diameterMm: undefined,
      pitchMm: undefined,
      spec: undefined,
      knownFrom: 'counted',
      isLost: false,
      worm: undefined,
      tipWearMm: 0,
      missing: [],
      runoutMm: 0,
      notes: [],
      ...wheel,
    })),
    meshes: meshes.map((mesh) => ({
      kind: 'teeth',
      center: undefined,
      carrier: undefined,
      isCrossed: false,
      slipPercent: 0,
      ...mesh,
    })),
    fixed: [],
    motor: undefined,
    wanted: undefined,
    notes: [],
    ...rest,
  };
}

/** A train of pairs: driver and driven counts, each driven wheel on the shaft of the next driver. */
export function makeTrain(stages: readonly (readonly [number, number])[]): DriveModel {
  return makeDrive(
    stages.flatMap(([driver, driven], k) => [
      { id: `d${k}`, teeth: driver, shaft: `s${k}` },
      { id: `w${k}`, teeth: driven, shaft: `s${k + 1}` },
    ]),
    stages.map((_, k) => ({ driver: `d${k}`, driven: `w${k}` })),
  );
}

/** Sun, planet and ring on an arm: the sun drives. */
export function makePlanetary(
  sun: number,
  planet: number | undefined,
  ring: number,
  rest: Partial<DriveModel>,
): DriveModel {
  return makeDrive(
    [
      { id: 'sun', teeth: sun },
      { id: 'planet', teeth: planet },
      { id: 'ring', teeth: ring, kind: 'internal' },
    ],
    [
      { driver: 'sun', driven: 'planet', carrier: 'arm' },
      { driver: 'planet', driven: 'ring', carrier: 'arm' },
    ],
    rest,
  );
}
