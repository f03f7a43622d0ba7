import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { chooseDetailScale, chooseScale, pxPerMmAtTrueSize } from '../../src/page/drawing/choose-scale.ts';
import { type LayoutAsked, labelWidth } from '../../src/page/drawing/laid-dimension.ts';
import { layOut } from '../../src/page/drawing/lay-out.ts';
import { overlap } from '../../src/page/drawing/part-labels.ts';

const kinds = [
  ['outside', 'across the tips', '⌀ 16.80'],
  ['root', 'bottom of the teeth', '(⌀ 14.82)'],
  ['span', 'across 3 teeth', '3.14'],
  ['over-pins', 'over two pins of 1.5', undefined],
  ['teeth', 'teeth', '40'],
  ['bore', 'bore', '⌀ 3.30'],
  ['shaft', 'shaft', undefined],
  ['face-width', 'tooth width', '3.20'],
  ['hub-diameter', 'hub', '⌀ 6.00'],
  ['overall-length', 'overall length', '6.00'],
  ['tooth-depth', 'tooth depth', undefined],
] as const;

function ask(width: number, height: number, radius: number, few: number = kinds.length): LayoutAsked {
  return {
    width,
    height,
    halfWidth: radius,
    up: radius,
    down: radius,
    sectionLength: radius * 0.7,
    isRound: true,
    hasDetail: true,
    titleHeight: 56,
    dimensions: kinds.slice(0, few).map(([of, name, value], i) => ({
      key: `${of}${i}`,
      of,
      from: of === 'face-width' || of === 'overall-length' ? 0 : -radius * (1 - i * 0.07),
      to: of === 'teeth' || of === 'tooth-depth' ? 0 : radius * (1 - i * 0.07) * 0.7,
      turn: 0,
      width: labelWidth(name, value),
    })),
  };
}

describe('the sheet', () => {
  test('labels are targets of 48 px that never overlap or leave the sheet, whatever its size and the gear', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 320, max: 1600 }),
        fc.integer({ min: 280, max: 1100 }),
        fc.double({ min: 1, max: 80, noNaN: true }),
        fc.integer({ min: 1, max: kinds.length }),
        (width, height, radius, few) => {
          const { dimensions, detail } = layOut(ask(width, height, radius, few));
          expect(dimensions.length).toBeGreaterThan(0);
          dimensions.forEach(({ label }, i) => {
            expect(label.width).toBeGreaterThanOrEqual(48);
            expect(label.height).toBeGreaterThanOrEqual(48);
            expect(label.x).toBeGreaterThanOrEqual(0);
            expect(label.y).toBeGreaterThanOrEqual(0);
            expect(label.x + label.width).toBeLessThanOrEqual(width);
            expect(label.y + label.height).toBeLessThanOrEqual(height - 56);
            for (const other of dimensions.slice(i + 1)) expect(overlap(label, other.label)).toBe(false);
            if (detail) {
              const box = {
                x: detail.x - detail.radius,
                y: detail.y - detail.radius,
                width: 2 * detail.radius,
                height: 2 * detail.radius,
              };
              expect(overlap(label, box)).toBe(false);
            }
          });
        },
      ),
      { numRuns: 300 },
    );
  });

  test('all dimensions stand on a desk screen and on an upright tablet, four on a telephone', () => {
    expect(layOut(ask(912, 740, 8.4)).dimensions).toHaveLength(kinds.length);
    expect(layOut(ask(768, 560, 8.4, 10)).dimensions).toHaveLength(10);
    const phone = layOut(ask(390, 380, 8.4));
    expect(phone.dimensions).toHaveLength(4);
    expect(phone.section).toBeUndefined();
  });

  test('the gear is drawn at a standard scale and lies within the sheet', () => {
    for (const radius of [1, 3, 8, 20, 45]) {
      const { scale, front } = layOut(ask(912, 740, radius));
      const reach = radius * scale.pxPerMm;
      expect(front.x - reach).toBeGreaterThanOrEqual(0);
      expect(front.y - reach).toBeGreaterThanOrEqual(0);
      expect(front.y + reach).toBeLessThanOrEqual(740);
      const ratio = scale.pxPerMm / pxPerMmAtTrueSize;
      expect(['50:1', '20:1', '10:1', '5:1', '2:1', '1:1', '1:2', '1:5']).toContain(scale.name);
      const [drawn, real] = scale.name.split(':').map(Number);
      expect(ratio).toBeCloseTo(drawn / real, 12);
    }
  });

  test('the largest scale that fits is taken, and the smallest where none does', () => {
    expect(chooseScale((s) => 13 * s < 300).name).toBe('5:1');
    expect(chooseScale((s) => 13 * s < 200).name).toBe('2:1');
    expect(chooseScale(() => false).name).toBe('1:5');
    expect(chooseDetailScale(() => true).name).toBe('200:1');
  });
});
