/** Weights of a normal kernel at whole steps either side of its middle; they sum to 1. */
export type Kernel = readonly number[];

/** A kernel cut off beyond three standard deviations, two steps at least. */
export function kernelOf(sdSteps: number): Kernel {
  const reach = Math.max(2, Math.ceil(3 * sdSteps));
  const raw = Array.from({ length: 2 * reach + 1 }, (_, i) => Math.exp(-0.5 * ((i - reach) / sdSteps) ** 2));
  const sum = raw.reduce((a, b) => a + b, 0);
  return raw.map((w) => w / sum);
}

/** Sums of a grid's values under a kernel, first along the rows and then along the columns; nothing lies beyond the grid. */
export function spread(values: Float64Array, columns: number, kernel: Kernel): Float64Array {
  const rows = values.length / columns;
  const reach = (kernel.length - 1) / 2;
  const along = new Float64Array(values.length);
  const sums = new Float64Array(values.length);
  for (let row = 0; row < rows; row++) {
    const first = row * columns;
    for (let c = 0; c < columns; c++) {
      const value = values[first + c]!;
      if (value === 0) continue;
      const high = Math.min(columns - 1, c + reach);
      for (let to = Math.max(0, c - reach); to <= high; to++) along[first + to]! += kernel[to - c + reach]! * value;
    }
    const last = Math.min(rows - 1, row + reach);
    for (let to = Math.max(0, row - reach); to <= last; to++) {
      const weight = kernel[to - row + reach]!;
      for (let c = 0; c < columns; c++) sums[to * columns + c]! += weight * along[first + c]!;
    }
  }
  return sums;
}

/**
 * Values known on some nodes only, smoothed by a kernel and carried on a little over the edge of what is known. A plain weighted mean leans
 * inward at an edge; what it misses is smoothed as well and added, which leaves a slope as it is (Tukey's twicing, 1977).
 * NaN where the kernel reaches hardly any node that is known.
 */
export function smoothed(
  values: Float64Array,
  nodes: Int32Array,
  weights: Float64Array,
  columns: number,
  kernel: Kernel,
): Float64Array {
  const mean = spread(values, columns, kernel);
  const missed = new Float64Array(values.length);
  for (const i of nodes) missed[i] = values[i]! - mean[i]! / weights[i]!;
  const more = spread(missed, columns, kernel);
  for (let i = 0; i < mean.length; i++) {
    const weight = weights[i]!;
    mean[i] = weight > LEAST ? (mean[i]! + more[i]!) / weight : NaN;
  }
  return mean;
}

/** A node with less of the kernel's weight than this on known nodes is not known. */
const LEAST = 0.02;
