import { boxOf, boxesMeet, distanceToEdgeM, distanceToLineM, insidePolygon, segmentsMeet } from '@leeway/engine';
import type { Frame, PlanePoint, Polygon } from '@leeway/engine';
import { boxesNear } from './geoBox.ts';
import type { GeoBox } from './geoBox.ts';
import type { Piece } from './piece.ts';
import { planePolygon } from './whereNear.ts';

/** Everything that comes within this of the hole line belongs to the hole; what does is kept whole. */
const REACH_M = 150;

/** A piece in the plane of a hole: the shapes of it that come near the hole. */
export interface NearPiece {
  readonly piece: Piece;
  readonly polygons: readonly Polygon[];
  readonly lines: readonly (readonly PlanePoint[])[];
  readonly point?: PlanePoint;
}

/** The pieces with anything within reach of a hole line, in its plane. */
export function piecesNear(
  pieces: readonly Piece[],
  box: GeoBox,
  line: readonly PlanePoint[],
  frame: Frame,
): NearPiece[] {
  return pieces.flatMap((piece): NearPiece[] => {
    if (!boxesNear(piece.box, box, REACH_M)) return [];
    const { shape } = piece;
    if (shape.kind === 'point') {
      const point = frame.toPlane(shape.at);
      return distanceToLineM(point, line) <= REACH_M ? [{ piece, polygons: [], lines: [], point }] : [];
    }
    if (shape.kind === 'line') {
      const points = shape.points.map(frame.toPlane);
      return linesWithin(points, line) ? [{ piece, polygons: [], lines: [points] }] : [];
    }
    const polygons = shape.polygons.map((p) => planePolygon(p, frame.toPlane)).filter((p) => polygonWithin(p, line));
    return polygons.length > 0 ? [{ piece, polygons, lines: [] }] : [];
  });
}

/** Does a polygon come within reach of a line? */
function polygonWithin(polygon: Polygon, line: readonly PlanePoint[]): boolean {
  if (!boxesMeet(boxOf(polygon.outer), boxOf(line), REACH_M)) return false;
  return (
    line.some((p) => insidePolygon(p, polygon) || distanceToEdgeM(p, polygon) <= REACH_M) ||
    [polygon.outer, ...polygon.inner].some((ring) => linesWithin([...ring, ...ring.slice(0, 1)], line))
  );
}

/** Do two open lines come within reach of each other? */
function linesWithin(a: readonly PlanePoint[], b: readonly PlanePoint[]): boolean {
  if (!boxesMeet(boxOf(a), boxOf(b), REACH_M)) return false;
  if (a.some((p) => distanceToLineM(p, b) <= REACH_M) || b.some((p) => distanceToLineM(p, a) <= REACH_M)) return true;
  return a.some((p, i) => {
    const prev = a[i - 1];
    return prev !== undefined && b.some((q, j) => segmentsMeet(prev, p, b[j - 1] ?? q, q));
  });
}
