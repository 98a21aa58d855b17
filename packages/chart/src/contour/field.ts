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
 * Expected strokes on a raster of 1 m (a shot) or 2 m (a hole), smoothed by a normal kernel. Places where no line is drawn take no part in the
 * smoothing, so that the penalty of water does not leak on to its bank; they get what their neighbours would have, and NaN farther in.
 */
export function rasterOf(
  sheet: Sheet,
  strokesAt: (p: PlanePoint) => number,
  isDrawn: (p: PlanePoint) => boolean,
): Raster {
  const stepM = STEP_M[sheet.kind];
  const stepPx = stepM * sheet.pxPerM;
  const { inner } = sheet;
  const [left, top] = [inner.left - BEYOND * stepPx, inner.top - BEYOND * stepPx];
  const columns = Math.ceil((inner.right - inner.left) / stepPx) + 2 * BEYOND + 1;
  const rows = Math.ceil((inner.bottom - inner.top) / stepPx) + 2 * BEYOND + 1;
  const values = new Float64Array(columns * rows);
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const p = sheet.toPlane({ x: left + column * stepPx, y: top + row * stepPx });
      const strokes = isDrawn(p) ? strokesAt(p) : Number.NaN;
      values[row * columns + column] = Number.isFinite(strokes) ? strokes : Number.NaN;
    }
  }
  const smooth = smoothed(values, columns, rows, SMOOTH_M / stepM);
  return { columns, rows, values: smooth, left, top, stepPx };
}

/** Normal smoothing, first along the rows and then along the columns, of what is known; a cell out of reach of it stays NaN. */
function smoothed(values: Float64Array, columns: number, rows: number, sdCells: number): Float64Array {
  const reach = Math.max(2, Math.ceil(3 * sdCells));
  const kernel = Array.from({ length: 2 * reach + 1 }, (_, i) => Math.exp(-0.5 * ((i - reach) / sdCells) ** 2));
  const pass = (
    sums: Float64Array,
    weights: Float64Array,
    stride: number,
    length: number,
  ): [Float64Array, Float64Array] => {
    const [nextSums, nextWeights] = [new Float64Array(sums.length), new Float64Array(sums.length)];
    for (let i = 0; i < sums.length; i++) {
      const at = Math.floor(i / stride) % length;
      for (let k = Math.max(-reach, -at); k <= Math.min(reach, length - 1 - at); k++) {
        const w = kernel[k + reach]!;
        nextSums[i]! += w * sums[i + k * stride]!;
        nextWeights[i]! += w * weights[i + k * stride]!;
      }
    }
    return [nextSums, nextWeights];
  };
  const across = pass(
    values.map((v) => (Number.isNaN(v) ? 0 : v)),
    values.map((v) => (Number.isNaN(v) ? 0 : 1)),
    1,
    columns,
  );
  const [sums, weights] = pass(across[0], across[1], columns, rows);
  return sums.map((sum, i) => (weights[i]! > 1e-6 ? sum / weights[i]! : Number.NaN));
}
