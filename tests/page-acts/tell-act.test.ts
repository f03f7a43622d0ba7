import { createElement } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test } from 'vitest';
import { methods } from '../../gear-library/reading-uncertainty.ts';
import { traceOutline } from '../../src/involute/trace-outline.ts';
import { readingSchema } from '../../src/job/reading-schema.ts';
import { ActSketch } from '../../src/page/acts/ActSketch.tsx';
import type { SketchSubject } from '../../src/page/acts/sketch-subject.ts';
import { tellAct } from '../../src/page/acts/tell-act.ts';
import { tellPartAct } from '../../src/page/acts/tell-part-act.ts';
import { tellToothAct } from '../../src/page/acts/tell-tooth-act.ts';
import type { Slot } from '../../src/page/state/slot.ts';
import { makeSpec } from '../involute/make-spec.ts';

const forbidden = /posterior|hypothes|evidence|\bbits?\b|sigma|residual|candidate|uncertaint|tolerance/i;

/** Every reading that a job can hold, and the page's own questions. */
const readingKinds = readingSchema._zod.def.options.flatMap((option) => {
  const [of] = [...(option._zod.def.shape.of._zod.values ?? [])];
  return typeof of === 'string' ? [of] : [];
});
const kinds = [
  ...new Set([...readingKinds, ...Object.keys(methods)]),
  'd-flat',
  'split-gap',
  'zero',
  'looks-like',
  'happened',
];

const plain = { isSplit: false, isHelical: false } as const;
const subjects: Readonly<Record<string, SketchSubject>> = {
  'unknown gear': { kind: 'external', ...plain },
  'even gear': { kind: 'external', teeth: 40, tipDiameterMm: 16.8123, ...plain },
  'odd small split gear': {
    kind: 'external',
    teeth: 13,
    tipDiameterMm: 7.5123,
    isSplit: true,
    isHelical: false,
  },
  'slanted gear': { kind: 'external', teeth: 96, tipDiameterMm: 80.3123, isSplit: false, isHelical: true },
  'five teeth': { kind: 'external', teeth: 5, tipDiameterMm: 4.2123, ...plain },
  'traced gear': { kind: 'external', teeth: 10, tipDiameterMm: 6.4876, rootDiameterMm: 4.2312, ...plain },
  'even ring': { kind: 'internal', teeth: 40, tipDiameterMm: 38.1234, ...plain },
  'odd ring': { kind: 'internal', teeth: 31, ...plain },
  bar: { kind: 'rack', teeth: 20, ...plain },
};

/** What the core never proposes there, so that it has no picture. */
function isOutside(of: string, subject: SketchSubject): boolean {
  if (of === 'span') return subject.kind !== 'external';
  return of === 'root' && subject.kind === 'rack';
}

function slotsOf(of: string): Slot[] {
  if (of === 'span') return [2, 3, 6, 11].map((teeth) => ({ of, teeth }));
  if (of === 'over-pins') return [{ of }, { of, pinMm: 0.8 }, { of, pinMm: 1.5 }];
  if (of === 'rack-pitch') return [{ of }, { of, pitches: 1 }, { of, pitches: 18 }];
  return [{ of }];
}

test('the job knows at least the sixteen readings of its schema', () => {
  expect(readingKinds.length).toBeGreaterThanOrEqual(16);
  expect(readingKinds).toContain('span');
});

