import { expect, test } from 'vitest';
import { groundFile, rounded } from './groundFile.ts';
import type { DrawnPoint } from './course/drawn.ts';

const square: readonly DrawnPoint[] = [
  [0, 0],
  [10, 0],
  [10, 10],
  [0, 10],
];

test('a rounded outline passes through its drawn corners', () => {
  const curve = rounded(square);
  expect(curve).toHaveLength(16);
  for (const corner of square) expect(curve).toContainEqual(corner);
});

test('rounding a quarter turn bulges by an eighth of the side: the spline at t = 1/2 is (9 (p1 + p2) - p0 - p3) / 16', () => {
  expect(rounded(square)[2]).toEqual([5, -1.25]);
});

test('up the sheet is the bearing on the Earth, and outer rings turn anticlockwise', () => {
  const text = groundFile([
    {
      tee: { lon: 10, lat: 0 },
      bearingDeg: 90,
      features: [
        { id: 'a', shape: 'point', points: [[0, 100]], tags: { golf: 'pin' } },
        { id: 'b', shape: 'outline', points: square.toReversed(), straight: true, tags: { golf: 'green' } },
      ],
    },
  ]);
  const { features } = JSON.parse(text) as { features: { geometry: { coordinates: unknown } }[] };
  // 100 m east on the equator is 100 / 6378137 rad.
  expect(features[0]?.geometry.coordinates).toEqual([10.0008983, 0]);
  const ring = (features[1]?.geometry.coordinates as [number, number][][] | undefined)?.[0] ?? [];
  const twice = ring.reduce((sum, [x, y], i) => {
    const [nextX, nextY] = ring[(i + 1) % ring.length] ?? [x, y];
    return sum + (x - 10) * nextY - (nextX - 10) * y;
  }, 0);
  expect(ring[0]).toEqual(ring.at(-1));
  expect(twice).toBeGreaterThan(0);
});
