import { normalQuantile } from '../math/normal.ts';

/** How far the mean of one sample is above another's, with its interval of 80 in 100, and whether chance alone gives as much in fewer than one case of twenty. */
export interface Difference {
  readonly mean: number;
  readonly lo80: number;
  readonly hi80: number;
  readonly beyondChance: boolean;
}

/** Fewer than these tell nothing of their own spread. */
const LEAST = 4;

/** Later less earlier, the spreads of the two not taken for equal (B. L. Welch, 1947). `undefined` below four values in either. */
export function differenceOfMeans(earlier: readonly number[], later: readonly number[]): Difference | undefined {
  if (earlier.length < LEAST || later.length < LEAST) return undefined;
  const [a, b] = [summed(earlier), summed(later)];
  const variance = a.share + b.share;
  const freedom = variance === 0 ? Infinity : variance ** 2 / (a.share ** 2 / (a.n - 1) + b.share ** 2 / (b.n - 1));
  const mean = b.mean - a.mean;
  const half = (level: number): number => studentQuantile(0.5 + level / 2, freedom) * Math.sqrt(variance);
  return { mean, lo80: mean - half(0.8), hi80: mean + half(0.8), beyondChance: Math.abs(mean) > half(0.95) };
}

function summed(values: readonly number[]): { readonly n: number; readonly mean: number; readonly share: number } {
  const n = values.length;
  const mean = values.reduce((sum, v) => sum + v, 0) / n;
  return { n, mean, share: values.reduce((sum, v) => sum + (v - mean) ** 2, 0) / (n - 1) / n };
}

/** Student's quantile from the normal's, by four terms of R. A. Fisher and E. A. Cornish (1960): to .01 from 3 degrees of freedom and 97.5 %. */
export function studentQuantile(p: number, freedom: number): number {
  const z = normalQuantile(p);
  const terms = [
    (z ** 3 + z) / 4,
    (5 * z ** 5 + 16 * z ** 3 + 3 * z) / 96,
    (3 * z ** 7 + 19 * z ** 5 + 17 * z ** 3 - 15 * z) / 384,
    (79 * z ** 9 + 776 * z ** 7 + 1482 * z ** 5 - 1920 * z ** 3 - 945 * z) / 92160,
  ];
  return terms.reduce((sum, term, i) => sum + term / freedom ** (i + 1), z);
}
