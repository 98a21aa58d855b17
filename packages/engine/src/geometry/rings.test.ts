import { describe, expect, test } from 'vitest';
import type { PlanePoint } from '../quantity/points.ts';
import { areaSqM, insidePolygon } from './polygon.ts';
import { mendPolygon, ringFault, ringInside, tidyRing } from './rings.ts';

const at = (eastM: number, northM: number): PlanePoint => ({ eastM, northM });
const box = (w: number, s: number, e: number, n: number): PlanePoint[] => [at(w, s), at(e, s), at(e, n), at(w, n)];

describe('faults of a ring', () => {
  test('repeated corners are one', () => {
    expect(tidyRing([at(0, 0), at(0, 0), at(5, 0), at(5, 5), at(0, 0)])).toHaveLength(3);
    expect(ringFault(tidyRing([at(0, 0), at(1, 1), at(0, 0)]))).toBe('few');
  });

  test('no area, crossing, touching, plain', () => {
    expect(ringFault([at(0, 0), at(5, 0), at(9, 0)])).toBe('flat');
    expect(ringFault([at(0, 0), at(10, 10), at(10, 0), at(0, 10)])).toBe('crossing');
    expect(ringFault([at(0, 0), at(10, 0), at(5, 5), at(10, 10), at(0, 10), at(5, 5)])).toBe('crossing');
    expect(ringFault(box(0, 0, 10, 10))).toBeUndefined();
  });

  test('a ring with too many long edges or crossings is given up, not looked through for ever', () => {
    const zigzag = Array.from({ length: 6000 }, (_, i) => at(i % 2 ? 1000 : 0, i));
    expect(ringFault([...zigzag, at(-5, 6000), at(-5, 0)])).toBeUndefined();
    const star = Array.from({ length: 3001 }, (_, i) => at(500 * Math.cos(i * 2.9), 500 * Math.sin(i * 2.9)));
    const start = performance.now();
    expect(ringFault(star)).toBe('tangled');
    const comb = Array.from({ length: 1e5 }, (_, i) => at(i % 2 ? 1e6 : -i, i % 2 ? -i : 1e6));
    expect(ringFault(comb)).toBe('tangled');
    expect(performance.now() - start).toBeLessThan(5000);
  });
});

describe('mending', () => {
  test('a bow tie becomes its two wings', () => {
    const { polygons, faults } = mendPolygon({ outer: [at(0, 0), at(10, 10), at(10, 0), at(0, 10)], inner: [] });
    expect(faults).toEqual(['crossing']);
    expect(polygons).toHaveLength(2);
    expect(polygons.reduce((sum, p) => sum + areaSqM(p), 0)).toBeCloseTo(50, 3);
  });

  test('a ring walked twice still covers its ground', () => {
    const ring = box(0, 0, 10, 10);
    const { polygons } = mendPolygon({ outer: [...ring, at(0, 0), at(10, 0), at(10, 10), at(0, 10)], inner: [] });
    expect(polygons.some((p) => insidePolygon(at(5, 5), p))).toBe(true);
  });

  test('an inner ring that reaches outside is clipped to the outer one', () => {
    const { polygons, faults } = mendPolygon({ outer: box(0, 0, 10, 10), inner: [box(5, 4, 15, 6)] });
    expect(faults).toEqual(['inner outside']);
    expect(polygons.reduce((sum, p) => sum + areaSqM(p), 0)).toBeCloseTo(90, 3);
  });

  test('a bad inner ring goes, and the rest stands', () => {
    const { polygons, faults } = mendPolygon({ outer: box(0, 0, 10, 10), inner: [[at(1, 1), at(2, 2)]] });
    expect(faults).toEqual(['few']);
    expect(polygons).toEqual([{ outer: box(0, 0, 10, 10), inner: [] }]);
  });

  test('nothing is left of a ring without area', () => {
    expect(mendPolygon({ outer: [at(0, 0), at(3, 0), at(9, 0)], inner: [] }).polygons).toEqual([]);
  });
});

describe('inside', () => {
  test('touching from inside counts, crossing does not', () => {
    expect(ringInside(box(0, 0, 5, 5), box(0, 0, 10, 10))).toBe(true);
    expect(ringInside(box(5, 5, 11, 9), box(0, 0, 10, 10))).toBe(false);
    // A bar across the notch of a U: its corners lie inside, its middle does not; nor where the notch only bites into its side.
    const u = [at(0, 0), at(30, 0), at(30, 30), at(20, 30), at(20, 10), at(10, 10), at(10, 30), at(0, 30)];
    expect(ringInside(box(2, 15, 28, 20), u)).toBe(false);
    expect(ringInside([at(2, 2), at(28, 2), at(28, 12), at(15, 9), at(2, 12)], u)).toBe(false);
    expect(ringInside(box(2, 2, 28, 9), u)).toBe(true);
  });
});
