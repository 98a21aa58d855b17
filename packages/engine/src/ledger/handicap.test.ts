import { expect, test } from 'vitest';
import {
  cappedIndex,
  courseHandicap,
  exceptionalCut,
  indexFrom,
  mostCounted,
  scoreDifferential,
  strokesReceived,
} from './handicap.ts';

const rated = { courseRating: 71.5, slope: 125, par: 72 };

test('a differential is to a tenth, a half upwards', () => {
  expect(scoreDifferential(95, rated, -1)).toBe(22.1);
  // 113/113 x (80 - 79.75) = 0.25 and its negative
  expect(scoreDifferential(80, { courseRating: 79.75, slope: 113, par: 72 })).toBe(0.3);
  expect(scoreDifferential(79.5, { courseRating: 79.75, slope: 113, par: 72 })).toBe(-0.2);
  expect(() => scoreDifferential(80, { ...rated, slope: 20 })).toThrow('slope: found 20; expected 55 to 155');
});

test('the lowest of the last twenty count, fewer with an adjustment', () => {
  expect(indexFrom([20, 21])).toBeUndefined();
  expect(indexFrom([18.2, 21, 20])).toBe(16.2);
  expect(indexFrom([18.2, 21, 20, 19])).toBe(17.2);
  expect(indexFrom([10, 12, 20, 20, 20, 20])).toBe(10);
  const twenty = Array.from({ length: 20 }, (_, i) => 10 + i);
  expect(indexFrom(twenty)).toBe(13.5);
  expect(indexFrom([0, ...twenty])).toBe(13.5);
  expect(indexFrom([80, 80, 80])).toBe(54);
});

test('the caps of the rules’ own example: low 10.0, raw 13.4 gives 13.2', () => {
  expect(cappedIndex(13.4, 10)).toBe(13.2);
  expect(cappedIndex(13, 10)).toBe(13);
  expect(cappedIndex(19, 10)).toBe(15);
  expect(cappedIndex(19, undefined)).toBe(19);
});

test('an exceptional score takes one or two off', () => {
  expect([10.0, 7.9, 3.1, 3.0, -0.1, 0].map((d) => exceptionalCut(d, 10))).toEqual([0, 0, 0, 1, 2, 2]);
});

test('nine holes of index 8.7 at 35.3, 121, par 36 give 4', () => {
  expect(Math.round(courseHandicap(4.4, { courseRating: 35.3, slope: 121, par: 36 }))).toBe(4);
});

test('strokes fall on the hardest holes first; a plus player gives back on the easiest', () => {
  const all = (n: number) => Array.from({ length: 18 }, (_, i) => strokesReceived(n, i + 1));
  for (const n of [-3, 0, 5, 18, 25, 40]) expect(all(n).reduce((a, b) => a + b, 0)).toBe(n);
  expect([strokesReceived(20, 2), strokesReceived(20, 3)]).toEqual([2, 1]);
  expect([strokesReceived(-2, 18), strokesReceived(-2, 16)]).toEqual([-1, 0]);
  expect([mostCounted(4, 1), mostCounted(4, undefined)]).toEqual([7, 9]);
});
