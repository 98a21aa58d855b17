import { describe, expect, it } from 'vitest';
import { rankCorrelation } from './rankCorrelation.ts';

describe('rank correlation', () => {
  it('is 1 for any rising relation and -1 for any falling one', () => {
    const x = [0.1, 3, 2, 8, 5];
    expect(rankCorrelation(x.map((a) => [a, Math.exp(a)]))).toBeCloseTo(1, 12);
    expect(rankCorrelation(x.map((a) => [a, -(a ** 3)]))).toBeCloseTo(-1, 12);
  });

  it('gives a worked example with ties', () => {
    // Ranks 1 2.5 2.5 4 against 1 3 2 4: covariance 4.5, variances 4.5 and 5.
    const pairs = [
      [10, 1],
      [20, 5],
      [20, 4],
      [30, 9],
    ] as const;
    expect(rankCorrelation(pairs)).toBeCloseTo(4.5 / Math.sqrt(4.5 * 5), 12);
    expect(
      rankCorrelation([
        [1, 1],
        [1, 2],
      ]),
    ).toBeNaN();
  });
});
