import type { BallState, PlanePoint } from '@leeway/engine';
import { YARD_M } from '@leeway/engine';
import type { Painted } from '../ground/painted.ts';
import type { Stroke, Xy } from '../marks.ts';
import { inRect } from '../plane/quad.ts';
import type { Sheet } from '../sheet.ts';
import { type Contour, contoursOf } from './contours.ts';
import { rasterOf } from './field.ts';

/** Lines end this far from the bounds. */
const CLEAR_OF_BOUNDS_M = 3.4;
/**
 * A line is broken where the strokes on it are farther than this from its figure: along the edge of a lie, where they jump. The edge itself is drawn
 * there.
 */
const FARTHEST_OFF = 0.03;
/** Lines each 0.05 are drawn above this scale only, px a yard. */
const HAIRS_FROM_PX = 4;

/** The contours of a sheet, cut where none may be drawn: on water and sand, by the bounds, under the blocks of the frame, and where they would not be true. */
export function contoursOn(
  sheet: Sheet,
  painted: Painted,
  hides: (q: Xy) => boolean,
  strokesAtRest: (p: PlanePoint, from: BallState) => number,
  from: BallState,
): Contour[] {
  const isDrawn = (p: PlanePoint): boolean => {
    const surface = painted.surfaceAt(p);
    return surface !== 'penalty' && surface !== 'out' && surface !== 'bunker' && surface !== 'unmapped';
  };
  const keep = (q: Xy, strokes: number): boolean => {
    if (!inRect(q, sheet.inner) || hides(q)) return false;
    const p = sheet.toPlane(q);
    return (
      isDrawn(p) &&
      Math.abs(strokesAtRest(p, from) - strokes) <= FARTHEST_OFF &&
      painted.toEdgeM(p, 'out') >= CLEAR_OF_BOUNDS_M
    );
  };
  const lieAt = (p: PlanePoint): string | undefined => (isDrawn(p) ? painted.surfaceAt(p) : undefined);
  const raster = rasterOf(sheet, (p) => strokesAtRest(p, from), lieAt);
  return contoursOf(raster, keep, sheet.pxPerM * YARD_M > HAIRS_FROM_PX);
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
