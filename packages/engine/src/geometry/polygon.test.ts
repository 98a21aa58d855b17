import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { PlanePoint } from '../quantity/points.ts';
import { areaSqM, centroid, distanceToPolygonM, insidePolygon, insideRing, signedAreaSqM } from './polygon.ts';

const at = (eastM: number, northM: number): PlanePoint => ({ eastM, northM });
const square = [at(0, 0), at(10, 0), at(10, 10), at(0, 10)];
const hole = [at(4, 4), at(6, 4), at(6, 6), at(4, 6)];

describe('areas', () => {
  test('an anticlockwise ring is positive, a clockwise one negative', () => {
    expect(signedAreaSqM(square)).toBe(100);
    expect(signedAreaSqM(square.toReversed())).toBe(-100);
    expect(areaSqM({ outer: square, inner: [hole] })).toBe(96);
  });

  test('area and centroid move with the ring', () => {
    fc.assert(
      fc.property(fc.integer({ min: -1e6, max: 1e6 }), fc.integer({ min: -1e6, max: 1e6 }), (e, n) => {
        const wedge = [at(e, n), at(e + 9, n), at(e, n + 6)];
        expect(signedAreaSqM(wedge)).toBeCloseTo(27, 6);
        expect(centroid(wedge).eastM).toBeCloseTo(e + 3, 6);
        expect(centroid(wedge).northM).toBeCloseTo(n + 2, 6);
      }),
      { seed: 1, numRuns: 50 },
    );
  });

  test('the centroid of a ring without area is that of its corners', () => {
    expect(centroid([at(0, 0), at(4, 0), at(8, 0)])).toEqual(at(4, 0));
  });
});

describe('inside', () => {
  test('counts rings: outside, between, and in the hole', () => {
    const polygon = { outer: square, inner: [hole] };
    expect(insidePolygon(at(-1, 5), polygon)).toBe(false);
    expect(insidePolygon(at(2, 5), polygon)).toBe(true);
    expect(insidePolygon(at(5, 5), polygon)).toBe(false);
  });

  test('agrees with the winding of the angle for a random point and a star', () => {
    const star = Array.from({ length: 14 }, (_, i) => {
      const [rad, r] = [(i * Math.PI) / 7, i % 2 ? 3 : 8];
      return at(r * Math.cos(rad), r * Math.sin(rad));
    });
    const turns = (p: PlanePoint): number =>
      star.reduce((sum, a, i) => {
        const b = star[(i + 1) % star.length] ?? a;
        const [ae, an, be, bn] = [a.eastM - p.eastM, a.northM - p.northM, b.eastM - p.eastM, b.northM - p.northM];
        return sum + Math.atan2(ae * bn - an * be, ae * be + an * bn);
      }, 0);
    fc.assert(
      fc.property(fc.double({ min: -9, max: 9, noNaN: true }), fc.double({ min: -9, max: 9, noNaN: true }), (e, n) => {
        const p = at(e, n);
        fc.pre(Math.abs(Math.abs(turns(p)) - Math.PI) > 1e-6);
        expect(insideRing(p, star)).toBe(Math.abs(turns(p)) > Math.PI);
      }),
      { seed: 2, numRuns: 300 },
    );
  });

  test('distance is nought inside, to the edge outside, and to the inner edge in a hole', () => {
    const polygon = { outer: square, inner: [hole] };
    expect(distanceToPolygonM(at(2, 2), polygon)).toBe(0);
    expect(distanceToPolygonM(at(13, 14), polygon)).toBe(5);
    expect(distanceToPolygonM(at(5, 5), polygon)).toBe(1);
  });
});
