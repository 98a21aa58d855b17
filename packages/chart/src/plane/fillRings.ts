import type { Line } from '../marks.ts';

/** A raster laid over a sheet, a cell a px; cell (0, 0) covers the px whose upper left corner is at (`left`, `top`). */
export interface PxRaster {
  readonly left: number;
  readonly top: number;
  readonly columns: number;
  readonly rows: number;
}

/** Which cell holds a place; one beyond the raster is held by the nearest. */
export function cellOf({ left, top, columns, rows }: PxRaster, x: number, y: number): number {
  const column = Math.min(columns - 1, Math.max(0, Math.floor(x - left)));
  const row = Math.min(rows - 1, Math.max(0, Math.floor(y - top)));
  return row * columns + column;
}

/** Runs of cells whose middles are inside some closed rings taken together, by the even-odd rule: `paint(first, end)`, cells in row order. */
export function fillRings(raster: PxRaster, rings: readonly Line[], paint: (first: number, end: number) => void): void {
  const { left, top, columns, rows } = raster;
  const crossings: number[][] = [];
  for (const ring of rings) {
    let a = ring.at(-1);
    for (const b of ring) {
      if (a !== undefined && a.y !== b.y) cross(a.x - left, a.y - top, b.x - left, b.y - top, rows, crossings);
      a = b;
    }
  }
  crossings.forEach((xs, row) => {
    xs.sort((p, q) => p - q);
    for (let i = 0; i + 1 < xs.length; i += 2) {
      const from = Math.max(0, Math.ceil(xs[i]! - 0.5));
      const to = Math.min(columns, Math.ceil(xs[i + 1]! - 0.5));
      if (to > from) paint(row * columns + from, row * columns + to);
    }
  });
}

/** Where a side crosses the middle line of each row. */
function cross(ax: number, ay: number, bx: number, by: number, rows: number, crossings: number[][]): void {
  const first = Math.max(0, Math.ceil(Math.min(ay, by) - 0.5));
  const last = Math.min(rows - 1, Math.ceil(Math.max(ay, by) - 0.5) - 1);
  const slope = (bx - ax) / (by - ay);
  for (let row = first; row <= last; row++) (crossings[row] ??= []).push(ax + (row + 0.5 - ay) * slope);
}
