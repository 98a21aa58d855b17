import { expect, test } from 'vitest';
import { closingLine, countReport } from './closing-line.ts';

test('the reports of both runners are counted', () => {
  expect(countReport({ numPassedTests: 5, numFailedTests: 1, numPendingTests: 2, numTodoTests: 1 })).toEqual({
    passed: 5,
    failed: 1,
    skipped: 3,
  });
  const stats = { expected: 4, unexpected: 1, flaky: 1, skipped: 0 };
  expect(countReport({ stats, errors: [{ message: 'no server' }] })).toEqual({ passed: 5, failed: 2, skipped: 0 });
});

test('a report without counts is no report', () => {
  expect(() => countReport({})).toThrow('no count "numPassedTests"');
  expect(() => countReport(null)).toThrow('not an object');
});

test('the closing line counts, and says when the real ground was absent', () => {
  expect(closingLine({ passed: 12, failed: 0, skipped: 0 }, true)).toBe('12 passed, 0 failed');
  expect(closingLine({ passed: 12, failed: 1, skipped: 3 }, true)).toBe('12 passed, 1 failed, 3 skipped');
  expect(closingLine({ passed: 12, failed: 0, skipped: 3 }, false)).toBe(
    '12 passed, 0 failed, 3 skipped; SKIPPED: real ground',
  );
});
