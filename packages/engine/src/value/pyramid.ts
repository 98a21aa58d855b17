/**
 * A quantity on the ground, blurred by round normal kernels of rising width, each width on a grid as coarse as it bears.
 * The mean of the quantity under a normal cloud is then one bilinear read at the cloud's centre.
 */

/** The widths (standard deviations, metres) and the grid step each is kept on; a step is at most half the width. */
export interface Width {
  readonly sdM: number;
  readonly stepM: number;
}
/** Widths near the flag, on cells of a quarter metre. */
export const NEAR_WIDTHS: readonly Width[] = [
  { sdM: 0.25, stepM: 0.25 },
  { sdM: Math.SQRT1_2 / 2, stepM: 0.25 },
  { sdM: 0.5, stepM: 0.25 },
  { sdM: Math.SQRT1_2, stepM: 0.25 },
  { sdM: 1, stepM: 0.5 },
  { sdM: Math.SQRT2, stepM: 0.5 },
];
/** Widths over the whole hole, on cells of a metre. Its first serves all narrower ones away from the flag. */
export const WIDE_WIDTHS: readonly Width[] = [
  { sdM: Math.SQRT2, stepM: 1 },
  { sdM: 2, stepM: 1 },
  { sdM: 2 * Math.SQRT2, stepM: 1 },
  { sdM: 4, stepM: 1 },
  { sdM: 4 * Math.SQRT2, stepM: 2 },
  { sdM: 8, stepM: 2 },
  { sdM: 8 * Math.SQRT2, stepM: 4 },
  { sdM: 16, stepM: 4 },
];

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

interface Taps {
  /** Weights for offsets first, first + 1, … from twice (or once) the output's index; in fours, noughts at the end. */
  readonly weights: Float64Array;
  readonly first: number;
  readonly halves: boolean;
}

/**
 * Normal weights at whole offsets, or at half offsets when the output grid is half as fine (its samples lie midway between two inputs).
 * Rescaled so that the discrete variance is exact after the cut-off.
 */
