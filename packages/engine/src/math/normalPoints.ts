import { choleskyOf } from './cholesky.ts';
import { randomFrom } from './random.ts';

/**
 * `n` points of `d` standard normals, one after another and always the same: each is followed by its mirror image, and all are turned and
 * stretched so that their means, spreads and correlations are exactly 0, 1 and 0. `n` even, well over `2 d`.
 */
export function normalPoints(n: number, d: number): Float64Array {
  const random = randomFrom(1);
  const half = n / 2;
  const raw = Array.from({ length: half }, () => Array.from({ length: d }, () => random.normal()));
  const covariance = Array.from({ length: d }, (_, i) =>
    Array.from({ length: d }, (__, j) => raw.reduce((sum, p) => sum + p[i]! * p[j]!, 0) / half),
  );
  const factor = choleskyOf(covariance);
  if (factor === undefined) throw new Error(`${n} points are too few for ${d} figures`);
  const points = new Float64Array(n * d);
  raw.forEach((p, i) => {
    for (let r = 0; r < d; r++) {
      let rest = p[r]!;
      for (let k = 0; k < r; k++) rest -= factor[r]![k]! * points[2 * i * d + k]!;
      points[2 * i * d + r] = rest / factor[r]![r]!;
      points[(2 * i + 1) * d + r] = -points[2 * i * d + r]!;
    }
  });
  return points;
}
