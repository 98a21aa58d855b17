import { cutOut, untangle } from './clip.ts';
import { boxOf, boxesMeet, insideRing, signedAreaSqM } from './polygon.ts';
import type { Polygon, Ring } from './polygon.ts';
import { distanceM, segmentsMeet } from './segment.ts';

/** What is wrong with a ring: too few corners, no area, it crosses or touches itself, or it is too tangled to look through. */
export type RingFault = 'few' | 'flat' | 'crossing' | 'tangled';

/** Vertices nearer than this are one. */
const SAME_M = 1e-3;

/** Less area than this is none: a hundredth of a square metre. */
const FLAT_SQM = 0.01;

/** Pairs of edges compared before a ring is called tangled; a plain ring of n corners needs far fewer than n² / 2. */
const MOST_PAIRS = 4e6;

/** A ring without repeated vertices next to each other, nor its first vertex at the end. */
export function tidyRing(ring: Ring): Ring {
  const kept = ring.filter((p, i) => {
    const prev = ring[i - 1];
    return prev === undefined || distanceM(prev, p) > SAME_M;
  });
  const [first, last] = [kept[0], kept[kept.length - 1]];
  return first && last && kept.length > 1 && distanceM(first, last) <= SAME_M ? kept.slice(0, -1) : kept;
}

/** The first fault of a tidy ring, if it has one. */
export function ringFault(ring: Ring): RingFault | undefined {
  if (ring.length < 3) return 'few';
  const crossing = edgesMeet(ring);
  if (crossing === undefined && Math.abs(signedAreaSqM(ring)) < FLAT_SQM) return 'flat';
  return crossing;
}

/** Does an edge meet another that is not its neighbour? Edges are swept from west to east. */
function edgesMeet(ring: Ring): 'crossing' | 'tangled' | undefined {
  const edges = ring.map((a, i) => {
    const b = ring[(i + 1) % ring.length] ?? a;
    return { i, a, b, box: boxOf([a, b]) };
  });
  edges.sort((p, q) => p.box.westM - q.box.westM);
  let pairs = 0;
  for (const [at, p] of edges.entries()) {
    for (let k = at + 1; k < edges.length; k++) {
      const q = edges[k];
      if (q === undefined || q.box.westM > p.box.eastM) break;
      if (++pairs > MOST_PAIRS) return 'tangled';
      const apart = Math.abs(p.i - q.i);
      if (apart === 1 || apart === ring.length - 1 || !boxesMeet(p.box, q.box)) continue;
      if (segmentsMeet(p.a, p.b, q.a, q.b)) return 'crossing';
    }
  }
  return undefined;
}

/** A mended polygon: what it became (several pieces, or none), and what was wrong. */
export interface Mended {
  readonly polygons: readonly Polygon[];
  readonly faults: readonly (RingFault | 'inner outside')[];
}

/**
 * Mends a polygon: repeated vertices go; rings with too few corners, no area or too many crossings are left out; a ring that
 * crosses itself becomes all the ground it winds round; inner rings that reach outside the outer ring are clipped to it.
 */
export function mendPolygon(polygon: Polygon): Mended {
  const outer = mendRing(polygon.outer);
  const inner = polygon.inner.map(mendRing);
  const faults: (RingFault | 'inner outside')[] = [outer, ...inner].flatMap((m) => (m.fault ? [m.fault] : []));
  const holes = inner.flatMap((m) => m.polygons);
  const [only] = outer.polygons;
  if (only === undefined) return { polygons: [], faults };
  const outside = holes.some((hole) => !ringInside(hole.outer, only.outer));
  if (outer.fault === undefined && inner.every((m) => m.fault !== 'crossing') && !outside)
    return { polygons: [{ outer: only.outer, inner: holes.map((hole) => hole.outer) }], faults };
  if (outside && outer.fault === undefined) faults.push('inner outside');
  const polygons = holes.length > 0 ? cutOut(outer.polygons, holes) : outer.polygons;
  return { polygons: polygons.filter((p) => Math.abs(signedAreaSqM(p.outer)) >= FLAT_SQM), faults };
}

function mendRing(raw: Ring): { readonly polygons: readonly Polygon[]; readonly fault?: RingFault } {
  const ring = tidyRing(raw);
  const fault = ringFault(ring);
  if (fault === undefined) return { polygons: [{ outer: ring, inner: [] }] };
  return { polygons: fault === 'crossing' ? untangle(ring) : [], fault };
}

/** Does a ring lie inside another: all its vertices, and so, for rings that do not cross, all of it? Vertices on the edge count as inside. */
export const ringInside = (ring: Ring, round: Ring): boolean =>
  boxInside(ring, round) && ring.every((p) => insideRing(p, round) || onEdge(p, round));

const onEdge = (p: Ring[number], ring: Ring): boolean =>
  ring.some((a, i) => {
    const b = ring[(i + 1) % ring.length] ?? a;
    return distanceM(a, p) + distanceM(p, b) - distanceM(a, b) < SAME_M;
  });

function boxInside(ring: Ring, round: Ring): boolean {
  const [a, b] = [boxOf(ring), boxOf(round)];
  return (
    a.westM >= b.westM - SAME_M &&
    a.eastM <= b.eastM + SAME_M &&
    a.southM >= b.southM - SAME_M &&
    a.northM <= b.northM + SAME_M
  );
}

/** Does a polygon lie wholly inside another, its inner rings cut out (touching allowed)? */
export function polygonInside(polygon: Polygon, round: Polygon): boolean {
  if (!ringInside(polygon.outer, round.outer)) return false;
  return round.inner.every((hole) => {
    const apart = !polygon.outer.some((p) => insideRing(p, hole)) && !ringInside(hole, polygon.outer);
    return apart || polygon.inner.some((ring) => ringInside(hole, ring));
  });
}
