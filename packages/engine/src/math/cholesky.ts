/**
 * The inverse of a symmetric positive definite matrix by its Cholesky factor (A = L L', then column by column).
 * `undefined` when the matrix is not positive definite.
 */
export function invertPositive(a: readonly (readonly number[])[]): number[][] | undefined {
  const n = a.length;
  const l = zeros(n);
  const at = (m: readonly (readonly number[])[], i: number, j: number): number => m[i]?.[j] ?? 0;
  const set = (m: number[][], i: number, j: number, x: number): void => {
    const row = m[i];
    if (row) row[j] = x;
  };
  for (let i = 0; i < n; i++)
    for (let j = 0; j <= i; j++) {
      let sum = at(a, i, j);
      for (let k = 0; k < j; k++) sum -= at(l, i, k) * at(l, j, k);
      if (i === j && !(sum > 0)) return undefined;
      set(l, i, j, i === j ? Math.sqrt(sum) : sum / at(l, j, j));
    }
  const inverse = zeros(n);
  for (let c = 0; c < n; c++) {
    const y = zeroRow(n);
    for (let i = 0; i < n; i++) {
      let sum = i === c ? 1 : 0;
      for (let k = 0; k < i; k++) sum -= at(l, i, k) * (y[k] ?? 0);
      y[i] = sum / at(l, i, i);
    }
    for (let i = n - 1; i >= 0; i--) {
      let sum = y[i] ?? 0;
      for (let k = i + 1; k < n; k++) sum -= at(l, k, i) * at(inverse, k, c);
      set(inverse, i, c, sum / at(l, i, i));
    }
  }
  return inverse;
}

const zeroRow = (n: number): number[] => Array.from({ length: n }, () => 0);
const zeros = (n: number): number[][] => Array.from({ length: n }, () => zeroRow(n));
