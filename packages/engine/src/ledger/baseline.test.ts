import { expect, test } from 'vitest';
import { FOOT_M, YARD_M } from '../quantity/units.ts';
import { baselineOf, TOUR_INDEX } from './baseline.ts';

test('the tour’s published figures come back as published', () => {
  const tour = baselineOf(TOUR_INDEX);
  expect(tour('tee', 400 * YARD_M)).toBeCloseTo(3.99, 9);
  expect(tour('fairway', 110 * YARD_M)).toBeCloseTo((2.8 + 2.85) / 2, 9);
  expect(tour('bunker', 20 * YARD_M)).toBeCloseTo(2.53, 9);
  expect(tour('recovery', 160 * YARD_M)).toBeCloseTo(3.81, 9);
  expect(tour('green', 33 * FOOT_M)).toBeCloseTo(2, 1);
});

test('a higher index needs more strokes from everywhere', () => {
  const [scratch, ten, fourteen, thirty] = [0, 10, 14, 30].map(baselineOf);
  for (const lie of ['tee', 'fairway', 'rough', 'bunker', 'recovery'] as const) {
    for (const yd of [20, 60, 140, 240, 400]) {
      const at = yd * YARD_M;
      expect(scratch!(lie, at)).toBeLessThan(ten!(lie, at));
      expect(ten!(lie, at)).toBeLessThan(fourteen!(lie, at));
      expect(fourteen!(lie, at)).toBeLessThan(thirty!(lie, at));
    }
  }
  expect(scratch!('green', 5)).toBeLessThan(thirty!('green', 5));
});

test('a standard that no table holds is refused by name', () => {
  expect(() => baselineOf(40)).toThrow('baseline: found index 40; expected -5.5 to 30');
});
