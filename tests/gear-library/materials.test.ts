import { describe, expect, test } from 'vitest';
import { type Figure, type Material, materials } from '../../gear-library/materials.ts';
import { processes } from '../../gear-library/processes.ts';
import { findMaterial } from '../../src/strength/find-material.ts';

const named = materials.map((material) => [material.name, material] as const);

function listFigures(material: Material): [string, Figure][] {
  return Object.entries(material).filter(
    (entry): entry is [string, Figure] =>
      typeof entry[1] === 'object' && entry[1] !== null && 'low' in entry[1],
  );
}

describe('materials', () => {
  test('are those that gears are made of, each once, none without a name of its own', () => {
    const keys = materials.map(({ key }) => key);
    for (const key of [
      'pom',
      'pa6',
      'pa66',
      'pa12',
      'abs',
      'asa',
      'pc',
      'pla',
      'petg',
      'resin',
      'brass',
      'steel',
    ])
      expect(keys).toContain(key);
    const names = materials.flatMap(({ key, alsoCalled }) => [key, ...alsoCalled]);
    expect(new Set(names).size).toBe(names.length);
    for (const name of names) expect(name).toBe(name.toLowerCase());
  });

  test.each(named)('%s: every figure lies in its own range', (_, material) => {
    const figures = listFigures(material);
    expect(figures.length).toBeGreaterThanOrEqual(14);
    for (const [key, { value, low, high }] of figures) {
      expect(low, key).toBeLessThanOrEqual(value);
      expect(value, key).toBeLessThanOrEqual(high);
      expect(low, key).toBeGreaterThanOrEqual(0);
    }
  });

  test.each(named)(
    '%s: creeps softer, softens above what it stands for years, lasts less than once',
    (_, material) => {
      expect(material.modulusAfter1000hMpa.value).toBeLessThanOrEqual(material.modulusMpa.value);
      expect(material.warmLimitC.value).toBeLessThan(material.softeningC.value);
      expect(material.lastingStrain.value).toBeLessThan(material.onceStrain.value);
      expect(material.growthRoomPercent.value).toBeLessThanOrEqual(material.growthSoakedPercent.value);
      expect(material.layerRatio.high).toBeLessThanOrEqual(1);
      expect(material.poisson.value).toBeLessThan(0.5);
    },
  );

  test.each(named)(
    '%s: names a lubricant that suits, one that does not, and a glue of each kind',
    (_, material) => {
      const { suit, avoid } = material.lubricants;
      expect(suit.length).toBeGreaterThan(0);
      expect(avoid.length).toBeGreaterThan(0);
      for (const one of suit) expect(avoid).not.toContain(one);
      expect(material.glue.holds).not.toBe(material.glue.fails);
      expect(material.cautions.length).toBeGreaterThan(0);
    },
  );

  test('amorphous plastics are kept from what cracks them', () => {
    // Ester oils and air-shy threadlockers crack ABS and PC (a trade column on plastics and lubricants, and makers'
    // sheets).
    for (const key of ['abs', 'pc']) {
      const material = findMaterial(key);
      expect(material?.lubricants.avoid.join()).toContain('ester');
      expect(material?.glue.fails).toContain('anaerobic');
    }
  });

  test('published figures stand as they were read', () => {
    // A maker's sheet of acetal copolymer: 2,850 MPa, 1,300 after 1,000 h, yield 64; printed PLA, sheets of two
    // makers: across over along layers 0.53 and 0.54.
    const pom = findMaterial('pom');
    expect([pom?.modulusMpa.value, pom?.modulusAfter1000hMpa.value, pom?.strengthMpa.value]).toEqual([
      2850, 1300, 64,
    ]);
    expect(Math.abs((findMaterial('pla')?.layerRatio.value ?? 0) - 0.535)).toBeLessThan(0.01);
  });

  test('are found by what people call them', () => {
    expect(findMaterial(' Acetal ')?.key).toBe('pom');
    expect(findMaterial('NYLON')?.key).toBe('pa66');
    expect(findMaterial('wood')).toBeUndefined();
    expect(findMaterial(undefined)).toBeUndefined();
  });
});

describe('processes', () => {
  test('name materials that are held, and each plastic has one', () => {
    const keys = new Set(materials.map(({ key }) => key));
    const made = new Set(processes.flatMap((process) => process.materials));
    for (const key of made) expect(keys).toContain(key);
    expect([...keys].sort()).toEqual([...made].sort());
  });

  test.each(processes.map((process) => [process.name, process] as const))(
    '%s: walls take a line or more, ranges run up',
    (_, process) => {
      expect(process.leastWallMm).toBeGreaterThanOrEqual(process.lineMm);
      expect(process.outsideErrorMm[0]).toBeLessThan(process.outsideErrorMm[1]);
      expect(process.isLayered).toBe(!['machine-shop', 'laser-cut'].includes(process.key));
    },
  );
});
