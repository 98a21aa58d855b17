import { describe, expect, it } from 'vitest';
import { interpolateRows } from '../math/interpolate.ts';
import { FOOT_M } from '../quantity/units.ts';
import type { PuttingParameters } from './file.ts';
import { holingChance, puttingPrior, puttingRows } from './putting.ts';

/** A model whose chances and expected putts were worked out independently (quadrature and 400,000 simulated rounds). */
const SEPARATE: PuttingParameters = {
  sdAngleDeg: 1.5,
  sdDistance: 0.075,
  pastM: 0.35,
  captureM: 1.2,
  holeHalfWidthM: 0.054,
};

const strokesAt = (rows: ReturnType<typeof puttingRows>, distanceM: number): number =>
  interpolateRows(
    rows.map((r) => [r.distanceM, r.strokes]),
    distanceM,
  );

describe('putting', () => {
  it('holes with the chances of the closed form', () => {
    const at = [1, 2, 3, 5, 8, 12, 20, 30];
    const chances = [0.96069, 0.68126, 0.46652, 0.25329, 0.12707, 0.06385, 0.0248, 0.01133];
    at.forEach((d, i) => expect(holingChance(SEPARATE, d)).toBeCloseTo(chances[i] ?? 0, 5));
  });

  it('takes the putts of an independent table within .002', () => {
    const rows = puttingRows(SEPARATE);
    const at = [1, 2, 3, 5, 8, 12, 20, 30];
    const putts = [1.0393, 1.3188, 1.5342, 1.7523, 1.8964, 1.9991, 2.1414, 2.2818];
    at.forEach((d, i) => expect(Math.abs(strokesAt(rows, d) - (putts[i] ?? 0))).toBeLessThan(0.002));
  });

  it('meets the published points of tour putting', () => {
    const tour = puttingPrior({ handicapIndex: -5.5 });
    const rows = puttingRows(tour);
    // One-putt chances and expected putts by feet (M. Broadie, as quoted in the press and in academic papers).
    const oneputt = [3, 0.96, 4, 0.88, 5, 0.77, 8, 0.5, 10, 0.4, 15, 0.23, 20, 0.15, 30, 0.07, 40, 0.04];
    for (let i = 0; i < oneputt.length; i += 2)
      expect(Math.abs(holingChance(tour, (oneputt[i] ?? 0) * FOOT_M) - (oneputt[i + 1] ?? 0))).toBeLessThan(0.02);
    const putts = [2, 1.009, 3, 1.053, 4, 1.147, 5, 1.256, 8, 1.515, 20, 1.87, 33, 2.0];
    for (let i = 0; i < putts.length; i += 2)
      expect(Math.abs(strokesAt(rows, (putts[i] ?? 0) * FOOT_M) - (putts[i + 1] ?? 0))).toBeLessThan(0.03);
  });

  it('meets a simulated table by index, within its rounding and noise', () => {
    const table = [
      { index: 0, one: [0.92, 0.69, 0.44, 0.33, 0.12, 0.06], putts: [1.31, 1.67, 1.91, 2.01, 2.09] },
      { index: 10, one: [0.85, 0.57, 0.34, 0.26, 0.09, 0.04], putts: [1.43, 1.75, 1.97, 2.09, 2.19] },
      { index: 20, one: [0.75, 0.46, 0.27, 0.2, 0.07, 0.04], putts: [1.54, 1.82, 2.04, 2.18, 2.29] },
      { index: 30, one: [0.66, 0.39, 0.22, 0.16, 0.06, 0.03], putts: [1.62, 1.87, 2.1, 2.26, 2.38] },
    ];
    for (const { index, one, putts } of table) {
      const model = puttingPrior({ handicapIndex: index });
      const rows = puttingRows(model);
      [3, 5, 8, 10, 20, 30].forEach((ft, i) =>
        expect(Math.abs(holingChance(model, ft * FOOT_M) - (one[i] ?? 0))).toBeLessThan(0.015),
      );
      [5, 10, 20, 30, 40].forEach((ft, i) =>
        expect(Math.abs(strokesAt(rows, ft * FOOT_M) - (putts[i] ?? 0))).toBeLessThan(0.015),
      );
    }
  });

  it('rises with distance and with the index', () => {
    const better = puttingRows(puttingPrior({ handicapIndex: 5 }));
    const worse = puttingRows(puttingPrior({ handicapIndex: 25 }));
    better.forEach((row, i) => {
      expect(row.strokes).toBeGreaterThanOrEqual((better[Math.max(0, i - 1)]?.strokes ?? 0) - 1e-9);
      expect(worse[i]?.strokes ?? 0).toBeGreaterThanOrEqual(row.strokes - 1e-9);
    });
  });
});
