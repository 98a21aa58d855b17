import { expect, test } from 'vitest';
import { flightPath } from './path.ts';
import { AIR_15C, launchOf } from './testdata/launches.ts';

const WEDGE = launchOf(79.9, 27.2, 8140);
const pointsOf = (points: Float64Array): number[][] =>
  Array.from({ length: points.length / 4 }, (_, i) => Array.from(points.slice(4 * i, 4 * i + 4)));

test('a path goes from the ball to where it lands, in steps of a twentieth of a second', () => {
  const { flight, points } = flightPath(WEDGE, { ...AIR_15C, rightMps: 3 });
  const all = pointsOf(points);
  expect(all[0]).toEqual([0, 0, 0, 0]);
  expect(all[1]?.[0]).toBe(0.05);
  expect(all.at(-1)).toEqual([flight.timeS, flight.carryM, expect.closeTo(0, 4), flight.sideM]);
  expect(Math.max(...all.map(([, , y = 0]) => y))).toBeCloseTo(flight.apexM, 1);
  expect(all.map(([t]) => t)).toEqual(all.map(([t]) => t).toSorted((a = 0, b = 0) => a - b));
});

test('a ball that does not rise to the target is drawn until it turns', () => {
  const { flight, points } = flightPath(WEDGE, AIR_15C, 40);
  const last = pointsOf(points).at(-1) ?? [];
  expect(flight.landed).toBe(false);
  expect(last[2]).toBeCloseTo(flight.apexM, 0);
});
