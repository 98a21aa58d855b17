import { USUAL } from '@leeway/demo';
import { expect, test } from 'vitest';
import { scorePatterns } from './patternScores.ts';

test('60 players of known truth: intervals hold it as often as they say, and the bag beats each club alone and the plain mean', () => {
  const s = scorePatterns(60, 6, (random) => Math.round(3 * 20 ** random.next()), USUAL, 12);
  expect(s.swings).toBe(360);
  // Six swings of a player lean on each other, so that a share of 360 strays by about 3 points.
  for (const [, [c50, c80, c95]] of Object.entries(s.covered)) {
    expect(Math.abs(c50 - 0.5)).toBeLessThan(0.09);
    expect(Math.abs(c80 - 0.8)).toBeLessThan(0.07);
    expect(Math.abs(c95 - 0.95)).toBeLessThan(0.045);
  }
  expect(s.rmsYd.pooled).toBeLessThan(0.9 * s.rmsYd.alone);
  expect(s.rmsYd.pooled).toBeLessThan(0.4 * s.rmsYd.plain);
  expect(s.logScore.pooled).toBeGreaterThan(s.logScore.alone);
  expect(s.logScore.alone).toBeGreaterThan(s.logScore.plain);
  expect(Math.abs(s.mishitBias)).toBeLessThan(0.03);
});
