import { innerCentre } from '../geometry/innerCentre.ts';
import { insidePolygon, type Polygon } from '../geometry/polygon.ts';
import { between } from '../geometry/segment.ts';
import type { PlanePoint } from '../quantity/points.ts';
import { seenGreen } from './seenGreen.ts';

/** One of the nine parts that a green is told by, as it is seen along the line of play into it. */
export interface GreenZone {
  readonly depth: 'front' | 'middle' | 'back';
  readonly side: 'left' | 'middle' | 'right';
}

const DEPTHS = ['front', 'middle', 'back'] as const;
const SIDES = ['left', 'middle', 'right'] as const;

/** The nine, from front left to back right. */
export const GREEN_ZONES: readonly GreenZone[] = DEPTHS.flatMap((depth) => SIDES.map((side) => ({ depth, side })));

/** A flag of a zone stands so far up the green and so far across it there: holes are rarely cut nearer an edge. */
const SHARE = [0.2, 0.5, 0.8] as const;
const STEPS = 50;

/**
 * Where the flag of a zone stands: its share of the green's depth, and of its width at that depth. Where a bent green leaves that place off it, as near as a
 * straight way to its inner centre comes.
 */
export function zonePlace(
  { depth, side }: GreenZone,
  line: readonly PlanePoint[],
  green: readonly Polygon[],
): PlanePoint | undefined {
  const [first] = green;
  if (first === undefined) return undefined;
  const seen = seenGreen(line, green);
  const forwardM = seen.frontM + SHARE[DEPTHS.indexOf(depth)]! * (seen.backM - seen.frontM);
  const edges = seen.edgesAt(forwardM);
  if (edges === undefined) return undefined;
  const wanted = seen.placeAt(forwardM, edges.leftM + SHARE[SIDES.indexOf(side)]! * (edges.rightM - edges.leftM));
  const centre = innerCentre(first);
  for (let i = 0; i <= STEPS; i++) {
    const place = between(wanted, centre, i / STEPS);
    if (green.some((g) => insidePolygon(place, g))) return place;
  }
  return undefined;
}

/** The zone that a place on the green is in, by thirds of the green's depth and of its width at the place's own depth; undefined off the green. */
export function zoneOf(
  place: PlanePoint,
  line: readonly PlanePoint[],
  green: readonly Polygon[],
): GreenZone | undefined {
  if (!green.some((g) => insidePolygon(place, g))) return undefined;
  const seen = seenGreen(line, green);
  const { forwardM, rightM } = seen.of(place);
  const edges = seen.edgesAt(forwardM);
  if (edges === undefined) return undefined;
  const third = (at: number, from: number, to: number): 0 | 1 | 2 => {
    const share = (at - from) / (to - from);
    return share < 1 / 3 ? 0 : share > 2 / 3 ? 2 : 1;
  };
  return {
    depth: DEPTHS[third(forwardM, seen.frontM, seen.backM)],
    side: SIDES[third(rightM, edges.leftM, edges.rightM)],
  };
}
