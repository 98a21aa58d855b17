import { describe, expect, it } from 'vitest';
import { erfc, normalCdf, normalPdf, normalQuantile } from './normal.ts';

/** erf by its Taylor series, an independent sum that converges to rounding error for |x| <= 2.5. */
function erfSeries(x: number): number {
  let term = x;
  let sum = x;
  for (let n = 1; n < 200; n++) {
    term *= (-x * x) / n;
    sum += term / (2 * n + 1);
  }
  return (2 / Math.sqrt(Math.PI)) * sum;
}

/** erfc by its continued fraction, evaluated backward; for x >= 2. */
function erfcFraction(x: number): number {
  let tail = 0;
  for (let k = 400; k >= 1; k--) tail = k / 2 / (x + tail);
  return Math.exp(-x * x) / Math.sqrt(Math.PI) / (x + tail);
}

describe('the normal distribution', () => {
  it('agrees with the series of erf and the continued fraction of erfc', () => {
    for (let x = -2.2; x <= 2.2; x += 0.0371) expect(Math.abs(erfc(x) - (1 - erfSeries(x)))).toBeLessThan(3e-14);
    for (let x = 2; x <= 20; x += 0.173) expect(Math.abs(erfc(x) / erfcFraction(x) - 1)).toBeLessThan(1e-12);
  });

  it('gives published values', () => {
    expect(normalCdf(0)).toBe(0.5);
    expect(normalCdf(1.959963984540054)).toBeCloseTo(0.975, 15);
    expect(normalCdf(-10)).toBeCloseTo(7.61985302416e-24, 34);
    expect(normalPdf(0)).toBeCloseTo(0.3989422804014327, 16);
    expect(normalQuantile(0.9)).toBeCloseTo(1.2815515655446004, 14);
    expect(normalQuantile(1e-20)).toBeCloseTo(-9.262340089798408, 12);
  });

  it('is inverted by its quantile', () => {
    for (let x = -8; x <= 5; x += 0.0613) expect(Math.abs(normalQuantile(normalCdf(x)) - x)).toBeLessThan(1e-9);
    for (let p = 0.001; p < 1; p += 0.0013) expect(Math.abs(normalCdf(normalQuantile(p)) - p)).toBeLessThan(1e-14);
  });

  it('is symmetric and handles the ends', () => {
    for (let x = 0; x < 9; x += 0.17) expect(Math.abs(normalCdf(x) + normalCdf(-x) - 1)).toBeLessThan(1e-15);
    expect(normalCdf(-50)).toBe(0);
    expect(normalCdf(50)).toBe(1);
    expect(normalQuantile(0)).toBe(-Infinity);
    expect(normalQuantile(1)).toBe(Infinity);
    expect(normalQuantile(1.1)).toBeNaN();
    expect(normalQuantile(Number.NaN)).toBeNaN();
  });
});
