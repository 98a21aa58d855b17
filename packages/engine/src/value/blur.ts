/** One grid of samples at (u0 + i step, v0 + j step). */
export interface Grid {
  readonly u0: number;
  readonly v0: number;
  readonly stepM: number;
  readonly columns: number;
  readonly rows: number;
}

/** A rectangle of the base grid's cells, ends included: what has changed. */
export interface Patch {
  readonly c0: number;
  readonly c1: number;
  readonly r0: number;
  readonly r1: number;
}

export interface Taps {
  /** Weights for offsets first, first + 1, … from twice (or once) the output's index; in fours, noughts at the end. */
  readonly weights: Float64Array;
  readonly first: number;
  readonly halves: boolean;
}

/**
 * Normal weights at whole offsets, or at half offsets when the output grid is half as fine (its samples lie midway between two inputs).
 * Rescaled so that the discrete variance is exact after the cut-off.
 */
export function tapsFor(variance: number, halves: boolean): Taps {
  const sd = Math.sqrt(Math.max(variance, 1e-9));
  const reach = Math.max(1, Math.ceil(3.3 * sd));
  const first = halves ? 1 - reach : -reach;
  const n = 2 * reach + (halves ? 0 : 1);
  const offset = (k: number): number => first + k - (halves ? 0.5 : 0);
  let at = variance;
  let weights = new Float64Array(n);
  for (let pass = 0; pass < 40; pass++) {
    let sum = 0;
    let second = 0;
    for (let k = 0; k < n; k++) {
      const w = Math.exp((-0.5 * offset(k) ** 2) / at);
      weights[k] = w;
      sum += w;
      second += w * offset(k) ** 2;
    }
    weights = weights.map((w) => w / sum);
    const got = second / sum;
    if (Math.abs(got - variance) < 1e-9 || at > 50 * variance + 50) break;
    at = Math.max(0.02, at + (variance - got));
  }
  const padded = new Float64Array(4 * Math.ceil(n / 4));
  padded.set(weights);
  return { weights: padded, first, halves };
}

/** Separable blurring of patches of a grid on to another of the same or twice the step. Holds room to work in, for one base grid. */
export class Blur {
  /** Rows blurred across, in the columns of the output. */
  private readonly across: readonly Float64Array[];
  private readonly line: Float64Array;
  private readonly sum: Float64Array;

  constructor(base: Grid) {
    this.across = Array.from({ length: base.rows }, () => new Float64Array(base.columns));
    this.line = new Float64Array(base.columns + 128);
    this.sum = new Float64Array(base.columns);
  }

  /** Makes the outputs of `dirty` again; places beyond the input's edge are as at its edge. */
  apply(from: Float32Array, a: Grid, to: Float32Array, b: Grid, t: Taps, dirty: Patch): void {
    const scale = t.halves ? 2 : 1;
    const firstRow = Math.max(0, scale * dirty.r0 + t.first);
    const lastRow = Math.min(a.rows - 1, scale * dirty.r1 + t.first + t.weights.length - 1);
    for (let r = firstRow; r <= lastRow; r++) this.blurRow(from, a, t, dirty, r);
    for (let r = dirty.r0; r <= dirty.r1; r++) this.blurColumns(a, to, b, t, dirty, r);
  }

  private blurRow(from: Float32Array, a: Grid, t: Taps, dirty: Patch, r: number): void {
    const scale = t.halves ? 2 : 1;
    const { weights } = t;
    const { line } = this;
    const width = dirty.c1 - dirty.c0 + 1;
    const start = scale * dirty.c0 + t.first;
    const span = scale * (width - 1) + weights.length;
    const row = r * a.columns;
    const last = a.columns - 1;
    for (let i = 0; i < span; i++) {
      const c = start + i;
      line[i] = from[row + (c < 0 ? 0 : c > last ? last : c)]!;
    }
    const out = this.across[r]!.subarray(dirty.c0, dirty.c1 + 1);
    out.fill(0);
    let k = 0;
    for (; k + 8 <= weights.length; k += 8) addEight(out, line, scale, weights, k);
    if (k < weights.length) addFour(out, line, scale, weights, k);
  }

  /** One output row, down the columns of `across`. */
  private blurColumns(a: Grid, to: Float32Array, b: Grid, t: Taps, dirty: Patch, r: number): void {
    const { weights, first } = t;
    const { across, sum } = this;
    const top = (t.halves ? 2 : 1) * r + first;
    const { c0, c1 } = dirty;
    sum.fill(0, c0, c1 + 1);
    for (let k = 0; k < weights.length; k += 4) {
      const r0 = across[Math.min(a.rows - 1, Math.max(0, top + k))]!;
      const r1 = across[Math.min(a.rows - 1, Math.max(0, top + k + 1))]!;
      const r2 = across[Math.min(a.rows - 1, Math.max(0, top + k + 2))]!;
      const r3 = across[Math.min(a.rows - 1, Math.max(0, top + k + 3))]!;
      const w0 = weights[k]!;
      const w1 = weights[k + 1]!;
      const w2 = weights[k + 2]!;
      const w3 = weights[k + 3]!;
      for (let c = c0; c <= c1; c++) sum[c]! += w0 * r0[c]! + w1 * r1[c]! + w2 * r2[c]! + w3 * r3[c]!;
    }
    const out = r * b.columns;
    for (let c = c0; c <= c1; c++) to[out + c] = sum[c]!;
  }
}

/** Eight taps from the k-th on, along a line whose places lie `scale` times as close as the outputs. */
function addEight(out: Float64Array, line: Float64Array, scale: number, w: Float64Array, k: number): void {
  const w0 = w[k]!;
  const w1 = w[k + 1]!;
  const w2 = w[k + 2]!;
  const w3 = w[k + 3]!;
  const w4 = w[k + 4]!;
  const w5 = w[k + 5]!;
  const w6 = w[k + 6]!;
  const w7 = w[k + 7]!;
  for (let c = 0, i = k; c < out.length; c++, i += scale) {
    out[c]! +=
      w0 * line[i]! +
      w1 * line[i + 1]! +
      w2 * line[i + 2]! +
      w3 * line[i + 3]! +
      (w4 * line[i + 4]! + w5 * line[i + 5]! + w6 * line[i + 6]! + w7 * line[i + 7]!);
  }
}

function addFour(out: Float64Array, line: Float64Array, scale: number, w: Float64Array, k: number): void {
  const w0 = w[k]!;
  const w1 = w[k + 1]!;
  const w2 = w[k + 2]!;
  const w3 = w[k + 3]!;
  for (let c = 0, i = k; c < out.length; c++, i += scale) {
    out[c]! += w0 * line[i]! + w1 * line[i + 1]! + w2 * line[i + 2]! + w3 * line[i + 3]!;
  }
}

/** The outputs whose taps touch the dirty inputs. */
export function reached(d: Patch, t: Taps, next: Grid): Patch {
  const scale = t.halves ? 2 : 1;
  const last = t.first + t.weights.length - 1;
  const low = (i: number): number => Math.floor((i - last) / scale);
  const high = (i: number): number => Math.ceil((i - t.first) / scale);
  const clamp = (i: number, n: number): number => Math.min(n - 1, Math.max(0, i));
  return {
    c0: clamp(low(d.c0), next.columns),
    c1: clamp(high(d.c1), next.columns),
    r0: clamp(low(d.r0), next.rows),
    r1: clamp(high(d.r1), next.rows),
  };
}
