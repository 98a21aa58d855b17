import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { YARD_M } from '../quantity/units.ts';
import { runM } from './run.ts';

describe('the run after a carry', () => {
  it('is that of observed drives and approach shots', () => {
    expect(runM(245 * YARD_M, 'fairway') / YARD_M).toBeCloseTo(18, 0);
    expect(runM(150 * YARD_M, 'fairway') / YARD_M).toBeCloseTo(3, 6);
    expect(runM(100 * YARD_M, 'green') / YARD_M).toBeCloseTo(2.4, 6);
    expect(runM(200, 'bunker')).toBe(0);
    expect(runM(200, 'penalty')).toBe(0);
    expect(runM(120, 'rough')).toBeCloseTo(runM(120, 'fairway') / 4, 9);
  });

  it('never falls as the carry grows', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 400, noNaN: true }),
        fc.double({ min: 0, max: 50, noNaN: true }),
        (a, more) => {
          for (const surface of ['green', 'fairway', 'rough'] as const)
            expect(runM(a + more, surface)).toBeGreaterThanOrEqual(runM(a, surface));
        },
      ),
      { seed: 11, numRuns: 300 },
    );
  });
});
