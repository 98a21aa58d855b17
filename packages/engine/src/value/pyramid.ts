import { bytesOf, type Room } from '../kernel/room.ts';
import { type Blur, reached, tapsFor, type Grid, type Patch, type Taps } from './blur.ts';

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
  /** For each level the patches that have changed below it since it was last blurred. */
  private readonly pending: Patch[][];
  private readonly blur: Blur;

  /** The blur may serve other pyramids in the same room too. */
  constructor(shape: PyramidShape, room: Room, blur: Blur) {
    this.shape = shape;
    this.cells = room.floats(shape.base.columns * shape.base.rows);
    this.levels = shape.grids.map((g) => room.floats(g.columns * g.rows));
    this.pending = shape.grids.map(() => []);
    this.blur = blur;
  }

  /** Notes that a patch of base cells has changed; without one, all of them. */
  changed(patch?: Patch): void {
    const { columns, rows } = this.shape.base;
    note(this.pending[0]!, patch ?? { c0: 0, c1: columns - 1, r0: 0, r1: rows - 1 });
  }

  /** Blurs again, up to a level, all that the changes noted since can have changed. */
  refresh(last = this.levels.length - 1): void {
    const { base, grids, taps } = this.shape;
    for (let k = 0; k <= last; k++) {
      const t = taps[k]!;
      const to = grids[k]!;
      const dirty: Patch[] = [];
      for (const changed of this.pending[k]!) note(dirty, reached(changed, t, to));
      const from = k === 0 ? this.cells : this.levels[k - 1]!;
      for (const patch of dirty) {
        this.blur.apply(from, k === 0 ? base : grids[k - 1]!, this.levels[k]!, to, t, patch);
        if (k + 1 < grids.length) note(this.pending[k + 1]!, patch);
      }
      this.pending[k] = [];
    }
  }
}

/** Bytes of a room that a pyramid takes. */
export const pyramidBytes = ({ base, grids }: PyramidShape): number =>
  [base, ...grids].reduce((sum, g) => sum + bytesOf(g.columns * g.rows), 0);

const areaOf = (p: Patch): number => (p.c1 - p.c0 + 1) * (p.r1 - p.r0 + 1);

/** Adds a patch to a list, drawn together with every one that is no dearer to do along with it. */
export function note(list: Patch[], patch: Patch): void {
  let more = patch;
  for (let i = list.length - 1; i >= 0; i--) {
    const other = list[i]!;
    const both = {
      c0: Math.min(more.c0, other.c0),
      c1: Math.max(more.c1, other.c1),
      r0: Math.min(more.r0, other.r0),
      r1: Math.max(more.r1, other.r1),
    };
    if (areaOf(both) > areaOf(more) + areaOf(other)) continue;
    list.splice(i, 1);
    more = both;
    i = list.length;
  }
  list.push(more);
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
