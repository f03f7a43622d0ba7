import { createElement } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test } from 'vitest';
import { BeforeTakingApart } from '../../src/page/start/BeforeTakingApart.tsx';
import { Happened } from '../../src/page/start/Happened.tsx';
import { LooksLike } from '../../src/page/start/LooksLike.tsx';
import { coveredLooks, uncoveredLooks } from '../../src/page/start/look.ts';
import { makeLookBodies } from '../../src/page/start/look-bodies.ts';
import { paintBodies } from '../../src/page/start/solid-picture.ts';
import { tellUncovered } from '../../src/page/start/tell-uncovered.ts';

const nothing = (): void => undefined;

describe('which looks like yours', () => {
  test.each([...coveredLooks, ...uncoveredLooks])('$word is drawn inside its square', ({ look }) => {
    const faces = paintBodies(makeLookBodies(look), 112);
    expect(faces.length).toBeGreaterThan(5);
    for (const { fill, line } of faces) {
      for (const [, x, y] of `${fill}${line}`.matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/g)) {
        expect(Math.min(Number(x), Number(y))).toBeGreaterThanOrEqual(0);
        expect(Math.max(Number(x), Number(y))).toBeLessThanOrEqual(112);
      }
      expect(`${fill}${line}`).not.toContain('NaN');
    }
  });

  test('what can still be done is told for those not covered, and for those alone', () => {
    for (const { look } of uncoveredLooks) expect(tellUncovered(look)).toMatch(/^[A-Z][\s\S]+\.$/);
    for (const { look } of coveredLooks) expect(tellUncovered(look)).toBeUndefined();
  });

  test('seen from the front, right-hand teeth rise to the right and left-hand ones to the left', () => {
    const lean = (look: 'slanted-left' | 'slanted-right'): number => {
      // A wall's corners run lower, lower, upper, upper: the nearest one shows the slant.
      const nearest = makeLookBodies(look)[0].walls.reduce((a, b) =>
        a.loops[0][0][1] < b.loops[0][0][1] ? a : b,
      );
      const [low, , , high] = nearest.loops[0];
      return high[0] - low[0];
    };
    expect(lean('slanted-right')).toBeGreaterThan(0);
    expect(lean('slanted-left')).toBeLessThan(0);
  });

  test('the choice is told to a screen reader, and what to do instead stands below', () => {
    const markup = renderToStaticMarkup(createElement(LooksLike, { chosen: 'worm', onChoose: nothing }));
    expect(markup.match(/aria-pressed="true"/g)).toHaveLength(1);
    expect(markup.match(/<button/g)).toHaveLength(13);
    expect(markup).toContain('count its threads');
  });
});

test('what happened offers five kinds of damage, whole, lost and not known', () => {
  const markup = renderToStaticMarkup(createElement(Happened, { onChoose: nothing }));
  for (const word of [
    'Split',
    'Teeth gone',
    'Worn',
    'Swollen',
    'Crumbling',
    'Nothing',
    'Lost',
    'Don’t know',
  ]) {
    expect(markup).toContain(`>${word}<`);
  }
  expect(markup).not.toMatch(/NaN|undefined/);
});

test('the card before taking apart comes with sign and word, and says whose rules come first', () => {
  const markup = renderToStaticMarkup(createElement(BeforeTakingApart, { onSeen: nothing }));
  expect(markup).toContain('Warning sign');
  expect(markup).toContain('Caution');
  for (const what of [
    'plug',
    'Capacitors',
    'springs',
    'Lamps',
    'Local codes and licensed practice',
    '12 o’clock',
    'crumb',
  ]) {
    expect(markup).toContain(what);
  }
});
