import { distanceToPolygonM, frameAt, insidePolygon } from '@leeway/engine';
import type { Frame, GeoPoint, Polygon } from '@leeway/engine';
import type { GeoPolygon } from './feature.ts';
import { boxesNear, geoBox } from './geoBox.ts';
import type { Piece } from './piece.ts';

/** Does a piece's area hold a place? */
export function holds(piece: Piece, at: GeoPoint): boolean {
  if (piece.shape.kind !== 'area' || !boxesNear(piece.box, geoBox([at]), 1)) return false;
  const frame = frameAt(at);
  return piece.shape.polygons.some((p) => insidePolygon({ eastM: 0, northM: 0 }, planePolygon(p, frame.toPlane)));
}

/** A polygon of degrees in a plane. */
export const planePolygon = (p: GeoPolygon, toPlane: Frame['toPlane']): Polygon => ({
  outer: p.outer.map(toPlane),
  inner: p.inner.map((ring) => ring.map(toPlane)),
});

/** Distance from a place to a piece's area or point, if it is no more than `withinM`. */
function distanceWithinM(piece: Piece, at: GeoPoint, withinM: number): number | undefined {
  if (!boxesNear(piece.box, geoBox([at]), withinM)) return undefined;
  const frame = frameAt(at);
  const here = { eastM: 0, northM: 0 };
  const { shape } = piece;
  const distances =
    shape.kind === 'area'
      ? shape.polygons.map((p) => distanceToPolygonM(here, planePolygon(p, frame.toPlane)))
      : shape.kind === 'point'
        ? [Math.hypot(frame.toPlane(shape.at).eastM, frame.toPlane(shape.at).northM)]
        : [];
  const awayM = Math.min(...distances);
  return awayM <= withinM ? awayM : undefined;
}

/** The piece nearest to a place, within a distance; of several that hold it, the first. */
export function nearest(pieces: readonly Piece[], at: GeoPoint, withinM: number): Piece | undefined {
  let best: { readonly piece: Piece; readonly awayM: number } | undefined;
  for (const piece of pieces) {
    const awayM = distanceWithinM(piece, at, withinM);
    if (awayM !== undefined && awayM < (best?.awayM ?? Infinity)) best = { piece, awayM };
  }
  return best?.piece;
}
