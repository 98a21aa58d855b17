import { describe, expect, it } from 'vitest';
import { gaussLegendre } from './gaussLegendre.ts';
import { logBetaPdf, logGamma } from './gamma.ts';

describe('the gamma function', () => {
  it('is the factorial at whole numbers and sqrt(pi) at a half', () => {
    let factorial = 1;
    for (let n = 1; n < 30; n++) {
      expect(logGamma(n)).toBeCloseTo(Math.log(factorial), 11);
      factorial *= n;
    }
    expect(logGamma(0.5)).toBeCloseTo(Math.log(Math.PI) / 2, 13);
    expect(logGamma(0.1)).toBeCloseTo(2.252712651734206, 12);
  });

  it('makes the beta density integrate to 1', () => {
    const { nodes, weights } = gaussLegendre(80);
    const total = nodes.reduce(
      (sum, x, i) => sum + ((weights[i] ?? 0) / 2) * Math.exp(logBetaPdf((1 + x) / 2, 3.2, 2)),
      0,
    );
    expect(total).toBeCloseTo(1, 6);
  });
});

describe('Gauss-Legendre rules', () => {
  it('are exact for polynomials of degree 2n - 1', () => {
    for (const n of [1, 2, 5, 20, 64]) {
      const { nodes, weights } = gaussLegendre(n);
      for (const degree of [0, n - 1, 2 * n - 2]) {
        const sum = nodes.reduce((total, x, i) => total + (weights[i] ?? 0) * x ** degree, 0);
        expect(sum).toBeCloseTo(degree % 2 === 1 ? 0 : 2 / (degree + 1), 12);
      }
    }
  });
});
