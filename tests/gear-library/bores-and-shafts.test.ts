import { describe, expect, test } from 'vitest';
import { usualSizes } from '../../gear-library/bores-and-shafts.ts';
import { processes, usualProcess } from '../../gear-library/processes.ts';
import { findTipLand, referenceToothThickness } from '../../src/involute/tooth-thickness.ts';

describe('usual shafts and bores', () => {
  test('stand once each, from thin to thick in their system', () => {
    for (const system of ['metric', 'inch']) {
      const diameters = usualSizes.filter((size) => size.system === system).map((size) => size.diameterMm);
      expect(diameters.length).toBeGreaterThan(10);
      expect(diameters).toEqual([...new Set(diameters)].sort((a, b) => a - b));
    }
    expect(new Set(usualSizes.map(({ name }) => name)).size).toBe(usualSizes.length);
  });

  test('are as thick as their names say', () => {
    // 1 in = 25.4 mm exactly: ISO 80000-3.
    for (const { system, name, diameterMm } of usualSizes) {
      const [, over, under] = /^([\d.]+)(?:\/(\d+))? (?:mm|in)$/.exec(name) ?? [];
      const named = Number(over) / Number(under ?? 1);
      expect(diameterMm, name).toBeCloseTo(system === 'inch' ? named * 25.4 : named, 9);
    }
  });

  test('say where they come from', () => {
    for (const entry of [...usualSizes, ...processes]) expect(entry.source).not.toBe('');
  });
});

describe('ways to make a gear', () => {
  test('have a key each, and the usual one is among them', () => {
    const keys = processes.map(({ key }) => key);
    expect(new Set(keys).size).toBe(keys.length);
    expect(keys).toContain(usualProcess);
  });

  const named = processes.map((process) => [process.name, process] as const);
  test.each(named)('%s: at the finest module a tip land holds one line and a tooth two', (_, process) => {
    const spec = {
      kind: 'external',
      teeth: 17,
      module: process.leastModuleMm,
      pressureAngle: (20 * Math.PI) / 180,
      helixAngle: 0,
      profileShift: 0,
      addendum: 1,
      dedendum: 1.25,
      rootRadius: 0.38,
      thinning: 0,
      tipDiameter: null,
    } as const;
    expect(findTipLand(spec)).toBeGreaterThanOrEqual(process.lineMm);
    expect(referenceToothThickness(spec)).toBeGreaterThanOrEqual(2 * process.lineMm);
    expect(process.holeErrorMm[0]).toBeLessThan(process.holeErrorMm[1]);
  });
});
