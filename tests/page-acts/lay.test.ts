import { createElement } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';
import { expect, test } from 'vitest';
import { traceOutline } from '../../src/involute/trace-outline.ts';
import { bankCard, greatestPixelsPerMm, holdScale, isCardStanding } from '../../src/page/lay/bank-card.ts';
import { LayOnDrawing } from '../../src/page/lay/LayOnDrawing.tsx';
import { makeSpec } from '../involute/make-spec.ts';

const nothing = (): void => undefined;
const counts = [19, 20, 21].map((teeth) => ({
  teeth,
  outline: traceOutline(makeSpec({ teeth }), 0.002).points,
}));

function show(pixelsPerMm: number | undefined): string {
  return renderToStaticMarkup(
    createElement(LayOnDrawing, {
      pixelsPerMm,
      onScaled: nothing,
      counts,
      onCounted: nothing,
      onClose: nothing,
    }),
  );
}

test('the screen is scaled first, with a card of the standard’s own shape', () => {
  const markup = show(undefined);
  const [, width, height] = /<rect[^>]*width="([\d.]+)" height="([\d.]+)"/.exec(markup) ?? [];
  expect(Number(width) / Number(height)).toBeCloseTo(85.6 / 53.98, 6);
  expect(markup).toContain('type="range"');
  expect(markup).toContain('aria-label="Smaller"');
  expect(markup).toContain('aria-label="Larger"');
});

test('a gear stands at true size: its drawn width is its tip circle at the screen’s scale', () => {
  const scale = 5.37;
  const markup = show(scale);
  const [, d] = /class="line-known" d="([^"]*)"/.exec(markup) ?? [];
  const xs = [...(d ?? '').matchAll(/[ML](-?[\d.]+) /g)].map(([, x]) => Number(x));
  // 19 teeth of module 1: tooth 0 reaches the tip circle, the far side lies in a space; the height has both parts.
  const outline = counts[0].outline;
  let left = 0;
  let right = 0;
  for (let i = 0; i < outline.length; i += 2) {
    left = Math.min(left, outline[i]);
    right = Math.max(right, outline[i]);
  }
  expect(right).toBeCloseTo(10.5, 3);
  expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo((right - left) * scale, 1);
});

test('it asks for a count and never shows a length', () => {
  const markup = show(4);
  expect(markup).toContain('19 teeth');
  expect(markup).toContain('A tooth under every tooth?');
  const text = markup.replaceAll(/<[^>]*>/g, ' ');
  expect(text).not.toMatch(/\d\s*mm/);
});

test('no answer is put before the others', () => {
  expect(show(4)).not.toContain('class="next"');
});

test('on a telephone the card stands, so that it fits a fine screen', () => {
  expect(isCardStanding(358)).toBe(true);
  expect(isCardStanding(1000)).toBe(false);
  expect(bankCard.shortMm * 6.5).toBeLessThan(358);
  expect(holdScale(40)).toBe(greatestPixelsPerMm);
});
