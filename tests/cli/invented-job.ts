/** An invented job: a motor pinion with a known mate, both of metric size 0.5, measured with an ordinary caliper. */
export const inventedJob = {
  format: 'sparetooth-job',
  version: 1,
  title: 'Invented test drive',
  invented: true,
  kit: { caliper: 'digital-0.01', zeroMm: 0, zeroUMm: 0.02, jawTipMm: 0.7, pinsMm: [0.8, 0.9] },
  wheels: [
    {
      id: 'p1',
      name: 'motor pinion',
      kind: 'external',
      readings: [
        { of: 'teeth', count: 24 },
        { of: 'outside', mm: [12.99, 13.0] },
        { of: 'span', teeth: 3, mm: 3.86 },
        { of: 'span', teeth: 4, mm: 5.34 },
        { of: 'bore', mm: 2 },
        { of: 'face-width', mm: 4 },
      ],
    },
    { id: 'w1', kind: 'external', readings: [{ of: 'teeth', count: 60 }] },
  ],
  meshes: [{ kind: 'teeth', driver: 'p1', driven: 'w1', centerMm: 21 }],
};

/** The same job with other readings on the pinion. */
export function jobWithReadings(readings: readonly object[]): string {
  return JSON.stringify({ ...inventedJob, wheels: [{ id: 'p1', kind: 'external', readings }], meshes: [] });
}
