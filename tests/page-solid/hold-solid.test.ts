import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { parseJob, shapePart } from '../../src/index.ts';
import { fitPart, framePart } from '../../src/page/solid/frame-part.ts';
import { faceCut, type Pose, type PoseStep, stepPose, zoomPose } from '../../src/page/solid/pose.ts';
import { tellSolid } from '../../src/page/solid/tell-solid.ts';
import { checkMesh } from '../../src/solid/check-mesh.ts';

const home: Pose = { yaw: -0.3, pitch: 0.7, nearness: 1 };

function steps(way: PoseStep, count: number): Pose {
  let pose = home;
  for (let k = 0; k < count; k++) pose = stepPose(pose, way, home);
  return pose;
}

describe('holding the solid', () => {
  test('a step is 15°: 24 to the right are a whole turn, and left undoes right', () => {
    const once = steps('right', 1);
    expect(once.yaw - home.yaw).toBeCloseTo(Math.PI / 12, 12);
    expect(stepPose(once, 'left', home).yaw).toBeCloseTo(home.yaw, 12);
    const around = steps('right', 24);
    expect(Math.cos(around.yaw - home.yaw)).toBeCloseTo(1, 12);
  });

  test('it never goes over backward: up and down end straight below and straight above', () => {
    expect(steps('down', 30).pitch).toBe(Math.PI / 2);
    expect(steps('up', 30).pitch).toBe(-Math.PI / 2);
  });

  test('nearer and farther end somewhere, and home is home', () => {
    expect(steps('nearer', 99).nearness).toBe(8);
    expect(steps('farther', 99).nearness).toBe(0.5);
    expect(zoomPose(home, 2).nearness).toBe(2);
    expect(stepPose(steps('up', 3), 'home', home)).toEqual(home);
  });

  test('a cut that would look away is turned to the eye, one that is seen stays', () => {
    expect(faceCut(steps('right', 12), home).yaw).toBe(home.yaw);
    expect(faceCut(steps('right', 2), home)).toEqual(steps('right', 2));
  });
});

const disc = parseJob(
  JSON.stringify({
    format: 'sparetooth-job',
    version: 1,
    invented: true,
    wheels: [
      {
        id: 'disc',
        spec: {
          teeth: 41,
          moduleMm: 1,
          pressureAngleDeg: 20,
          faceWidthMm: 6,
          bore: { shape: 'd', diameterMm: 8, flatMm: 7 },
          hubs: [{ side: 'top', diameterMm: 14, lengthMm: 9 }],
        },
      },
      { id: 'bar', kind: 'rack', spec: { teeth: 9, moduleMm: 1, pressureAngleDeg: 20, faceWidthMm: 6 } },
    ],
  }),
).job;

describe('the shape of a part', () => {
  test('is whole, and its two halves hold it all', () => {
    for (const wheelId of ['disc', 'bar']) {
      const { mesh, whole, cut, isTrial } = shapePart(disc, { wheelId });
      expect([isTrial, checkMesh(mesh).isClosed]).toEqual([false, true]);
      expect(whole.faces.triangles.length).toBe(mesh.triangles.length);
      expect(cut.cap.triangles.length).toBeGreaterThan(0);
      const half = volumeOf(cut.faces) + volumeOf(cut.cap);
      // An odd count of teeth, and a bar's tooth cut through, are nearly halved.
      expect(half / checkMesh(mesh).volume).toBeGreaterThan(0.45);
      expect(half / checkMesh(mesh).volume).toBeLessThan(0.55);
    }
  });

  test('is a trial where the answer is one', () => {
    const { job } = parseJob(readFileSync('demo-data/film-splicer.json'));
    const part = shapePart(job, { wheelId: 'feed' });
    expect(part.isTrial).toBe(true);
    expect(tellSolid(part, false, 'mm')).toMatch(
      /^Trial part: 11 teeth, .*5\.00 mm wide, bore 2\.00 mm, no hub\.$/,
    );
  });

  test('is told in a sentence, in the unit asked for', () => {
    const part = shapePart(disc, { wheelId: 'disc' });
    expect(tellSolid(part, true, 'mm')).toBe(
      '41 teeth, 43.00 mm across the tips, 6.00 mm wide, D bore 8.00 mm, 7.00 mm from the flat, hub above 14.00 mm across and 9.00 mm long. Cut open along its axis; hatched where it is cut.',
    );
    expect(tellSolid(part, false, 'in')).toContain('0.2362 in wide');
  });

  test('fits its sheet at every pose', () => {
    for (const wheelId of ['disc', 'bar']) {
      const part = shapePart(disc, { wheelId });
      const frame = framePart(part);
      const p = part.whole.faces.positions;
      for (const [width, height] of [
        [900, 600],
        [390, 240],
      ]) {
        for (let pitch = -90; pitch <= 90; pitch += 15) {
          const tilt = (pitch * Math.PI) / 180;
          const scale = fitPart(frame, tilt, width, height);
          let across = 0;
          let up = 0;
          for (let yaw = 0; yaw < 2 * Math.PI; yaw += 0.5) {
            for (let k = 0; k < p.length; k += 30) {
              const x = p[k] + frame.toMiddle[0];
              const y = p[k + 1] + frame.toMiddle[1];
              const z = p[k + 2] + frame.toMiddle[2];
              const away = x * Math.sin(yaw) + y * Math.cos(yaw);
              across = Math.max(across, Math.abs(x * Math.cos(yaw) - y * Math.sin(yaw)));
              up = Math.max(up, Math.abs(away * Math.sin(tilt) + z * Math.cos(tilt)));
            }
          }
          expect(2 * across * scale).toBeLessThan(width);
          expect(2 * up * scale).toBeLessThan(height);
        }
      }
    }
  });
});

function volumeOf({ positions, triangles }: { positions: Float32Array; triangles: Uint32Array }): number {
  return checkMesh({ positions: Float64Array.from(positions), triangles }).volume;
}
