import type { Box, HoleGround, PlanePoint, Polygon, Ring } from '@leeway/engine';
import { bearingRad, boxesMeet, boxOf, MAPPED_WITHIN_M, offsetOf, placeAt, union } from '@leeway/engine';
import { Clipper, EndType, FillRule, JoinType } from 'clipper2-ts';
import type { PathsD } from 'clipper2-ts';

/** How far a rounded corner may stand from its arc: not seen on a sheet. */
const ARC_M = { mapped: 0.3, inset: 0.05 };
const DECIMALS = 3;

/** All ground within 40 yd of what is mapped, of areas, out of bounds apart, and of the hole line, so far as it comes into a box. */
export function mappedGround(ground: HoleGround, shown: Box): Polygon[] {
  const rings = ground.areas
    .filter((a) => a.surface !== 'out' && boxesMeet(boxOf(a.polygon.outer), shown, MAPPED_WITHIN_M))
    .map((a) => oriented(pathOf(a.polygon.outer), true));
  const grow = (paths: PathsD, end: EndType): PathsD =>
    Clipper.inflatePathsD(paths, MAPPED_WITHIN_M, JoinType.Round, end, 2, DECIMALS, ARC_M.mapped);
  const grown = [...grow(rings, EndType.Polygon), ...grow([pathOf(ground.line)], EndType.Round)];
  return union(grown.map((path) => ({ outer: ringOf(path), inner: [] })));
}

/** How far strokes are worked out beside the line of a hole, behind its ball, and beyond its flag, metres. */
const WORKED_M = { beside: 105, behind: 38, beyond: 82 };

/** The ground that a hole's strokes are worked out for: a band round its line, cut off square behind the ball and beyond the flag. Nothing is charted outside it. */
export function chartedGround({ ball, flag, line }: HoleGround): Ring[] {
  const band = Clipper.inflatePathsD(
    [pathOf(line)],
    WORKED_M.beside,
    JoinType.Round,
    EndType.Round,
    2,
    DECIMALS,
    ARC_M.mapped,
  );
  const up = bearingRad(ball, flag);
  const along = [ball, flag, ...line].map((p) => offsetOf(p, ball, up).alongM);
  const [low, high] = [Math.min(...along) - WORKED_M.behind, Math.max(...along) + WORKED_M.beyond];
  const box = [
    [low, -FAR_M],
    [low, FAR_M],
    [high, FAR_M],
    [high, -FAR_M],
  ].map(([a = 0, across = 0]) => placeAt(ball, up, a, across));
  return Clipper.intersectD(band, [pathOf(box)], FillRule.NonZero, DECIMALS).map(ringOf);
}
const FAR_M = 3000;

/** The lines inside a polygon at a distance from its edge. */
export function insetM(polygon: Polygon, byM: number): PlanePoint[][] {
  const paths = [oriented(pathOf(polygon.outer), true), ...polygon.inner.map((ring) => oriented(pathOf(ring), false))];
  return Clipper.inflatePathsD(paths, -byM, JoinType.Round, EndType.Polygon, 2, DECIMALS, ARC_M.inset).map(ringOf);
}

const pathOf = (ring: readonly PlanePoint[]): PathsD[number] => ring.map((p) => ({ x: p.eastM, y: p.northM }));
const ringOf = (path: PathsD[number]): PlanePoint[] => path.map((p) => ({ eastM: p.x, northM: p.y }));

const oriented = (path: PathsD[number], positive: boolean): PathsD[number] =>
  Clipper.areaD(path) > 0 === positive ? path : path.toReversed();
