import { describe, expect, test } from 'vitest';
import { dragCoefficient, dragOfSpin, liftCoefficient, liftOfSpin } from './aerodynamics.ts';
import { AERO_TABLE, LAST_SPIN_FACTOR, ROWS_PER_UNIT } from './aeroTable.ts';
import { windShare } from './wind.ts';

describe('coefficients', () => {
  test.each([
    [0.05, 2.0, 0.20619, 0.12557],
    [0.09, 1.8, 0.2279, 0.16297],
    [0.15, 1.2, 0.25585, 0.20988],
    [0.25, 1.0, 0.31702, 0.28631],
    [0.45, 0.9, 0.42253, 0.40244],
    [0.8, 0.6, 0.50986, 0.46057],
  ])('at S %f, R %f: drag %f, lift %f', (s, r, drag, lift) => {
    expect(dragCoefficient(s, r)).toBeCloseTo(drag, 5);
    expect(liftCoefficient(s, r)).toBeCloseTo(lift, 5);
  });

  test('are held beyond the fitted Reynolds numbers, and a ball without spin has no lift', () => {
    expect(dragCoefficient(0.1, 0.1)).toBe(dragCoefficient(0.1, 0.45));
    expect(liftCoefficient(0.1, 9)).toBe(liftCoefficient(0.1, 2.4));
    expect(liftCoefficient(0, 1.5)).toBe(0);
    expect(liftCoefficient(0.04, 0.45)).toBeGreaterThanOrEqual(0);
  });

  test('the table is within 2e-6 of the formulas everywhere', () => {
    let worst = 0;
    for (let s = 0; s < LAST_SPIN_FACTOR; s += 0.000_37) {
      const row = Math.floor(s * ROWS_PER_UNIT);
      const part = s * ROWS_PER_UNIT - row;
      const at = (column: number): number =>
        (1 - part) * (AERO_TABLE[2 * row + column] ?? 0) + part * (AERO_TABLE[2 * row + 2 + column] ?? 0);
      worst = Math.max(worst, Math.abs(at(0) - dragOfSpin(s)), Math.abs(at(1) - liftOfSpin(s)));
    }
    expect(worst).toBeLessThan(2e-6);
  });
});

test.each([
  [1, 0.61],
  [2, 0.73],
  [5, 0.88],
  [10, 1],
  [20, 1.12],
  [30, 1.19],
])('at %f m the wind over open grass is %f of the one at 10 m', (heightM, share) => {
  expect(windShare(heightM, 10, 0.03)).toBeCloseTo(share, 2);
  expect(windShare(0.2, 10, 0.03)).toBe(windShare(1, 10, 0.03));
});