describe.each(Object.entries(subjects))('for the %s', (_, subject) => {
  test.each(kinds)('%s is told in three short steps and one don’t', (of) => {
    for (const slot of slotsOf(of)) {
      expect(tellToothAct(slot, subject) ?? tellPartAct(slot, subject)).toBeDefined();
      const { title, trade, steps, dont, minutes, notes } = tellAct(slot, subject);
      const sentences = [title, ...steps, dont, ...notes];
      expect(steps).toHaveLength(3);
      for (const sentence of [...sentences, trade ?? 'none']) {
        expect(sentence).not.toBe('');
        expect(sentence.length, sentence).toBeLessThanOrEqual(90);
        expect(sentence).not.toMatch(forbidden);
      }
      for (const sentence of [...steps, dont]) expect(sentence).toMatch(/^[A-Z].*[.!?]$/);
      expect(dont).toMatch(/^Don’t /);
      expect(minutes).toBeGreaterThanOrEqual(1);
      expect(new Set(sentences).size).toBe(sentences.length);
    }
  });

  test.each(kinds)('%s has a sketch inside its frame', (of) => {
    for (const slot of slotsOf(of)) {
      const markup = renderToStaticMarkup(createElement(ActSketch, { slot, subject }));
      if (isOutside(of, subject)) {
        expect(markup).toBe('');
        continue;
      }
      expect(markup).toContain('<path');
      expect(markup).toContain('role="img"');
      expect(markup).not.toMatch(/NaN|Infinity|undefined/);
      // What the hand does must be seen whole; a gear may run out of the frame only where it is broken off.
      for (const [, d] of markup.matchAll(/class="line-hand[^"]*" d="([^"]*)"/g)) {
        for (const [, x, y] of d.matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/g)) {
          expect(Number(x), `${of} x`).toBeGreaterThanOrEqual(-1);
          expect(Number(x), `${of} x`).toBeLessThanOrEqual(321);
          expect(Number(y), `${of} y`).toBeGreaterThanOrEqual(-1);
          expect(Number(y), `${of} y`).toBeLessThanOrEqual(201);
        }
      }
    }
  });

  test('neither words nor sketches tell a size that the answer expects', () => {
    for (const slot of kinds.flatMap((of) => slotsOf(of))) {
      const words = JSON.stringify(tellAct(slot, subject));
      const figures = [...words.matchAll(/\d+\.\d+/g)].map(([figure]) => Number(figure));
      expect(figures.filter((figure) => figure !== slot.pinMm)).toEqual([]);
      const shown = renderToStaticMarkup(createElement(ActSketch, { slot, subject }));
      for (const [, text] of shown.matchAll(/<text[^>]*>([^<]*)</g)) {
        expect(text).toMatch(/^(settled|rocked|goes|stops|over both|between|1|2|3)$/);
      }
    }
  });
});

test('the sketch for counting is the same whatever the count is thought to be', () => {
  const draw = (teeth: number): string =>
    renderToStaticMarkup(
      createElement(ActSketch, { slot: { of: 'teeth' }, subject: { kind: 'external', teeth, ...plain } }),
    );
  expect(draw(11)).toBe(draw(40));
});

test('an odd count is shown twice, settled and rocked, an even one once', () => {
  const draw = (teeth: number): string =>
    renderToStaticMarkup(
      createElement(ActSketch, { slot: { of: 'outside' }, subject: { kind: 'external', teeth, ...plain } }),
    );
  expect(draw(23)).toMatch(/settled[\s\S]*rocked/);
  expect(draw(24)).not.toMatch(/settled|rocked/);
});

test('a gear under 10 mm is stood on a stick, a larger one is not', () => {
  const notes = (tipDiameterMm: number): string =>
    tellAct({ of: 'span', teeth: 2 }, { kind: 'external', teeth: 12, tipDiameterMm, ...plain }).notes.join(
      ' ',
    );
  expect(notes(9.9)).toContain('putty');
  expect(notes(10.1)).not.toContain('putty');
});

test('a traced outline is what the sketch draws', () => {
  const { points } = traceOutline(makeSpec({ teeth: 12, module: 0.5 }), 0.002);
  const subject: SketchSubject = { kind: 'external', teeth: 12, tipDiameterMm: 7, ...plain };
  const slot: Slot = { of: 'root' };
  const withOutline = renderToStaticMarkup(
    createElement(ActSketch, { slot, subject: { ...subject, outline: points } }),
  );
  const without = renderToStaticMarkup(createElement(ActSketch, { slot, subject }));
  expect(withOutline).not.toBe(without);
});
