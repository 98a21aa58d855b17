import type { Fate } from './fate.ts';
import type { Raster } from './raster.ts';

/** The squares of a ground that balls are lifted from ("wet", whatever the reason), at least in part, row by row. */
export interface WetCells {
  readonly u0: number;
  readonly v0: number;
  readonly columns: number;
  readonly rows: number;
  readonly count: number;
  /** Place of each in the mesh, the share of it that is wet, and a wet place in it: the one nearest the middle of what is wet. */
  readonly column: Int32Array;
  readonly row: Int32Array;
  readonly share: Float64Array;
  readonly u: Float64Array;
  readonly v: Float64Array;
}

export function wetCellsOf(raster: Raster, cellM: number, fates: readonly Fate[]): WetCells {
  const lifted = Float64Array.from(fates, (fate) => fate.lifted);
  const per = Math.round(cellM / raster.stepM);
  const columns = Math.ceil(raster.columns / per);
  const rows = Math.ceil(raster.rows / per);
  const n = columns * rows;
  const wet = new Float64Array(n);
  const sumX = new Float64Array(n);
  const sumY = new Float64Array(n);
  eachWet(raster, per, columns, lifted, (cell, x, y, share) => {
    wet[cell]! += share;
    sumX[cell]! += share * x;
    sumY[cell]! += share * y;
  });
  const nearest = new Float64Array(n).fill(Infinity);
  const atX = new Int32Array(n);
  const atY = new Int32Array(n);
  eachWet(raster, per, columns, lifted, (cell, x, y) => {
    const off = (x - sumX[cell]! / wet[cell]!) ** 2 + (y - sumY[cell]! / wet[cell]!) ** 2;
    if (off >= nearest[cell]!) return;
    nearest[cell] = off;
    atX[cell] = x;
    atY[cell] = y;
  });
  const cells = Int32Array.from({ length: n }, (_, cell) => cell).filter((cell) => wet[cell]! > 0);
  return {
    u0: raster.box.u0,
    v0: raster.box.v0,
    columns,
    rows,
    count: cells.length,
    column: cells.map((cell) => cell % columns),
    row: cells.map((cell) => Math.floor(cell / columns)),
    share: Float64Array.from(cells, (cell) => wet[cell]! / (per * per)),
    u: Float64Array.from(cells, (cell) => raster.box.u0 + (atX[cell]! + 0.5) * raster.stepM),
    v: Float64Array.from(cells, (cell) => raster.box.v0 + (atY[cell]! + 0.5) * raster.stepM),
  };
}

/** Every wet cell of the raster, by the square that holds it. */
function eachWet(
  raster: Raster,
  per: number,
  columns: number,
  lifted: Float64Array,
  visit: (cell: number, x: number, y: number, share: number) => void,
): void {
  for (let y = 0, i = 0; y < raster.rows; y++) {
    const row = Math.floor(y / per) * columns;
    for (let x = 0; x < raster.columns; x++, i++) {
      const share = lifted[raster.surface[i]!]!;
      if (share > 0) visit(row + Math.floor(x / per), x, y, share);
    }
  }
}
