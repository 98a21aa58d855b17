import type { Cover } from '../ground/cover.ts';
import type { Xy } from '../marks.ts';
import type { Sheet } from '../sheet.ts';
import { type Kernel, kernelOf, spread } from './spread.ts';

/** A grid laid over a sheet, its rows and columns along the paper's sides. */
export interface Grid {
  readonly columns: number;
  readonly rows: number;
  /** Paper place of the first node, and the step between nodes, px. */
  readonly left: number;
  readonly top: number;
  readonly stepPx: number;
}

/** The lies that contours are drawn on. Sand is left clean, as water is: its dots and a line do not go together. */
const LIES = ['rough', 'recovery', 'fairway', 'green'] as const;
type DrawnLie = (typeof LIES)[number];

/** One lie's part of a grid: where it is known, and how its values are smoothed and carried on over its edge. */
export interface LieGrid {
  readonly lie: DrawnLie;
  /** Nodes of this lie. */
  readonly nodes: Int32Array;
  /** Per node of the whole grid: the kernel's weight over nodes of this lie; 0 where it reaches none. */
  readonly weights: Float64Array;
}

/** What contours need of a sheet's ground, whatever the strokes are. */
export interface ContourGrid extends Grid {
  readonly lies: readonly LieGrid[];
  readonly kernel: Kernel;
}

/** Nodes beyond the sheet's edge, so that no line ends short of it. */
const BEYOND = 2;
/** The step between nodes: finer on sheets of a larger scale than this, px a metre, as those of most shots are. */
const STEP_M = { fine: 1, coarse: 2 };
const FINE_FROM_PX = 3;
/**
 * A node counts for a lie where all ground so far around is of that lie: strokes may be read from a raster of up to a metre, whose nearest cell
 * lies across an edge. A line is drawn nearer the edge.
 */
const WHOLLY_M = { node: 0.75, line: 0.4 };
/**
 * Standard deviation of the smoothing. The solver's strokes between its nodes carry a saw-tooth of a few hundredths, some metres long, that queries do not have: on
 * the demo's hole 7 nineteen places in twenty are within 0.04 of a query unsmoothed, and within 0.02 with this.
 */
const SMOOTH_M = 2;

/** Which lie a place is drawn as; `undefined` where no contour is drawn. A tee plays as fairway. */
export function drawnLie(cover: Cover, q: Xy): DrawnLie | undefined {
  const surface = cover.surfaceAt(q);
  if (surface === 'tee') return 'fairway';
  return LIES.find((lie) => lie === surface);
}

/** The grid of 1 m or 2 m over a sheet, with its nodes sorted by lie. */
export function contourGrid(sheet: Sheet, cover: Cover): ContourGrid {
  const stepM = sheet.pxPerM > FINE_FROM_PX ? STEP_M.fine : STEP_M.coarse;
  const stepPx = stepM * sheet.pxPerM;
  const { inner } = sheet;
  const [left, top] = [inner.left - BEYOND * stepPx, inner.top - BEYOND * stepPx];
  const columns = Math.ceil((inner.right - inner.left) / stepPx) + 2 * BEYOND + 1;
  const rows = Math.ceil((inner.bottom - inner.top) / stepPx) + 2 * BEYOND + 1;
  const kernel = kernelOf(SMOOTH_M / stepM);
  const found = new Map<DrawnLie, number[]>(LIES.map((lie) => [lie, []]));
  const rim = WHOLLY_M.node * sheet.pxPerM;
  for (let i = 0; i < columns * rows; i++) {
    const q = { x: left + (i % columns) * stepPx, y: top + Math.floor(i / columns) * stepPx };
    const lie = drawnLie(cover, q);
    if (lie !== undefined && isWhollyOn(cover, q, lie, rim)) found.get(lie)?.push(i);
  }
  const lies = [...found].flatMap(([lie, list]): LieGrid[] => {
    if (list.length === 0) return [];
    const nodes = Int32Array.from(list);
    const ones = new Float64Array(columns * rows);
    for (const i of nodes) ones[i] = 1;
    return [{ lie, nodes, weights: spread(ones, columns, kernel) }];
  });
  return { columns, rows, left, top, stepPx, lies, kernel };
}

/** Is all of the ground of a lie round a place, this many px each way? */
export const isWhollyOn = (cover: Cover, { x, y }: Xy, lie: string, rim: number): boolean =>
  drawnLie(cover, { x, y }) === lie &&
  drawnLie(cover, { x: x - rim, y }) === lie &&
  drawnLie(cover, { x: x + rim, y }) === lie &&
  drawnLie(cover, { x, y: y - rim }) === lie &&
  drawnLie(cover, { x, y: y + rim }) === lie;

/** How far from the edge of its lie a line ends. */
export const rimPx = (sheet: Sheet): number => Math.max(1, WHOLLY_M.line * sheet.pxPerM);
