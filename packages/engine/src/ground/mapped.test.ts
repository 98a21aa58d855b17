import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { distanceToPolygonM } from '../geometry/polygon.ts';
import { distanceToLineM } from '../geometry/segment.ts';
import type { PlanePoint } from '../quantity/points.ts';
import { isMapped, MAPPED_WITHIN_M, mappedIndex } from './mapped.ts';
import type { Area } from './hole.ts';

const at = (eastM: number, northM: number): PlanePoint => ({ eastM, northM });
const area = (outer: PlanePoint[], inner: PlanePoint[][] = []): Area => ({
  id: 'a',
  surface: 'rough',
  polygon: { outer, inner },
});
const square = (e: number, n: number, half: number): PlanePoint[] => [
  at(e - half, n - half),
  at(e + half, n - half),
  at(e + half, n + half),
  at(e - half, n + half),
];
const ground = {
  line: [at(0, 0), at(30, 210), at(-20, 380)],
  areas: [
    area(square(120, 200, 15)),
    area(square(-300, 100, 150), [square(-300, 100, 90)]),
    area([at(0, 420), at(30, 400), at(60, 460), at(10, 500)]),
  ],
};

describe('mapped ground', () => {
  test('reaches 40 yd from the line and from an area', () => {
    const lone = { line: [at(0, 0), at(0, 300)], areas: [] };
    expect(MAPPED_WITHIN_M).toBeCloseTo(36.576, 12);
    expect(isMapped(lone, at(36.57, 150))).toBe(true);
    expect(isMapped(lone, at(36.58, 150))).toBe(false);
    expect(isMapped(lone, at(0, 336.57))).toBe(true);
    expect(isMapped({ ...lone, areas: [area(square(100, 150, 10))] }, at(53.43, 150))).toBe(true);
  });

  test('holds the inside of a large area, far from its edge, and not the middle of a large hole in it', () => {
    const index = mappedIndex({ line: [at(5000, 0)], areas: [area(square(0, 0, 1000), [square(500, 0, 200)])] });
    expect(index.distanceM(at(-300, 0))).toBe(0);
    expect(index.isMapped(at(500, 0))).toBe(false);
    expect(index.isMapped(at(670, 0))).toBe(true);
  });

  test('the index agrees with the plain distance', () => {
    const index = mappedIndex(ground);
    fc.assert(
      fc.property(
        fc.double({ min: -520, max: 250, noNaN: true }),
        fc.double({ min: -120, max: 580, noNaN: true }),
        (e, n) => {
          const p = at(e, n);
          const plainM = Math.min(
            distanceToLineM(p, ground.line),
            ...ground.areas.map((a) => distanceToPolygonM(p, a.polygon)),
          );
          expect(index.distanceM(p)).toBeCloseTo(plainM <= MAPPED_WITHIN_M ? plainM : Infinity, 9);
          expect(index.isMapped(p)).toBe(plainM <= MAPPED_WITHIN_M);
        },
      ),
      { seed: 4, numRuns: 1000 },
    );
  });
});
