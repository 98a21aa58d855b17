import type { Line, Xy } from '../marks.ts';
import type { Grid } from './lieGrid.ts';

/** The lines along which a grid's values have one level. */
export interface Level {
  readonly level: number;
  /** Closed ones repeat their first place at the end. */
  readonly lines: readonly Line[];
}

/**
 * Iso-lines of values on a grid at rising levels, by marching squares with linear crossings (Lorensen and Cline 1987, in the plane).
 * A square with a corner that is NaN has no line, so lines end at the edge of what is known.
 */
export function march(values: Float64Array, grid: Grid, levels: readonly number[]): Level[] {
  const { columns, rows } = grid;
  const pairs: number[][] = levels.map(() => []);
  for (let row = 0; row + 1 < rows; row++) {
    for (let i = row * columns; i < (row + 1) * columns - 1; i++) {
      const a = values[i]!;
      const b = values[i + 1]!;
      const c = values[i + columns + 1]!;
      const d = values[i + columns]!;
      const high = Math.max(a, b, c, d);
      if (Number.isNaN(high)) continue;
      const low = Math.min(a, b, c, d);
      for (let k = firstAbove(levels, low); k < levels.length && levels[k]! <= high; k++)
        cross(levels[k]!, a, b, c, d, i, columns, pairs[k]!);
    }
  }
  const next = new Int32Array(2 * columns * rows).fill(-1);
  const entered = new Uint8Array(next.length);
  return levels.map((level, k) => {
    const lines = chained(pairs[k]!, next, entered).map((sides) => sides.map((s) => crossing(s, level, values, grid)));
    return { level, lines };
  });
}

/** Place of the first of some rising levels that is above a value. */
function firstAbove(levels: readonly number[], value: number): number {
  let [from, to] = [0, levels.length];
  while (from < to) {
    const middle = (from + to) >> 1;
    if (levels[middle]! > value) to = middle;
    else from = middle + 1;
  }
  return from;
}

/**
 * The pieces of one level in one square, as pairs of sides: side 2i runs from node i to the next of its row, side 2i + 1 to that below it.
 * Corners a, b, c, d go round from the upper left. Where two opposite ones are high, their mean says which two belong together.
 */
function cross(
  level: number,
  a: number,
  b: number,
  c: number,
  d: number,
  i: number,
  columns: number,
  pairs: number[],
): void {
  const kind = (a >= level ? 1 : 0) | (b >= level ? 2 : 0) | (c >= level ? 4 : 0) | (d >= level ? 8 : 0);
  const joined = (kind === 5 || kind === 10) && a + b + c + d >= 4 * level;
  const sides = [2 * i, 2 * (i + 1) + 1, 2 * (i + columns), 2 * i + 1];
  for (const side of PIECES[joined ? (kind === 5 ? 16 : 17) : kind]!) pairs.push(sides[side]!);
}

/** Sides that a line enters and leaves by, for each set of high corners (1, 2, 4, 8 for a, b, c, d); a pair of opposite ones apart, and last joined. */
const PIECES: readonly (readonly number[])[] = (() => {
  const [top, right, bottom, left] = [0, 1, 2, 3];
  return [
    [],
    [top, left],
    [right, top],
    [right, left],
    [bottom, right],
    [top, left, bottom, right],
    [bottom, top],
    [bottom, left],
    [left, bottom],
    [top, bottom],
    [right, top, left, bottom],
    [right, bottom],
    [left, right],
    [top, right],
    [left, top],
    [],
    [top, right, bottom, left],
    [left, top, right, bottom],
  ];
})();

/** Pairs of sides joined to chains. `next` (all −1) and `entered` (all 0) are scratch, and are left as they were. */
function chained(pairs: readonly number[], next: Int32Array, entered: Uint8Array): number[][] {
  for (let i = 0; i < pairs.length; i += 2) {
    next[pairs[i]!] = pairs[i + 1]!;
    entered[pairs[i + 1]!] = 1;
  }
  const chains: number[][] = [];
  const follow = (start: number): void => {
    const chain = [start];
    for (let at = start, to = next[at]!; to >= 0; at = to, to = next[at]!) {
      next[at] = -1;
      chain.push(to);
    }
    chains.push(chain);
  };
  for (let i = 0; i < pairs.length; i += 2) if (entered[pairs[i]!] === 0) follow(pairs[i]!);
  for (let i = 0; i < pairs.length; i += 2) if (next[pairs[i]!]! >= 0) follow(pairs[i]!);
  for (let i = 1; i < pairs.length; i += 2) entered[pairs[i]!] = 0;
  return chains;
}

/** Where a side has a level. */
function crossing(side: number, level: number, values: Float64Array, grid: Grid): Xy {
  const { columns, left, top, stepPx } = grid;
  const i = side >> 1;
  const down = side % 2 === 1;
  const [a, b] = [values[i]!, values[down ? i + columns : i + 1]!];
  const t = (level - a) / (b - a);
  const x = left + (i % columns) * stepPx;
  const y = top + Math.floor(i / columns) * stepPx;
  return down ? { x, y: y + t * stepPx } : { x: x + t * stepPx, y };
}
