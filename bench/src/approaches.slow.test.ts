import { expect, test } from 'vitest';
import { scoreApproaches } from './approachScores.ts';

test('players who log only the greens they hit: the carry is off by under a yard on average, the plain mean of the marks by two', () => {
  const s = scoreApproaches(40, 30, 5, 5);
  expect(Math.abs(s.greensHit.biasYd)).toBeLessThan(1);
  expect(s.greensHit.covered80).toBeGreaterThan(0.6);
  expect(s.plainMean.biasYd).toBeGreaterThan(1.5);
  expect(Math.abs(s.withMisses.biasYd)).toBeLessThan(1);
  expect(s.withMisses.rmsYd).toBeLessThan(s.greensHit.rmsYd);
});
