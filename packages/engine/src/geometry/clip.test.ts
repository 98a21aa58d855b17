import { expect, test } from 'vitest';
import type { PlanePoint } from '../quantity/points.ts';
import { cutOut, disc, sharedAreaSqM, strip, union } from './clip.ts';
import type { Polygon } from './polygon.ts';
import { areaSqM } from './polygon.ts';

const at = (eastM: number, northM: number): PlanePoint => ({ eastM, northM });
const box = (w: number, s: number, e: number, n: number): Polygon => ({
  outer: [at(w, s), at(e, s), at(e, n), at(w, n)],
  inner: [],
});
const total = (polygons: readonly Polygon[]): number => polygons.reduce((sum, p) => sum + areaSqM(p), 0);

test('a strip is as long and as wide as it says', () => {
  expect(total(strip([at(0, 0), at(100, 0)], 2))).toBeCloseTo(200, 2);
  // A right-angled bend: two legs less the square they share, plus a quarter of a disc on the outside of the corner.
  expect(total(strip([at(0, 0), at(50, 0), at(50, 50)], 2))).toBeCloseTo(200 - 1 + Math.PI / 4, 1);
});

test('a disc has the area of its circle', () => {
  expect(areaSqM(disc(at(7, -3), 3))).toBeCloseTo(9 * Math.PI, 9);
});

test('union, difference and shared area of two overlapping squares', () => {
  const [a, b] = [box(0, 0, 10, 10), box(5, 5, 15, 15)];
  expect(total(union([a, b]))).toBeCloseTo(175, 3);
  expect(total(cutOut([a], [b]))).toBeCloseTo(75, 3);
  expect(sharedAreaSqM(a, b)).toBeCloseTo(25, 3);
});

test('union keeps holes, whichever way the rings wind', () => {
  const ringed: Polygon = { outer: box(0, 0, 10, 10).outer.toReversed(), inner: [box(4, 4, 6, 6).outer] };
  expect(total(union([ringed]))).toBeCloseTo(96, 3);
});
