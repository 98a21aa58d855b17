import { expect, test } from 'vitest';
import { cubic, cubicFall, cubicTop } from './cubic.ts';

test('a parabola through its ends: its top and its fall are where algebra has them', () => {
  // y = 2 + 3 u - 5 u^2
  const ends = [2, 3, 0, -7] as const;
  expect(cubic(0.25, ...ends)).toBeCloseTo(2 + 0.75 - 0.3125, 12);
  expect(cubicTop(...ends)).toBeCloseTo(0.3, 12);
  expect(cubicFall(1, 0.3, ...ends)).toBeCloseTo((3 + Math.sqrt(29)) / 10, 10);
});

test('a true cubic: y = u - u^3', () => {
  const ends = [0, 1, 0, -2] as const;
  expect(cubicTop(...ends)).toBeCloseTo(1 / Math.sqrt(3), 12);
  expect(cubicFall(0, 1 / Math.sqrt(3), ...ends)).toBeCloseTo(1, 10);
  expect(cubicFall(0.375, 1 / Math.sqrt(3), ...ends)).toBeCloseTo((-0.5 + Math.sqrt(3.25)) / 2, 9);
});
