import { describe, expect, test } from 'vitest';
import { findDiameters } from '../../src/involute/gear-diameters.ts';
import { findSpaceWidth } from '../../src/involute/space-width.ts';
import { traceOutline } from '../../src/involute/trace-outline.ts';
import { makeSpec, rad } from './make-spec.ts';

describe('the widest blade that comes near the root of a space', () => {
  const specs = [
    makeSpec({ teeth: 24 }),
    makeSpec({ teeth: 7, addendum: 0.8 }),
    makeSpec({ teeth: 10, profileShift: 0.5, module: 0.5 }),
    makeSpec({ teeth: 60, rootRadius: 0, thinning: 0.1 }),
    makeSpec({ teeth: 31, helixAngle: rad(25), pressureAngle: rad(14.5) }),
    makeSpec({ kind: 'internal', teeth: 50, addendum: 0.8 }),
    makeSpec({ kind: 'internal', teeth: 45, addendum: 0.8, cutterTeeth: 20 }),
  ];
  test.each(specs)('goes in between the flanks, and one three hundredths wider does not: %j', (spec) => {
    const { points } = traceOutline(spec, 2e-6 * spec.module);
    const bottom = findDiameters(spec).root / 2;
    const side = spec.kind === 'internal' ? -1 : 1;
    // The outline turned so that the middle of a space lies on +y.
    const turn = Math.PI / 2 + Math.PI / spec.teeth;
    const holdsUp = (width: number, above: number): boolean => {
      for (let k = 0; k < points.length; k += 2) {
        const angle = Math.atan2(points[k + 1], points[k]) + turn;
        const radius = Math.hypot(points[k], points[k + 1]);
        const x = radius * Math.cos(angle);
        const y = radius * Math.sin(angle);
        // The blade fills the space from its end outward (of an internal wheel, inward).
        if (y > 0 && Math.abs(x) < width / 2 && side * (y - bottom) > above) return true;
      }
      return false;
    };
    for (const above of [0.03, 0.05, 0.2]) {
      const width = findSpaceWidth(spec, above * spec.module);
      expect(width).toBeGreaterThan(0);
      expect(holdsUp(width * 0.97, above * spec.module)).toBe(false);
      expect(holdsUp(width * 1.03, above * spec.module)).toBe(true);
    }
  });

  test('is no question of a rack: it has no root circle', () => {
    expect(() => findSpaceWidth(makeSpec({ kind: 'rack', teeth: 9 }), 0.05)).toThrow('rack');
  });
});
