import { expect, test } from 'vitest';
import { scoreSessions } from './sessionScores.ts';

test('a swing that loses 6 % in a year is nearer found with the days of its balls than without, and its doubt covers it', () => {
  const s = scoreSessions(10, { name: '', perYear: -0.06, wanders: 0, day: 0.01 }, 0, 11);
  expect(s.known.rmsYd).toBeLessThan(0.9 * s.alike.rmsYd);
  expect(s.known.covered80).toBeGreaterThan(s.alike.covered80 + 0.15);
});

test('range balls that go 93 % are found out by marks on greens with the own ball', () => {
  const s = scoreSessions(8, { name: '', perYear: 0, wanders: 0, day: 0.01, rangeBall: 0.93 }, 15, 11);
  expect(Math.abs(s.known.biasYd)).toBeLessThan(2.5);
  expect(s.known.rmsYd).toBeLessThan(0.5 * s.alike.rmsYd);
});
