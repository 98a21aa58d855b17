import { describe, expect, test } from 'vitest';
import { insidePolygon } from '../geometry/polygon.ts';
import type { Polygon } from '../geometry/polygon.ts';
import type { PlanePoint } from '../quantity/points.ts';
import { outOfBounds } from './boundary.ts';
import type { Bound } from './boundary.ts';

const at = (eastM: number, northM: number): PlanePoint => ({ eastM, northM });
const ring = (w: number, s: number, e: number, n: number): PlanePoint[] => [at(w, s), at(e, s), at(e, n), at(w, n)];
const bound = (id: string, outer: PlanePoint[], inner: PlanePoint[][] = []): Bound => ({
  id,
  polygon: { outer, inner },
});
const [tee, green] = [at(0, 0), at(0, 300)];
const isOut = (bounds: readonly Bound[], p: PlanePoint): boolean =>
  outOfBounds(bounds, [tee, green]).areas.some((a: { readonly polygon: Polygon }) => insidePolygon(p, a.polygon));

describe('out of bounds', () => {
  test('an area is out and its inner ring is in', () => {
    const estate = bound('estate', ring(-500, -500, 500, 800), [ring(-60, -20, 60, 360)]);
    expect(outOfBounds([estate], [tee, green]).boundaries).toEqual([]);
    expect(isOut([estate], at(0, 100))).toBe(false);
    expect(isOut([estate], at(100, 100))).toBe(true);
    expect(isOut([estate], at(900, 100))).toBe(false);
  });

  test('an area that holds the tee or the green is the boundary: outside it is out, and so is what is cut out of it', () => {
    for (const north of [400, 100]) {
      const course = bound('course', ring(-80, -40, 80, north), [ring(40, 40, 60, 60)]);
      expect(outOfBounds([course], [tee, green]).boundaries).toEqual(['course']);
      expect(isOut([course], at(0, 50))).toBe(false);
      expect(isOut([course], at(50, 50))).toBe(true);
      expect(isOut([course], at(100, 50))).toBe(true);
      expect(isOut([course], at(3000, 3000))).toBe(true);
    }
  });

  test('two parcels, one with the tee and one with the green, are in together', () => {
    const parcels = [bound('south', ring(-50, -50, 50, 160)), bound('north', ring(-50, 140, 50, 350))];
    expect(isOut(parcels, at(0, 150))).toBe(false);
    expect(isOut(parcels, tee)).toBe(false);
    expect(isOut(parcels, green)).toBe(false);
    expect(isOut(parcels, at(60, 150))).toBe(true);
  });
});
