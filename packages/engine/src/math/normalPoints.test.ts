import { expect, test } from 'vitest';
import { normalPoints } from './normalPoints.ts';

test('256 points in 7 dimensions have the first three moments of standard normals exactly, and their tails roughly', () => {
  const [n, d] = [256, 7];
  const points = normalPoints(n, d);
  for (let k = 0; k < d; k++) {
    for (let j = 0; j <= k; j++) {
      let product = 0;
      for (let i = 0; i < n; i++) product += points[i * d + k]! * points[i * d + j]!;
      expect(product / n).toBeCloseTo(k === j ? 1 : 0, 9);
    }
    const axis = Array.from({ length: n }, (_, i) => points[i * d + k]!);
    expect(axis.reduce((sum, x) => sum + x, 0)).toBeCloseTo(0, 9);
    // One in twenty is beyond 1.96; the standard error of that count is 5 (mirrored, so in pairs).
    expect(Math.abs(axis.filter((x) => Math.abs(x) > 1.96).length - 12.8)).toBeLessThan(15);
  }
});
