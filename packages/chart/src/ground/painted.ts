import type { Area, Box, HoleGround, PlanePoint, Polygon, Surface } from '@leeway/engine';
import { boxOf, cutOut, distanceToEdgeM, insidePolygon, MAPPED_WITHIN_M, union } from '@leeway/engine';
import { Clipper, EndType, JoinType } from 'clipper2-ts';
import type { PathsD } from 'clipper2-ts';
import { quadOf } from '../plane/quad.ts';
import type { Sheet } from '../sheet.ts';

/** The ground as it is seen on a sheet: what lies on top where, and the part of each area that shows. */
export interface Painted {
  readonly areas: readonly Area[];
  /** Index of the topmost area at a place, -1 where none lies. */
  topAt(p: PlanePoint): number;
  /** What is seen at a place: bare rough too; nothing beyond what is mapped. */
  surfaceAt(p: PlanePoint): Surface | 'unmapped';
  /** Within 40 yd of an area, out of bounds apart, or of the hole line. */
  isMapped(p: PlanePoint): boolean;
  /** The part of an area that shows on the sheet. */
  shownOf(index: number): readonly Polygon[];
  /** Bare rough that shows on the sheet. */
  readonly rough: readonly Polygon[];
  /** Distance to the nearest edge of water or of out of bounds. */
  toEdgeM(p: PlanePoint, surface: 'penalty' | 'out'): number;
}

export function paintedOn(ground: HoleGround, sheet: Sheet): Painted {
  const { areas } = ground;
  const boxes = areas.map((a) => boxOf(a.polygon.outer));
  const sheetRing = quadOf(sheet.inner).map((q) => sheet.toPlane(q));
  const sheetPolygon: Polygon = { outer: sheetRing, inner: [] };
  const reach = boxOf(sheetRing);
  const offSheet = cutOut([{ outer: bigger(reach), inner: [] }], [sheetPolygon]);
  const mapped = union(grown(ground));

  const topAt = (p: PlanePoint): number => {
    for (let i = areas.length - 1; i >= 0; i--) {
      const box = boxes[i];
      const area = areas[i];
      if (box && area && inBox(p, box) && insidePolygon(p, area.polygon)) return i;
    }
    return -1;
  };
  const isMapped = (p: PlanePoint): boolean => mapped.some((m) => insidePolygon(p, m));
  return {
    areas,
    topAt,
    isMapped,
    surfaceAt: (p) => areas[topAt(p)]?.surface ?? (isMapped(p) ? 'rough' : 'unmapped'),
    shownOf: (index) => {
      const area = areas[index];
      if (area === undefined) return [];
      return cutOut([area.polygon], union([...offSheet, ...areas.slice(index + 1).map((a) => a.polygon)]));
    },
    rough: cutOut(mapped, union([...offSheet, ...areas.map((a) => a.polygon)])),
    toEdgeM: (p, surface) =>
      areas.reduce(
        (near, a) => (a.surface === surface ? Math.min(near, distanceToEdgeM(p, a.polygon)) : near),
        Infinity,
      ),
  };
}

const inBox = (p: PlanePoint, box: Box): boolean =>
  p.eastM >= box.westM && p.eastM <= box.eastM && p.northM >= box.southM && p.northM <= box.northM;

/** A ring well outside everything on a hole. */
function bigger(box: Box): PlanePoint[] {
  const far = 5000;
  const [west, east] = [box.westM - far, box.eastM + far];
  const [south, north] = [box.southM - far, box.northM + far];
  return [
    { eastM: west, northM: south },
    { eastM: east, northM: south },
    { eastM: east, northM: north },
    { eastM: west, northM: north },
  ];
}

/** Everything within 40 yd of what is mapped: areas, out of bounds apart, and the hole line. */
function grown(ground: HoleGround): Polygon[] {
  const rings = ground.areas.filter((a) => a.surface !== 'out').map((a) => pathOf(a.polygon.outer));
  const areas = Clipper.inflatePathsD(rings, MAPPED_WITHIN_M, JoinType.Round, EndType.Polygon, 2, 3, 0.1);
  const line = Clipper.inflatePathsD([pathOf(ground.line)], MAPPED_WITHIN_M, JoinType.Round, EndType.Round, 2, 3, 0.1);
  return [...areas, ...line].map((path) => ({ outer: ringOf(path), inner: [] }));
}

const pathOf = (ring: readonly PlanePoint[]): PathsD[number] => ring.map((p) => ({ x: p.eastM, y: p.northM }));
const ringOf = (path: PathsD[number]): PlanePoint[] => path.map((p) => ({ eastM: p.x, northM: p.y }));

/** The lines inside a polygon at a distance from its edge. */
export function insetM(polygons: readonly Polygon[], byM: number): PlanePoint[][] {
  const paths = polygons.flatMap((p) => [
    oriented(pathOf(p.outer), true),
    ...p.inner.map((ring) => oriented(pathOf(ring), false)),
  ]);
  return Clipper.inflatePathsD(paths, -byM, JoinType.Round, EndType.Polygon, 2, 3, 0.05).map(ringOf);
}

const oriented = (path: PathsD[number], positive: boolean): PathsD[number] =>
  Clipper.areaD(path) > 0 === positive ? path : path.toReversed();
