import type { PlanePoint } from '../quantity/points.ts';
import { distanceToSegmentM } from './segment.ts';

/** A closed ring without its repeated last vertex, in either winding. */
export type Ring = readonly PlanePoint[];

/** An outer ring with the rings cut out of it. Filled by the even-odd rule. */
export interface Polygon {
  readonly outer: Ring;
  readonly inner: readonly Ring[];
}

/** West, south, east and north edges of a box, in metres. */
export interface Box {
  readonly westM: number;
  readonly southM: number;
  readonly eastM: number;
  readonly northM: number;
}

/** The smallest box round some points; an inside-out, infinite box for none. */
export function boxOf(points: readonly PlanePoint[]): Box {
  let [westM, southM, eastM, northM] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const p of points) {
    westM = Math.min(westM, p.eastM);
    southM = Math.min(southM, p.northM);
    eastM = Math.max(eastM, p.eastM);
    northM = Math.max(northM, p.northM);
  }
  return { westM, southM, eastM, northM };
}

/** Do two boxes come within `gapM` of each other? */
export const boxesMeet = (a: Box, b: Box, gapM = 0): boolean =>
  a.westM <= b.eastM + gapM && b.westM <= a.eastM + gapM && a.southM <= b.northM + gapM && b.southM <= a.northM + gapM;

/**
 * Area of a ring in square metres, positive when it runs anticlockwise (the shoelace sum, taken from the first vertex so that
 * rings far from the origin lose no digits). A self-crossing ring gives the sum of its loops, each counted by its winding.
 */
export function signedAreaSqM(ring: Ring): number {
  const first = ring[0];
  if (first === undefined) return 0;
  let twice = 0;
  let prev = ring[ring.length - 1] ?? first;
  for (const p of ring) {
    twice +=
      (prev.eastM - first.eastM) * (p.northM - first.northM) - (p.eastM - first.eastM) * (prev.northM - first.northM);
    prev = p;
  }
  return twice / 2;
}

/** Area of a polygon in square metres: its outer ring less its inner rings. */
export const areaSqM = (polygon: Polygon): number =>
  polygon.inner.reduce((left, ring) => left - Math.abs(signedAreaSqM(ring)), Math.abs(signedAreaSqM(polygon.outer)));

/** Centroid of a ring's area; of its vertices when the area is nought. Throws on an empty ring. */
export function centroid(ring: Ring): PlanePoint {
  const first = ring[0];
  if (first === undefined) throw new RangeError('a ring without vertices has no centroid');
  let [twice, momentE, momentN, sumE, sumN] = [0, 0, 0, 0, 0];
  let prev = ring[ring.length - 1] ?? first;
  for (const p of ring) {
    const [e0, n0] = [prev.eastM - first.eastM, prev.northM - first.northM];
    const [e1, n1] = [p.eastM - first.eastM, p.northM - first.northM];
    const cross = e0 * n1 - e1 * n0;
    twice += cross;
    momentE += (e0 + e1) * cross;
    momentN += (n0 + n1) * cross;
    sumE += e1;
    sumN += n1;
    prev = p;
  }
  if (Math.abs(twice) < 1e-9)
    return { eastM: first.eastM + sumE / ring.length, northM: first.northM + sumN / ring.length };
  return { eastM: first.eastM + momentE / (3 * twice), northM: first.northM + momentN / (3 * twice) };
}

/** Is a point inside a ring, by the even-odd rule? A point exactly on the edge may fall either way. */
export function insideRing(p: PlanePoint, ring: Ring): boolean {
  let inside = false;
  let prev = ring[ring.length - 1];
  if (prev === undefined) return false;
  for (const q of ring) {
    if (q.northM > p.northM !== prev.northM > p.northM) {
      const crossesAtM = q.eastM + ((prev.eastM - q.eastM) * (p.northM - q.northM)) / (prev.northM - q.northM);
      if (p.eastM < crossesAtM) inside = !inside;
    }
    prev = q;
  }
  return inside;
}

/** Is a point inside a polygon: an odd number of its rings round it? */
export function insidePolygon(p: PlanePoint, polygon: Polygon): boolean {
  let inside = insideRing(p, polygon.outer);
  for (const ring of polygon.inner) if (insideRing(p, ring)) inside = !inside;
  return inside;
}

/** Distance in metres from a point to the nearest place on a ring's edge. */
export function distanceToRingM(p: PlanePoint, ring: Ring): number {
  let nearest = Infinity;
  let prev = ring[ring.length - 1];
  if (prev === undefined) return Infinity;
  for (const q of ring) {
    nearest = Math.min(nearest, distanceToSegmentM(p, prev, q));
    prev = q;
  }
  return nearest;
}

/** Distance in metres from a point to a polygon's nearest edge, inner rings included; it is not signed. */
export const distanceToEdgeM = (p: PlanePoint, polygon: Polygon): number =>
  polygon.inner.reduce((near, ring) => Math.min(near, distanceToRingM(p, ring)), distanceToRingM(p, polygon.outer));

/** Distance in metres from a point to a polygon: nought inside it. */
export const distanceToPolygonM = (p: PlanePoint, polygon: Polygon): number =>
  insidePolygon(p, polygon) ? 0 : distanceToEdgeM(p, polygon);
