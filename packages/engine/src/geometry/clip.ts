import { Clipper, ClipType, EndType, FillRule, JoinType, PolyTreeD } from 'clipper2-ts';
import type { PathsD, PolyPathD } from 'clipper2-ts';
import type { PlanePoint } from '../quantity/points.ts';
import type { Polygon, Ring } from './polygon.ts';
import { areaSqM, signedAreaSqM } from './polygon.ts';

/** Decimals of a metre that the clipper keeps. */
const DECIMALS = 4;

/** How far a rounded corner of a strip may stand from its true arc. */
const ARC_ERROR_M = 0.05;

const toPaths = (rings: readonly Ring[]): PathsD => rings.map((ring) => ring.map((p) => ({ x: p.eastM, y: p.northM })));

const ringsOf = (polygons: readonly Polygon[]): Ring[] => polygons.flatMap((p) => [p.outer, ...p.inner]);

function combine(kind: ClipType, subject: PathsD, clip: PathsD | null, rule: FillRule): Polygon[] {
  const tree = new PolyTreeD();
  Clipper.booleanOpDWithPolyTree(kind, subject, clip, tree, rule, DECIMALS);
  const found: Polygon[] = [];
  const waiting: PolyPathD[] = [tree];
  for (let node = waiting.pop(); node !== undefined; node = waiting.pop()) {
    for (let i = 0; i < node.count; i++) {
      const outer = node.child(i);
      const inner: Ring[] = [];
      for (let j = 0; j < outer.count; j++) {
        const hole = outer.child(j);
        inner.push(toRing(hole));
        waiting.push(hole);
      }
      found.push({ outer: toRing(outer), inner });
    }
  }
  return found;
}

const toRing = (node: PolyPathD): Ring => (node.poly ?? []).map((p) => ({ eastM: p.x, northM: p.y }));

/** All ground that a ring winds round at least once, in either direction, as rings that cross nothing. */
export const untangle = (ring: Ring): Polygon[] => combine(ClipType.Union, toPaths([ring]), null, FillRule.NonZero);

/** All ground covered by any of the polygons. */
export const union = (polygons: readonly Polygon[]): Polygon[] =>
  combine(ClipType.Union, toPaths(polygons.flatMap((p) => facing(p))), null, FillRule.Positive);

/** A polygon's rings, the outer one anticlockwise and the inner ones clockwise. */
const facing = (polygon: Polygon): Ring[] => [
  turned(polygon.outer, 1),
  ...polygon.inner.map((ring) => turned(ring, -1)),
];

const turned = (ring: Ring, sign: 1 | -1): Ring => (signedAreaSqM(ring) * sign < 0 ? ring.toReversed() : ring);

/** The ground inside `outer` and inside none of `inner`. */
export const cutOut = (outer: readonly Polygon[], inner: readonly Polygon[]): Polygon[] =>
  combine(ClipType.Difference, toPaths(ringsOf(outer)), toPaths(ringsOf(inner)), FillRule.EvenOdd);

/** Area that two polygons share, in square metres. */
export const sharedAreaSqM = (a: Polygon, b: Polygon): number =>
  combine(ClipType.Intersection, toPaths(ringsOf([a])), toPaths(ringsOf([b])), FillRule.EvenOdd).reduce(
    (sum, p) => sum + areaSqM(p),
    0,
  );

/** A line widened to a strip of `widthM`, with square-cut ends and rounded corners. */
export function strip(line: readonly PlanePoint[], widthM: number): Polygon[] {
  const grown = Clipper.inflatePathsD(
    toPaths([line]),
    widthM / 2,
    JoinType.Round,
    EndType.Butt,
    2,
    DECIMALS,
    ARC_ERROR_M,
  );
  return combine(ClipType.Union, grown, null, FillRule.NonZero);
}

/** A disc as a polygon of `sides` corners, whose area is that of the circle. */
export function disc(centre: PlanePoint, radiusM: number, sides = 16): Polygon {
  const stepRad = (2 * Math.PI) / sides;
  const cornerM = radiusM * Math.sqrt(stepRad / Math.sin(stepRad));
  const outer = Array.from({ length: sides }, (_, i) => ({
    eastM: centre.eastM + cornerM * Math.cos(i * stepRad),
    northM: centre.northM + cornerM * Math.sin(i * stepRad),
  }));
  return { outer, inner: [] };
}
