import { describe, expect, it } from 'vitest';
import { randomFrom } from './random.ts';

const moments = (draw: () => number, n = 40_000): readonly [mean: number, variance: number] => {
  let sum = 0;
  let sumSq = 0;
  for (let i = 0; i < n; i++) {
    const x = draw();
    sum += x;
    sumSq += x * x;
  }
  return [sum / n, sumSq / n - (sum / n) ** 2];
};

describe('seeded random numbers', () => {
  it('repeat with the seed and differ between seeds', () => {
    const first = randomFrom(7);
    const again = randomFrom(7);
    const other = randomFrom(8);
    const draws = Array.from({ length: 50 }, () => first.next());
    expect(Array.from({ length: 50 }, () => again.next())).toEqual(draws);
    expect(Array.from({ length: 50 }, () => other.next())).not.toEqual(draws);
    expect(draws.every((x) => x >= 0 && x < 1)).toBe(true);
  });

  it('have the moments of their distributions, within five standard errors', () => {
    const random = randomFrom(2024);
    const close = ([mean, variance]: readonly [number, number], m: number, v: number): void => {
      expect(Math.abs(mean - m)).toBeLessThan(5 * Math.sqrt(v / 40_000));
      expect(Math.abs(variance / v - 1)).toBeLessThan(0.06);
    };
    close(moments(random.next), 1 / 2, 1 / 12);
    close(moments(random.normal), 0, 1);
    close(
      moments(() => random.gamma(3.5)),
      3.5,
      3.5,
    );
    close(
      moments(() => random.gamma(0.4)),
      0.4,
      0.4,
    );
    close(
      moments(() => random.beta(3.2, 2)),
      3.2 / 5.2,
      6.4 / (5.2 ** 2 * 6.2),
    );
    close(
      moments(() => random.below(6)),
      2.5,
      35 / 12,
    );
  });
});
