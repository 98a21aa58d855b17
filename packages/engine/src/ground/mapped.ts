import { boxOf, insidePolygon } from '../geometry/polygon.ts';
import type { Box, Polygon } from '../geometry/polygon.ts';
import { distanceToSegmentM } from '../geometry/segment.ts';
import type { PlanePoint } from '../quantity/points.ts';
import { YARD_M } from '../quantity/units.ts';
import type { HoleGround } from './hole.ts';

/** Ground farther than this from every mapped area of the hole and from its line is unmapped: 40 yd. */
export const MAPPED_WITHIN_M = 40 * YARD_M;

type Segment = readonly [PlanePoint, PlanePoint];

/** Distances to what is mapped, up to 40 yd. */
export interface MappedIndex {
  /** Distance in metres to the nearest mapped area (nought inside one) or to the hole line; infinite beyond 40 yd. */
  distanceM(p: PlanePoint): number;
  isMapped(p: PlanePoint): boolean;
}

/**
 * An index for asking many points: edges and the hole line are listed in squares of 40 yd, so that a point looks at its own square and
 * the eight round it. A raster of 150,000 cells over a full hole takes well under a second.
 */
export function mappedIndex(ground: Pick<HoleGround, 'areas' | 'line'>): MappedIndex {
  const squares = new Map<number, Map<number, Segment[]>>();
  const list = (a: PlanePoint, b: PlanePoint): void => {
    for (const [column, row] of squaresAlong(a, b)) {
      const rows = squares.get(column) ?? new Map<number, Segment[]>();
      squares.set(column, rows);
      const segments = rows.get(row);
      if (segments) segments.push([a, b]);
      else rows.set(row, [[a, b]]);
    }
  };
  for (const [i, p] of ground.line.entries()) list(ground.line[i - 1] ?? p, p);
  const filled: { readonly polygon: Polygon; readonly box: Box }[] = [];
  for (const { polygon } of ground.areas) {
    filled.push({ polygon, box: boxOf(polygon.outer) });
    for (const ring of [polygon.outer, ...polygon.inner])
      for (const [i, p] of ring.entries()) list(ring[i - 1] ?? ring[ring.length - 1] ?? p, p);
  }

  const inside = (p: PlanePoint): boolean =>
    filled.some(
      ({ polygon, box }) =>
        p.eastM >= box.westM &&
        p.eastM <= box.eastM &&
        p.northM >= box.southM &&
        p.northM <= box.northM &&
        insidePolygon(p, polygon),
    );

  const near = (p: PlanePoint, enoughM: number): number => {
    const [column, row] = [square(p.eastM), square(p.northM)];
    let nearestM = Infinity;
    for (let c = column - 1; c <= column + 1; c++) {
      const rows = squares.get(c);
      if (!rows) continue;
      for (let r = row - 1; r <= row + 1; r++) {
        for (const [a, b] of rows.get(r) ?? []) {
          nearestM = Math.min(nearestM, distanceToSegmentM(p, a, b));
          if (nearestM <= enoughM) return nearestM;
        }
      }
    }
    return nearestM <= MAPPED_WITHIN_M ? nearestM : Infinity;
  };

  return {
    distanceM: (p) => (inside(p) ? 0 : near(p, 0)),
    isMapped: (p) => near(p, MAPPED_WITHIN_M) < Infinity || inside(p),
  };
}

const square = (metres: number): number => Math.floor(metres / MAPPED_WITHIN_M);

/** The squares that a segment passes through, column by column, with those its ends touch. */
function* squaresAlong(a: PlanePoint, b: PlanePoint): Generator<readonly [number, number]> {
  const [west, east] = a.eastM <= b.eastM ? [a, b] : [b, a];
  const spanM = east.eastM - west.eastM;
  for (let column = square(west.eastM); column <= square(east.eastM); column++) {
    const from = Math.max(west.eastM, column * MAPPED_WITHIN_M);
    const to = Math.min(east.eastM, (column + 1) * MAPPED_WITHIN_M);
    const northAt = (eastM: number): number =>
      spanM === 0 ? west.northM : west.northM + ((east.northM - west.northM) * (eastM - west.eastM)) / spanM;
    const [n0, n1] = spanM === 0 ? [west.northM, east.northM] : [northAt(from), northAt(to)];
    for (let row = square(Math.min(n0, n1)); row <= square(Math.max(n0, n1)); row++) yield [column, row];
  }
}

/** Is one point within 40 yd of a mapped area of the hole or of its line? For many points take `mappedIndex`. */
export const isMapped = (ground: Pick<HoleGround, 'areas' | 'line'>, p: PlanePoint): boolean =>
  mappedIndex(ground).isMapped(p);
