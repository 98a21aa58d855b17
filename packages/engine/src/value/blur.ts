import { blurFloats } from '../kernel/blurWork.ts';
import type { Kernel } from '../kernel/kernel.ts';
import { bytesOf, type Room } from '../kernel/room.ts';

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
  /** Weights for offsets first, first + 1, … from twice (or once) the output's index. */
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
  return { weights, first, halves };
}

/** Blurs patches of grids that lie in a room, in a piece of it set aside for that. Serves any number of grids, one at a time. */
export class Blur {
  private readonly kernel: Kernel;
  private readonly work: Float32Array;

  /** Room to work in for base grids of these shapes. */
  constructor(room: Room, bases: readonly Grid[]) {
    this.kernel = room.kernel;
    this.work = room.floats(workFloats(bases));
  }

  static bytes(bases: readonly Grid[]): number {
    return bytesOf(workFloats(bases));
  }

  /** Makes the outputs of `dirty` again; places beyond the input's edge are as at its edge. */
  apply(from: Float32Array, a: Grid, to: Float32Array, b: Grid, t: Taps, dirty: Patch): void {
    const { work } = this;
    work.set(t.weights);
    this.kernel.blur(
      from.byteOffset,
      a.columns,
      a.rows,
      to.byteOffset,
      b.columns,
      t.weights.length,
      t.first,
      t.halves,
      dirty.c0,
      dirty.c1,
      dirty.r0,
      dirty.r1,
      work.byteOffset,
    );
  }
}

const workFloats = (bases: readonly Grid[]): number => Math.max(...bases.map((g) => blurFloats(g.columns, g.rows)));

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
