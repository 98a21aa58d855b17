import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Line } from '../marks.ts';
import { dashed, keepWhere, lengthPx, offLine, partOf, placeOn, simplified } from './line.ts';

const lines = fc
  .array(
    fc.record({ x: fc.double({ min: 0, max: 300, noNaN: true }), y: fc.double({ min: 0, max: 300, noNaN: true }) }),
    {
      minLength: 2,
      maxLength: 12,
    },
  )
  .filter((line) => lengthPx(line) > 1);
const bounded = { seed: 7, numRuns: 60 };

describe('lines on paper', () => {
  test('two parts that adjoin are as long as the whole', () => {
    fc.assert(
      fc.property(lines, fc.double({ min: 0.1, max: 0.9, noNaN: true }), (line, share) => {
        const whole = lengthPx(line);
        const both = lengthPx(partOf(line, 0, share * whole)) + lengthPx(partOf(line, share * whole, whole));
        expect(both).toBeCloseTo(whole, 6);
      }),
      bounded,
    );
  });

  test('dashes cover their share of a line, and none crosses a gap', () => {
    const line: Line = [
      { x: 0, y: 0 },
      { x: 70, y: 0 },
      { x: 70, y: 30 },
    ];
    const dashes = dashed(line, [6, 4]);
    expect(dashes).toHaveLength(10);
    expect(dashes.reduce((sum, d) => sum + lengthPx(d), 0)).toBeCloseTo(60, 9);
  });

  test('a kept part ends where the test turns, to a tenth of a pixel', () => {
    const line: Line = [
      { x: 0, y: 5 },
      { x: 100, y: 5 },
    ];
    const kept = keepWhere(line, (p) => p.x < 20.37 || p.x > 61.7);
    expect(kept).toHaveLength(2);
    expect(kept[0]?.at(-1)?.x).toBeGreaterThan(20.27);
    expect(kept[0]?.at(-1)?.x).toBeLessThanOrEqual(20.37);
    expect(kept[1]?.[0]?.x).toBeGreaterThanOrEqual(61.7);
    expect(kept[1]?.[0]?.x).toBeLessThan(61.8);
  });

  test('a simplified line leaves no place farther off than it may', () => {
    fc.assert(
      fc.property(lines, (line) => {
        const fewer = simplified(line, 5);
        for (const p of line) {
          const off = Math.min(...fewer.slice(1).map((q, i) => offLine(p, fewer[i] ?? q, q)));
          expect(off).toBeLessThanOrEqual(5 + 1e-9);
        }
      }),
      bounded,
    );
  });

  test('a place on a line is held at its ends', () => {
    const line: Line = [
      { x: 0, y: 0 },
      { x: 10, y: 0 },
    ];
    expect(placeOn(line, -3)).toEqual({ x: 0, y: 0 });
    expect(placeOn(line, 4)).toEqual({ x: 4, y: 0 });
    expect(placeOn(line, 30)).toEqual({ x: 10, y: 0 });
  });
});
