/** A belief about several figures that are normal together. */
export interface JointNormal {
  readonly mean: Float64Array;
  /** Row after row. */
  readonly covariance: Float64Array;
}

/** A measured sum of some of the figures, and the variance of its error. */
export interface Measured {
  readonly of: readonly number[];
  readonly value: number;
  readonly variance: number;
}

/** Takes in measurements one after another (the update of R. Kalman, 1960); `logChance` is that of all of them under the belief before. */
export function afterMeasuring(
  before: JointNormal,
  measured: readonly Measured[],
): JointNormal & { readonly logChance: number } {
  const mean = before.mean.slice();
  const covariance = before.covariance.slice();
  const d = mean.length;
  let logChance = 0;
  const arm = new Float64Array(d);
  for (const { of, value, variance } of measured) {
    let [expected, total] = [0, variance];
    for (const i of of) expected += mean[i]!;
    for (let r = 0; r < d; r++) {
      let sum = 0;
      for (const i of of) sum += covariance[r * d + i]!;
      arm[r] = sum;
    }
    for (const i of of) total += arm[i]!;
    const off = value - expected;
    logChance -= 0.5 * (Math.log(2 * Math.PI * total) + off ** 2 / total);
    for (let r = 0; r < d; r++) {
      const gain = arm[r]! / total;
      mean[r]! += gain * off;
      for (let c = 0; c < d; c++) covariance[r * d + c]! -= gain * arm[c]!;
    }
  }
  return { mean, covariance, logChance };
}