function tapsFor(variance: number, halves: boolean): Taps {
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

/** The shape shared by every quantity on one base grid: grids and taps of its widths. */
export interface PyramidShape {
  readonly base: Grid;
  readonly grids: readonly Grid[];
  readonly taps: readonly Taps[];
}

/**
 * `variance` bookkeeping, in square metres: cell averages of the base bring h²/12, a bilinear read g²/6; taps bring the rest.
 */
export function pyramidShape(base: Grid, widths: readonly Width[]): PyramidShape {
  const grids: Grid[] = [];
  const taps: Taps[] = [];
  let held = base.stepM ** 2 / 12;
  let from = base;
  for (const { sdM, stepM } of widths) {
    const halves = stepM > from.stepM;
    const wanted = sdM ** 2 - stepM ** 2 / 6;
    taps.push(tapsFor((wanted - held) / from.stepM ** 2, halves));
    held = wanted;
    from = halves
      ? {
          u0: from.u0 + from.stepM / 2,
          v0: from.v0 + from.stepM / 2,
          stepM,
          columns: Math.max(2, Math.floor(from.columns / 2)),
          rows: Math.max(2, Math.floor(from.rows / 2)),
        }
      : from;
    grids.push(from);
  }
  return { base, grids, taps };
}

/** One quantity: its base cells, which the owner writes, and its blurred levels. */
export class Pyramid {
  readonly shape: PyramidShape;
  readonly cells: Float32Array;
  readonly levels: readonly Float32Array[];
  /** For each level what has changed below it since it was last blurred. */
  private readonly pending: (Patch | undefined)[];
  private readonly across: Float32Array;
  private readonly line: Float32Array;

  constructor(shape: PyramidShape) {
    this.shape = shape;
    this.cells = new Float32Array(shape.base.columns * shape.base.rows);
    this.levels = shape.grids.map((g) => new Float32Array(g.columns * g.rows));
    this.pending = shape.grids.map(() => undefined);
    this.across = new Float32Array(shape.base.columns * shape.base.rows);
    this.line = new Float32Array(shape.base.columns + 128);
  }

  /** Notes that a patch of base cells has changed; without one, all of them. */
  changed(patch?: Patch): void {
    const { columns, rows } = this.shape.base;
    this.pending[0] = joined(this.pending[0], patch ?? { c0: 0, c1: columns - 1, r0: 0, r1: rows - 1 });
  }

  /** Blurs again, up to a level, all that the changes noted since can have changed. */
  refresh(last = this.levels.length - 1): void {
    const { base, grids, taps } = this.shape;
    for (let k = 0; k <= last; k++) {
      const changed = this.pending[k];
      if (changed === undefined) continue;
      const t = taps[k]!;
      const to = grids[k]!;
      const dirty = reached(changed, t, to);
      if (k === 0) this.blur(this.cells, base, this.levels[0]!, to, t, dirty);
      else this.blur(this.levels[k - 1]!, grids[k - 1]!, this.levels[k]!, to, t, dirty);
      this.pending[k] = undefined;
      if (k + 1 < grids.length) this.pending[k + 1] = joined(this.pending[k + 1], dirty);
    }
  }

  private blur(from: Float32Array, a: Grid, to: Float32Array, b: Grid, t: Taps, dirty: Patch): void {
    const scale = t.halves ? 2 : 1;
    const firstRow = Math.max(0, scale * dirty.r0 + t.first);
    const lastRow = Math.min(a.rows - 1, scale * dirty.r1 + t.first + t.weights.length - 1);
    for (let r = firstRow; r <= lastRow; r++) this.blurRow(from, a, b, t, dirty, r);
    for (let r = dirty.r0; r <= dirty.r1; r++) this.blurColumns(a, to, b, t, dirty, r);
  }

  /** One input row across, into `across`. Weights come in fours, padded with noughts. */
  private blurRow(from: Float32Array, a: Grid, b: Grid, t: Taps, dirty: Patch, r: number): void {
    const scale = t.halves ? 2 : 1;
    const { weights } = t;
    const n = weights.length;
    const { line, across } = this;
    const width = dirty.c1 - dirty.c0 + 1;
    const start = scale * dirty.c0 + t.first;
    const span = scale * (width - 1) + n;
    const row = r * a.columns;
    const last = a.columns - 1;
    for (let i = 0; i < span; i++) {
      const c = start + i;
      line[i] = from[row + (c < 0 ? 0 : c > last ? last : c)]!;
    }
    const out = r * b.columns + dirty.c0;
    for (let k = 0; k < n; k += 4) {
      const w0 = weights[k]!;
      const w1 = weights[k + 1]!;
      const w2 = weights[k + 2]!;
      const w3 = weights[k + 3]!;
      if (k === 0) {
        for (let c = 0, i = k; c < width; c++, i += scale) {
          across[out + c] = w0 * line[i]! + w1 * line[i + 1]! + w2 * line[i + 2]! + w3 * line[i + 3]!;
        }
      } else {
        for (let c = 0, i = k; c < width; c++, i += scale) {
          across[out + c]! += w0 * line[i]! + w1 * line[i + 1]! + w2 * line[i + 2]! + w3 * line[i + 3]!;
        }
      }
    }
  }

  /** One output row, down the columns of `across`. */
  private blurColumns(a: Grid, to: Float32Array, b: Grid, t: Taps, dirty: Patch, r: number): void {
    const { weights, first } = t;
    const { across } = this;
    const top = (t.halves ? 2 : 1) * r + first;
    const source = (k: number): number => Math.min(a.rows - 1, Math.max(0, top + k)) * b.columns;
    const c0 = dirty.c0;
    const c1 = dirty.c1;
    const out = r * b.columns;
    for (let k = 0; k < weights.length; k += 4) {
      const r0 = source(k);
      const r1 = source(k + 1);
      const r2 = source(k + 2);
      const r3 = source(k + 3);
      const w0 = weights[k]!;
      const w1 = weights[k + 1]!;
      const w2 = weights[k + 2]!;
      const w3 = weights[k + 3]!;
      if (k === 0) {
        for (let c = c0; c <= c1; c++) {
          to[out + c] = w0 * across[r0 + c]! + w1 * across[r1 + c]! + w2 * across[r2 + c]! + w3 * across[r3 + c]!;
        }
      } else {
        for (let c = c0; c <= c1; c++) {
          to[out + c]! += w0 * across[r0 + c]! + w1 * across[r1 + c]! + w2 * across[r2 + c]! + w3 * across[r3 + c]!;
        }
      }
    }
  }
}

/** The smallest rectangle that holds both. */
export const joined = (a: Patch | undefined, b: Patch): Patch =>
  a === undefined
    ? b
    : {
        c0: Math.min(a.c0, b.c0),
        c1: Math.max(a.c1, b.c1),
        r0: Math.min(a.r0, b.r0),
        r1: Math.max(a.r1, b.r1),
      };

/** The outputs whose taps touch the dirty inputs. */
function reached(d: Patch, t: Taps, next: Grid): Patch {
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

/** Bilinear read of a level; places outside the grid read its nearest edge. */
export function readLevel(level: Float32Array, g: Grid, u: number, v: number): number {
  const x = Math.min(g.columns - 1.000001, Math.max(0, (u - g.u0) / g.stepM));
  const y = Math.min(g.rows - 1.000001, Math.max(0, (v - g.v0) / g.stepM));
  const i = x | 0;
  const j = y | 0;
  const fx = x - i;
  const fy = y - j;
  const at = j * g.columns + i;
  const low = level[at]! + fx * (level[at + 1]! - level[at]!);
  const high = level[at + g.columns]! + fx * (level[at + g.columns + 1]! - level[at + g.columns]!);
  return low + fy * (high - low);
}
