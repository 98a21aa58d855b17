import type { PlanePoint, Polygon } from '@leeway/engine';
import { between, distanceM, insidePolygon, nearestShare } from '@leeway/engine';

/** A flag that is dragged over the edge stands this far inside it, so that it is on the green beyond doubt. */
const INSIDE_M = 0.3;

/** The place itself if it is on the green, else the nearest place of the green, a little inside its edge. Without a green the place stays. */
export function keepOnGreen(p: PlanePoint, green: readonly Polygon[]): PlanePoint {
  if (green.some((polygon) => insidePolygon(p, polygon))) return p;
  const edge = nearestOnEdge(p, green);
  if (edge === undefined) return p;
  const outM = distanceM(p, edge);
  for (const insideM of [INSIDE_M, INSIDE_M / 8]) {
    const inside = outM === 0 ? edge : between(edge, p, -insideM / outM);
    if (green.some((polygon) => insidePolygon(inside, polygon))) return inside;
  }
  return edge;
}

function nearestOnEdge(p: PlanePoint, green: readonly Polygon[]): PlanePoint | undefined {
  let nearest: PlanePoint | undefined;
  for (const ring of green.flatMap((polygon) => [polygon.outer, ...polygon.inner])) {
    for (const [i, a] of ring.entries()) {
      const b = ring[(i + 1) % ring.length] ?? a;
      const q = between(a, b, nearestShare(p, a, b));
      if (nearest === undefined || distanceM(p, q) < distanceM(p, nearest)) nearest = q;
    }
  }
  return nearest;
}
