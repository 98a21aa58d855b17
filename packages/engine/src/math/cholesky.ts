/** The lower triangle L of a symmetric positive definite matrix A = L L'; `undefined` when A is not positive definite. */
export function choleskyOf(a: readonly (readonly number[])[]): number[][] | undefined {
  const n = a.length;
  const l = zeros(n);
  for (let i = 0; i < n; i++)
    for (let j = 0; j <= i; j++) {
      let sum = a[i]![j]!;
      for (let k = 0; k < j; k++) sum -= l[i]![k]! * l[j]![k]!;
      if (i === j && !(sum > 0)) return undefined;
      l[i]![j] = i === j ? Math.sqrt(sum) : sum / l[j]![j]!;
    }
  return l;
}

/**
 * The inverse of a symmetric positive definite matrix by its Cholesky factor, column by column.
 * `undefined` when the matrix is not positive definite.
 */
export function invertPositive(a: readonly (readonly number[])[]): number[][] | undefined {
  const n = a.length;
  const l = choleskyOf(a);
  if (l === undefined) return undefined;
  const inverse = zeros(n);
  for (let c = 0; c < n; c++) {
    const y = zeroRow(n);
    for (let i = 0; i < n; i++) {
      let sum = i === c ? 1 : 0;
      for (let k = 0; k < i; k++) sum -= l[i]![k]! * y[k]!;
      y[i] = sum / l[i]![i]!;
    }
    for (let i = n - 1; i >= 0; i--) {
      let sum = y[i]!;
      for (let k = i + 1; k < n; k++) sum -= l[k]![i]! * inverse[k]![c]!;
      inverse[i]![c] = sum / l[i]![i]!;
    }
  }
  return inverse;
}

const zeroRow = (n: number): number[] => Array.from({ length: n }, () => 0);
const zeros = (n: number): number[][] => Array.from({ length: n }, () => zeroRow(n));
