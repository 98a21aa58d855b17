import { frameAt, RAD_PER_DEG, type Frame } from '@leeway/engine';
import type { DrawnFeature, DrawnHole, DrawnPoint } from './course/drawn.ts';

/** Points put between two drawn corners. */
const BETWEEN = 3;
/** About 1 cm, as map data have it. */
const DEGREE_DECIMALS = 7;

/** The drawn holes as GeoJSON (RFC 7946) with golf tags: a feature a line, so that a change is easy to see. */
export function groundFile(holes: readonly DrawnHole[]): string {
  const lines = holes.flatMap((hole) => {
    const frame = frameAt(hole.tee);
    return hole.features.map((feature) => JSON.stringify(onEarth(feature, hole, frame)));
  });
  return `{"type":"FeatureCollection","features":[\n${lines.join(',\n')}\n]}\n`;
}

function onEarth(feature: DrawnFeature, hole: DrawnHole, frame: Frame): object {
  const place = ([rightM, upM]: DrawnPoint): readonly [number, number] => {
    const [sin, cos] = [Math.sin(hole.bearingDeg * RAD_PER_DEG), Math.cos(hole.bearingDeg * RAD_PER_DEG)];
    const { lon, lat } = frame.toGeo({ eastM: rightM * cos + upM * sin, northM: upM * cos - rightM * sin });
    return [Number(lon.toFixed(DEGREE_DECIMALS)), Number(lat.toFixed(DEGREE_DECIMALS))];
  };
  return { type: 'Feature', id: feature.id, properties: feature.tags, geometry: geometryOf(feature, place) };
}

function geometryOf(
  { shape, straight, points }: DrawnFeature,
  place: (p: DrawnPoint) => readonly [number, number],
): object {
  const places = points.map(place);
  const [first] = places;
  if (shape === 'point') return { type: 'Point', coordinates: first };
  if (shape === 'line') return { type: 'LineString', coordinates: places };
  const corners = anticlockwise(points);
  const ring = (straight ? corners : rounded(corners)).map(place);
  return { type: 'Polygon', coordinates: [[...ring, ring[0]]] };
}

/** The corners in the order that RFC 7946 asks of an outer ring. Twice the area is the sum of x_i y_(i+1) - x_(i+1) y_i. */
function anticlockwise(points: readonly DrawnPoint[]): readonly DrawnPoint[] {
  const twice = points.reduce((sum, [x, y], i) => {
    const [nextX, nextY] = points[(i + 1) % points.length] ?? [x, y];
    return sum + x * nextY - nextX * y;
  }, 0);
  return twice < 0 ? points.toReversed() : points;
}

/**
 * A closed curve through the drawn corners: a uniform Catmull-Rom spline, whose tangent at a corner is half the chord between its neighbours.
 * p(t) = ½ (2 p1 + (p2 - p0) t + (2 p0 - 5 p1 + 4 p2 - p3) t² + (3 p1 - p0 - 3 p2 + p3) t³), 0 <= t < 1 from p1 to p2.
 */
export function rounded(corners: readonly DrawnPoint[]): readonly DrawnPoint[] {
  const n = corners.length;
  const corner = (i: number): DrawnPoint => corners[((i % n) + n) % n] ?? [0, 0];
  return corners.flatMap((p1, i) => {
    const [p0, p2, p3] = [corner(i - 1), corner(i + 1), corner(i + 2)];
    return Array.from({ length: BETWEEN + 1 }, (_, k): DrawnPoint => {
      const t = k / (BETWEEN + 1);
      const along = (axis: 0 | 1): number =>
        0.5 *
        (2 * p1[axis] +
          (p2[axis] - p0[axis]) * t +
          (2 * p0[axis] - 5 * p1[axis] + 4 * p2[axis] - p3[axis]) * t ** 2 +
          (3 * p1[axis] - p0[axis] - 3 * p2[axis] + p3[axis]) * t ** 3);
      return [along(0), along(1)];
    });
  });
}
