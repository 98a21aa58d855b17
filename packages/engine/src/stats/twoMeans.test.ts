import { describe, expect, it } from 'vitest';
import { randomFrom } from '../math/random.ts';
import { differenceOfMeans, studentQuantile } from './twoMeans.ts';

describe('the difference of two means', () => {
  it.each([
    [0.9, 3, 1.638],
    [0.9, 5, 1.476],
    [0.9, 10, 1.372],
    [0.975, 3, 3.182],
    [0.975, 5, 2.571],
    [0.975, 10, 2.228],
    [0.975, 30, 2.042],
    [0.975, Infinity, 1.96],
  ])('takes Student’s quantile of %d at %d degrees of freedom as the tables have it: %d', (p, freedom, t) => {
    expect(Math.abs(studentQuantile(p, freedom) - t)).toBeLessThan(0.01);
  });

  it('is that of the means, turned about when the samples are', () => {
    const [a, b] = [
      [100, 104, 98, 102],
      [108, 112, 106, 110, 109],
    ];
    const there = differenceOfMeans(a, b)!;
    const back = differenceOfMeans(b, a)!;
    expect(there.mean).toBeCloseTo(8, 12);
    expect(back.lo80).toBeCloseTo(-there.hi80, 12);
    expect(there.beyondChance).toBe(true);
    expect(differenceOfMeans(a, b.slice(0, 3))).toBeUndefined();
  });

  it('holds the truth four times in five, and calls chance a change once in twenty', () => {
    const random = randomFrom(11);
    const of = (n: number, mean: number, sd: number): number[] =>
      Array.from({ length: n }, () => mean + sd * random.normal());
    let [held, called] = [0, 0];
    const rounds = 4000;
    for (let i = 0; i < rounds; i++) {
      const { lo80, hi80, beyondChance } = differenceOfMeans(of(6, 130, 9), of(14, 130, 6))!;
      held += lo80 <= 0 && hi80 >= 0 ? 1 : 0;
      called += beyondChance ? 1 : 0;
    }
    expect(Math.abs(held / rounds - 0.8)).toBeLessThan(0.025);
    expect(Math.abs(called / rounds - 0.05)).toBeLessThan(0.015);
  });
});
