import { expect, test } from 'vitest';
import type { PlanePoint } from '../quantity/points.ts';
import { innerCentre } from './innerCentre.ts';
import { distanceToEdgeM, insidePolygon } from './polygon.ts';
import type { Polygon } from './polygon.ts';

const at = (eastM: number, northM: number): PlanePoint => ({ eastM, northM });

/** The deepest point on a fine grid: slow, and plainly right. */
function byGrid(polygon: Polygon, stepM: number): number {
  let best = 0;
  for (let e = -20; e <= 20; e += stepM)
    for (let n = -20; n <= 20; n += stepM)
      if (insidePolygon(at(e, n), polygon)) best = Math.max(best, distanceToEdgeM(at(e, n), polygon));
  return best;
}

test('the inner centre of a square is its middle', () => {
  const centre = innerCentre({ outer: [at(0, 0), at(8, 0), at(8, 8), at(0, 8)], inner: [] });
  expect(centre.eastM).toBeCloseTo(4, 1);
  expect(centre.northM).toBeCloseTo(4, 1);
});

test.each([
  ['a long green', [at(-15, 0), at(15, 2), at(15, 8), at(-15, 6)], []],
  ['a kidney', [at(-12, -9), at(12, -9), at(12, 9), at(4, 9), at(2, -2), at(-2, -2), at(-4, 9), at(-12, 9)], []],
  [
    'a green with a bunker in it',
    [at(-10, -10), at(10, -10), at(10, 10), at(-10, 10)],
    [[at(-2, -2), at(2, -2), at(2, 2), at(-2, 2)]],
  ],
])('the inner centre of %s lies as deep as a fine grid finds', (_, outer, inner) => {
  const polygon: Polygon = { outer, inner };
  const centre = innerCentre(polygon);
  expect(insidePolygon(centre, polygon)).toBe(true);
  expect(distanceToEdgeM(centre, polygon)).toBeGreaterThan(byGrid(polygon, 0.25) - 0.05);
});
