import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';

export interface Counts {
  readonly passed: number;
  readonly failed: number;
  readonly skipped: number;
}

/** What one report holds: Vitest's JSON counts tests by name, Playwright's by `stats`. Throws when it is neither. */
export function countReport(report: unknown): Counts {
  if (!isRecord(report)) throw new Error('a test report is not an object');
  const { stats } = report;
  if (isRecord(stats)) {
    const errors = Array.isArray(report['errors']) ? report['errors'].length : 0;
    return {
      passed: count(stats, 'expected') + count(stats, 'flaky'),
      failed: count(stats, 'unexpected') + errors,
      skipped: count(stats, 'skipped'),
    };
  }
  return {
    passed: count(report, 'numPassedTests'),
    failed: count(report, 'numFailedTests'),
    skipped: count(report, 'numPendingTests') + count(report, 'numTodoTests'),
  };
}

/** The sum of all reports in a folder. */
export function countAll(folder: string): Counts {
  return readdirSync(folder)
    .filter((name) => name.endsWith('.json'))
    .map((name) => countReport(JSON.parse(readFileSync(join(folder, name), 'utf8'))))
    .reduce(
      (sum, one) => ({
        passed: sum.passed + one.passed,
        failed: sum.failed + one.failed,
        skipped: sum.skipped + one.skipped,
      }),
      { passed: 0, failed: 0, skipped: 0 },
    );
}

/** `N passed, N failed`, with `, N skipped` when some were; and it says so when the real ground was not there to be tested on. */
export function closingLine(counts: Counts, haveRealGround: boolean): string {
  const skipped = counts.skipped > 0 ? `, ${counts.skipped} skipped` : '';
  return `${counts.passed} passed, ${counts.failed} failed${skipped}${haveRealGround ? '' : '; SKIPPED: real ground'}`;
}

function count(record: Record<string, unknown>, name: string): number {
  const value = record[name];
  if (typeof value !== 'number') throw new Error(`a test report has no count "${name}"`);
  return value;
}

const isRecord = (value: unknown): value is Record<string, unknown> => typeof value === 'object' && value !== null;
