import { expect, test } from 'vitest';
import type { PlanePoint } from '../quantity/points.ts';
import { alongLineM, distanceToLineM, lengthM, pointAlong, segmentsMeet } from './segment.ts';

const at = (eastM: number, northM: number): PlanePoint => ({ eastM, northM });
const dogleg = [at(0, 0), at(0, 200), at(100, 200)];

test('a dogleg is measured along its legs', () => {
  expect(lengthM(dogleg)).toBe(300);
  expect(pointAlong(dogleg, 250)).toEqual(at(50, 200));
  expect(pointAlong(dogleg, -5)).toEqual(at(0, 0));
  expect(pointAlong(dogleg, 999)).toEqual(at(100, 200));
  expect(alongLineM(at(60, 230), dogleg)).toBe(260);
  expect(distanceToLineM(at(60, 230), dogleg)).toBe(30);
  expect(distanceToLineM(at(3, -4), [at(0, 0)])).toBe(5);
});

test('segments meet when they cross, touch or overlap', () => {
  expect(segmentsMeet(at(0, 0), at(4, 4), at(0, 4), at(4, 0))).toBe(true);
  expect(segmentsMeet(at(0, 0), at(4, 0), at(4, 0), at(8, 3))).toBe(true);
  expect(segmentsMeet(at(0, 0), at(4, 0), at(2, 0), at(9, 0))).toBe(true);
  expect(segmentsMeet(at(0, 0), at(4, 0), at(5, 0), at(9, 0))).toBe(false);
  expect(segmentsMeet(at(0, 0), at(4, 0), at(0, 1), at(4, 1))).toBe(false);
});
