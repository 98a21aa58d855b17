import { expect, test } from 'vitest';
import { afterMeasuring } from './linear.ts';

test('two figures measured alone and in sum are as the closed form has them', () => {
  const before = { mean: Float64Array.of(1, 2), covariance: Float64Array.of(4, 1, 1, 9) };
  const sum = afterMeasuring(before, [{ of: [0, 1], value: 10, variance: 2 }]);
  // The sum is 3 with variance 15; the gains are 5 / 17 and 10 / 17.
  expect(sum.mean[0]).toBeCloseTo(1 + (7 * 5) / 17, 12);
  expect(sum.mean[1]).toBeCloseTo(2 + (7 * 10) / 17, 12);
  expect([...sum.covariance].map((x) => Number(x.toFixed(9)))).toEqual(
    [4 - 25 / 17, 1 - 50 / 17, 1 - 50 / 17, 9 - 100 / 17].map((x) => Number(x.toFixed(9))),
  );
  expect(sum.logChance).toBeCloseTo(-0.5 * (Math.log(2 * Math.PI * 17) + 49 / 17), 12);
});

test('the order of measurements does not matter', () => {
  const before = { mean: Float64Array.of(0, 0, 0), covariance: Float64Array.of(2, 1, 0, 1, 3, 1, 0, 1, 4) };
  const measured = [
    { of: [0, 2], value: 1, variance: 1 },
    { of: [1], value: -1, variance: 0.5 },
    { of: [1, 2], value: 2, variance: 3 },
  ];
  const [a, b] = [afterMeasuring(before, measured), afterMeasuring(before, measured.toReversed())];
  a.mean.forEach((x, i) => expect(x).toBeCloseTo(b.mean[i]!, 12));
  expect(a.logChance).toBeCloseTo(b.logChance, 12);
});
