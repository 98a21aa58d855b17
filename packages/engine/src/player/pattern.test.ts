import { describe, expect, it } from 'vitest';
import { gaussLegendre } from '../math/gaussLegendre.ts';
import { normalPdf } from '../math/normal.ts';
import { RAD_PER_DEG } from '../quantity/units.ts';
import { SHORT_BETA, SHORT_HALVES } from '../stats/mishit.ts';
import { partsOf, widen } from './pattern.ts';

const SWING = { carryM: 140, sdCarryM: 9, directionDeg: 3, directionSdDeg: 6, corr: 0.3, mishitShare: 0.2, full: true };

describe('a swing as normals', () => {
  it('has the mean and covariance of carry and direction, by integration', () => {
    const rule = gaussLegendre(60);
    const sums = { along: 0, across: 0, alongSq: 0, acrossSq: 0, product: 0 };
    const half = 8;
    const w = Math.sqrt(1 - SWING.corr ** 2);
    rule.nodes.forEach((x, i) =>
      rule.nodes.forEach((y, j) => {
        const [u, v] = [half * x, half * y];
        const chance = half * half * (rule.weights[i] ?? 0) * (rule.weights[j] ?? 0) * normalPdf(u) * normalPdf(v);
        const carry = SWING.carryM + SWING.sdCarryM * u;
        const rad = (SWING.directionDeg + SWING.directionSdDeg * (SWING.corr * u + w * v)) * RAD_PER_DEG;
        const [a, c] = [carry * Math.cos(rad), carry * Math.sin(rad)];
        sums.along += chance * a;
        sums.across += chance * c;
        sums.alongSq += chance * a * a;
        sums.acrossSq += chance * c * c;
        sums.product += chance * a * c;
      }),
    );
    const good = partsOf(SWING)[0];
    expect(good?.alongM).toBeCloseTo(sums.along, 2);
    expect(good?.acrossM).toBeCloseTo(sums.across, 2);
    expect(good?.sdAlongM).toBeCloseTo(Math.sqrt(sums.alongSq - sums.along ** 2), 1);
    expect(good?.sdAcrossM).toBeCloseTo(Math.sqrt(sums.acrossSq - sums.across ** 2), 1);
    const corr = (sums.product - sums.along * sums.across) / ((good?.sdAlongM ?? 1) * (good?.sdAcrossM ?? 1));
    expect(good?.corr).toBeCloseTo(corr, 2);
  });

  it('keeps the mean and variance of the short mishits', () => {
    const { a, b } = SHORT_BETA;
    const mean = (SHORT_HALVES[0].mean + SHORT_HALVES[1].mean) / 2;
    const meanSq = SHORT_HALVES.reduce((sum, h) => sum + (h.sd ** 2 + h.mean ** 2) / 2, 0);
    expect(mean).toBeCloseTo(a / (a + b), 4);
    expect(meanSq - mean ** 2).toBeCloseTo((a * b) / ((a + b) ** 2 * (a + b + 1)), 4);
  });

  it('has all balls finish short of the good ones by a third of the mishit share', () => {
    const parts = partsOf({ ...SWING, directionDeg: 0, directionSdDeg: 0.01, corr: 0 });
    const all = parts.reduce((sum, p) => sum + p.weight * p.alongM, 0);
    expect(all / 140).toBeCloseTo(1 - 0.332 * 0.2, 3);
  });

  it('only gains spread and mishits on the course', () => {
    const parts = partsOf(SWING);
    const wider = widen(parts, 0.06, 0.1);
    expect(wider[0]?.weight).toBeCloseTo(0.7, 12);
    expect(wider.reduce((sum, p) => sum + p.weight, 0)).toBeCloseTo(1, 12);
    wider.forEach((p, i) => {
      expect(p.alongM).toBe(parts[i]?.alongM);
      expect(p.sdAlongM).toBeGreaterThan(parts[i]?.sdAlongM ?? 0);
    });
    expect(widen(parts, 0, 0).map((p) => p.sdAlongM)).toEqual(parts.map((p) => expect.closeTo(p.sdAlongM, 9)));
  });
});
