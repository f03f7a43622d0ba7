import { type Job, parseJob } from '../../src/index.ts';

/**
 * An invented recorder: a POM pinion of 12 teeth that split on its motor's 2 mm shaft, and the brass wheel that it
 * drives, at the distance where both run without play: cos α_w 24/24.2275 cos 20°, x1 + x2 = 0.3.
 */
export function makeLastingJob(pinion: object = {}, mate: object = {}, rest: object = {}): Job {
  return parseJob(
    JSON.stringify({
      format: 'sparetooth-job',
      version: 1,
      title: 'Invented recorder',
      invented: true,
      wheels: [
        {
          id: 'p1',
          name: 'motor pinion',
          shaft: 'motor',
          material: 'pom',
          state: 'damaged',
          damage: [{ kind: 'split', gapMm: 0.3, where: 'space' }],
          readings: [{ of: 'shaft', mm: 2 }],
          spec: { teeth: 12, moduleMm: 0.8, profileShift: 0.3, faceWidthMm: 4, rootRadius: 0.2 },
          ...pinion,
        },
        {
          id: 'w1',
          shaft: 'drum',
          material: 'brass',
          state: 'sound',
          spec: { teeth: 48, moduleMm: 0.8, faceWidthMm: 5 },
          ...mate,
        },
      ],
      meshes: [{ kind: 'teeth', driver: 'p1', driven: 'w1', centerMm: 24.23, uMm: 0.02 }],
      motor: { shaft: 'motor', rpm: 3000, stallTorqueNmm: 12, torqueNmm: 3 },
      ...rest,
    }),
  ).job;
}
