import type { PlanePoint } from '@leeway/engine';
import type { Sheet } from '../sheet.ts';

/** A raster of expected strokes laid over a sheet, its rows and columns along the paper's sides. */
export interface Raster {
  readonly columns: number;
  readonly rows: number;
  readonly values: Float64Array;
  /** Paper place of the middle of the first cell, and the step between cells, px. */
  readonly left: number;
  readonly top: number;
  readonly stepPx: number;
}

/** Cells beyond the sheet's edge, so that no line ends short of it. */
const BEYOND = 3;
/** Standard deviation of the smoothing. Two standard deviations each side hold nearly all of its weight: 2 m. */
const SMOOTH_M = 1;
const STEP_M = { shot: 1, hole: 2 } as const;

/**
 * Expected strokes on a raster of 1 m (a shot) or 2 m (a hole), smoothed by a normal kernel among places of one lie, as `lieAt` names it: strokes jump
 * where the lie changes, and smoothing across would draw a slope that is not there. Where `lieAt` is undefined nothing is drawn, and nothing there
 * takes part, so that the penalty of water does not leak on to its bank; such cells get what their neighbours would have, and NaN farther in.
 */
export function rasterOf(
  sheet: Sheet,
  strokesAt: (p: PlanePoint) => number,
  lieAt: (p: PlanePoint) => string | undefined,
): Raster {
  const stepM = STEP_M[sheet.kind];
  const stepPx = stepM * sheet.pxPerM;
  const { inner } = sheet;
  const [left, top] = [inner.left - BEYOND * stepPx, inner.top - BEYOND * stepPx];
  const columns = Math.ceil((inner.right - inner.left) / stepPx) + 2 * BEYOND + 1;
  const rows = Math.ceil((inner.bottom - inner.top) / stepPx) + 2 * BEYOND + 1;
  const strokes = new Float64Array(columns * rows);
  const lies: (string | undefined)[] = [];
  for (let i = 0; i < strokes.length; i++) {
    const p = sheet.toPlane({ x: left + (i % columns) * stepPx, y: top + Math.floor(i / columns) * stepPx });
    const lie = lieAt(p);
    const value = lie === undefined ? Number.NaN : strokesAt(p);
    strokes[i] = value;
    lies.push(Number.isFinite(value) ? lie : undefined);
  }
  const values = smoothed(strokes, lies, columns, SMOOTH_M / stepM);
  return { columns, rows, values, left, top, stepPx };
}

/** Each lie smoothed by itself; cells of none get the sum over all. */
function smoothed(
  strokes: Float64Array,
  lies: readonly (string | undefined)[],
  columns: number,
  sdCells: number,
): Float64Array {
  const values = new Float64Array(strokes.length).fill(Number.NaN);
  const [allSums, allWeights] = [new Float64Array(strokes.length), new Float64Array(strokes.length)];
  for (const lie of new Set(lies)) {
    if (lie === undefined) continue;
    const sums = spread(
      strokes.map((v, i) => (lies[i] === lie ? v : 0)),
      columns,
      sdCells,
    );
    const weights = spread(
      strokes.map((_, i) => (lies[i] === lie ? 1 : 0)),
      columns,
      sdCells,
    );
    for (let i = 0; i < values.length; i++) {
      if (lies[i] === lie) values[i] = sums[i]! / weights[i]!;
      allSums[i]! += sums[i]!;
      allWeights[i]! += weights[i]!;
    }
  }
  return values.map((v, i) => (lies[i] === undefined && allWeights[i]! > LEAST ? allSums[i]! / allWeights[i]! : v));
}

/** Less weight than this from known cells is none. */
const LEAST = 1e-6;

/** Sums under a normal kernel, first along the rows and then along the columns. */
function spread(cells: Float64Array, columns: number, sdCells: number): Float64Array {
  const reach = Math.max(2, Math.ceil(3 * sdCells));
  const kernel = Array.from({ length: 2 * reach + 1 }, (_, i) => Math.exp(-0.5 * ((i - reach) / sdCells) ** 2));
  const pass = (from: Float64Array, stride: number, length: number): Float64Array => {
    const sums = new Float64Array(from.length);
    for (let i = 0; i < sums.length; i++) {
      const at = Math.floor(i / stride) % length;
      for (let k = Math.max(-reach, -at); k <= Math.min(reach, length - 1 - at); k++)
        sums[i]! += kernel[k + reach]! * from[i + k * stride]!;
    }
    return sums;
  };
  return pass(pass(cells, 1, columns), columns, cells.length / columns);
}
