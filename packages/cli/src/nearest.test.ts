import fc from 'fast-check';
import { expect, test } from 'vitest';
import { changesBetween, nearest } from './nearest.ts';

test('the changes between two words are a distance', () => {
  const word = fc.string({ maxLength: 8 });
  fc.assert(
    fc.property(word, word, word, (a, b, c) => {
      expect(changesBetween(a, b)).toBe(changesBetween(b, a));
      expect(changesBetween(a, b) === 0).toBe(a === b);
      expect(changesBetween(a, c)).toBeLessThanOrEqual(changesBetween(a, b) + changesBetween(b, c));
    }),
    { seed: 7, numRuns: 200 },
  );
});

test('a near name is offered and a far one is not', () => {
  expect(nearest('cary', ['carries', 'check', 'plan'])).toBeUndefined();
  expect(nearest('plna', ['carries', 'check', 'plan'])).toBe('plan');
  expect(nearest('pln', ['carries', 'check', 'plan'])).toBe('plan');
  expect(nearest('carrys', ['carries', 'check', 'plan'])).toBe('carries');
});
