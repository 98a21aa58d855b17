import { cutOut, untangle } from './clip.ts';
import type { PlanePoint } from '../quantity/points.ts';
import { boxOf, boxesMeet, distanceToRingM, insideRing, signedAreaSqM } from './polygon.ts';
import type { Polygon, Ring } from './polygon.ts';
import { between, distanceM, segmentsMeet } from './segment.ts';

/** What is wrong with a ring: too few corners, no area, it crosses or touches itself, or it is too tangled to look through. */
export type RingFault = 'few' | 'flat' | 'crossing' | 'tangled';

/** Vertices nearer than this are one. */
const SAME_M = 1e-3;

/** Less area than this is none: a hundredth of a square metre. */
const FLAT_SQM = 0.01;

/** A vertex this near an edge lies on it: twice what seven decimals of a degree can tell. */
const EDGE_M = 0.02;

/** Pairs of edges compared, for each edge, before a ring is called tangled; a plain ring needs far fewer. */
const PAIRS_AN_EDGE = 200;
const PAIRS_ALWAYS = 1e5;

/** A ring that crosses itself more often than this is tangled too. */
const MOST_CROSSINGS = 500;

/** Vertices of inner times vertices of outer rings up to which they are looked through; beyond, they are clipped unseen. */
const MOST_LOOKS = 2e7;

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

/** Do edges meet others that are not their neighbours? Edges are swept along the ring's longer side. */
function edgesMeet(ring: Ring): 'crossing' | 'tangled' | undefined {
  const { westM, southM, eastM, northM } = boxOf(ring);
  const alongEast = eastM - westM > northM - southM;
  const edges = ring.map((a, i) => {
    const b = ring[(i + 1) % ring.length] ?? a;
    const box = boxOf([a, b]);
    const [fromM, toM] = alongEast ? [box.westM, box.eastM] : [box.southM, box.northM];
    return { i, a, b, box, fromM, toM };
  });
  edges.sort((p, q) => p.fromM - q.fromM);
  const mostPairs = PAIRS_ALWAYS + PAIRS_AN_EDGE * ring.length;
  let [pairs, crossings] = [0, 0];
  for (const [at, p] of edges.entries()) {
    for (let k = at + 1; k < edges.length; k++) {
      const q = edges[k];
      if (q === undefined || q.fromM > p.toM) break;
      if (++pairs > mostPairs) return 'tangled';
      const apart = Math.abs(p.i - q.i);
      if (apart === 1 || apart === ring.length - 1 || !boxesMeet(p.box, q.box)) continue;
      if (segmentsMeet(p.a, p.b, q.a, q.b) && ++crossings > MOST_CROSSINGS) return 'tangled';
    }
  }
  return crossings > 0 ? 'crossing' : undefined;
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
  const looks = only.outer.length * holes.reduce((sum, hole) => sum + hole.outer.length, 0);
  const outside = looks <= MOST_LOOKS && holes.some((hole) => !ringInside(hole.outer, only.outer));
  if (outer.fault === undefined && inner.every((m) => m.fault !== 'crossing') && !outside && looks <= MOST_LOOKS)
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

/**
 * Does a ring lie wholly inside another? All its corners and the middles of its edges must be inside or on the edge, and no corner of the
 * outer ring may reach into it.
 */
export function ringInside(ring: Ring, round: Ring): boolean {
  if (!boxInside(ring, round)) return false;
  const isIn = (p: PlanePoint): boolean => insideRing(p, round) || distanceToRingM(p, round) <= EDGE_M;
  const middles = ring.map((a, i) => between(a, ring[(i + 1) % ring.length] ?? a, 0.5));
  if (!ring.every(isIn) || !middles.every(isIn)) return false;
  return !round.some((p) => insideRing(p, ring) && distanceToRingM(p, ring) > EDGE_M);
}

function boxInside(ring: Ring, round: Ring): boolean {
  const [a, b] = [boxOf(ring), boxOf(round)];
  return (
    a.westM >= b.westM - EDGE_M &&
    a.eastM <= b.eastM + EDGE_M &&
    a.southM >= b.southM - EDGE_M &&
    a.northM <= b.northM + EDGE_M
  );
}
