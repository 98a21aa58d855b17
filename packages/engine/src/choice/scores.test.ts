import { expect, it } from 'vitest';
import { puttChances } from '../player/puttChances.ts';
import { matchChances, scoreChances, scoresOn, stablefordPoints } from './scores.ts';

// 3, 4, 5 or 6 strokes
const chances = [0, 0, 0, 0.1, 0.5, 0.3, 0.1];

it('counts par or better, and double or worse, gross and net', () => {
  expect(scoresOn(chances, 4)).toEqual({ parOrBetter: 0.6, doubleOrWorse: 0.1 });
  expect(scoresOn(chances, 4, 1)).toEqual({ parOrBetter: expect.closeTo(0.9, 12), doubleOrWorse: 0 });
  expect(scoresOn(scoreChances([0, 0, 1], 3), 4).parOrBetter).toBe(0);
});

it('counts points', () => {
  expect(stablefordPoints(chances, 4)).toBeCloseTo(0.1 * 3 + 0.5 * 2 + 0.3 * 1, 12);
  expect(stablefordPoints(chances, 4, 1)).toBeCloseTo(0.1 * 4 + 0.5 * 3 + 0.3 * 2 + 0.1, 12);
});

it('counts holes won, halved and lost', () => {
  const { win, halve, lose } = matchChances(chances, [0, 0, 0, 0, 1]);
  expect([win, halve, lose].map((p) => Math.round(p * 10) / 10)).toEqual([0.1, 0.5, 0.4]);
  expect(matchChances(chances, [0, 0, 0, 0, 1], 1).win).toBeCloseTo(0.6, 12);
});

it('parts a mean of putts into whole ones that keep the mean', () => {
  for (const mean of [1, 1.02, 1.4, 1.8, 2, 2.2, 2.5, 3.1, 4]) {
    const parts = puttChances(mean);
    expect(parts.reduce((sum, p) => sum + p, 0)).toBeCloseTo(1, 9);
    expect(parts.reduce((sum, p, i) => sum + p * (i + 1), 0)).toBeCloseTo(mean, 6);
    expect(Math.min(...parts)).toBeGreaterThanOrEqual(0);
  }
});
