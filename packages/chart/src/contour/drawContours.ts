import type { BallState, PlanePoint } from '@leeway/engine';
import { YARD_M } from '@leeway/engine';
import type { Cover } from '../ground/cover.ts';
import type { Stroke, Xy } from '../marks.ts';
import { inRect } from '../plane/quad.ts';
import type { Sheet } from '../sheet.ts';
import { bankReachPx } from './bankLines.ts';
import { type Contour, contoursOf } from './contours.ts';
import { type ContourGrid, isWhollyOn, rimPx } from './lieGrid.ts';

/** Lines end this far from the bounds. */
const CLEAR_OF_BOUNDS_M = 3.4;
/** Lines each 0.05 are drawn above this scale only, px a yard. */
const HAIRS_FROM_PX = 4;

/** What the contours of a sheet are drawn on. */
export interface ContourGround {
  readonly sheet: Sheet;
  readonly cover: Cover;
  readonly grid: ContourGrid;
}

/** The contours of a sheet, cut where none may be drawn: on water and sand, by the bounds, under the lines of a bank, and under the blocks of the frame. */
export function contoursOn(
  { sheet, cover, grid }: ContourGround,
  hides: (q: Xy) => boolean,
  strokesAtRest: (p: PlanePoint, from: BallState) => number,
  from: BallState,
): Contour[] {
  const bank = bankReachPx(sheet) - 2;
  const rim = rimPx(sheet);
  const keep = (q: Xy, lie: string): boolean =>
    isWhollyOn(cover, q, lie, rim) &&
    inRect(q, sheet.inner) &&
    cover.toM(q, 'out') >= CLEAR_OF_BOUNDS_M &&
    !hides(q) &&
    cover.toM(q, 'penalty') * sheet.pxPerM >= bank &&
    cover.isCharted(q);
  const hairs = !sheet.phone && sheet.pxPerM * YARD_M > HAIRS_FROM_PX;
  return contoursOf(grid, (q) => strokesAtRest(sheet.toPlane(q), from), keep, hairs);
}

const CONTOUR_PX: { readonly [W in Contour['weight']]: readonly [widthPx: number, opacity: number] } = {
  hair: [0.55, 0.62],
  plain: [0.95, 1],
  heavy: [1.9, 1],
};

/** One mark a level, lightest first. */
export function contourStrokes(lines: readonly Contour[]): Stroke[] {
  const levels = Map.groupBy(lines, (c) => c.strokes);
  const found = [...levels].map(([strokes, pieces]): Stroke => {
    const [widthPx, opacity] = CONTOUR_PX[pieces[0]?.weight ?? 'plain'];
    const drawn = pieces.map((c) => c.line);
    return {
      kind: 'stroke',
      layer: 'contours',
      role: 'contour',
      lines: drawn,
      closed: false,
      widthPx,
      opacity,
      strokes,
    };
  });
  return found.toSorted((a, b) => a.widthPx - b.widthPx);
}
