import { boxOf, insidePolygon } from '../geometry/polygon.ts';
import type { Polygon, Ring } from '../geometry/polygon.ts';
import { innerCentre } from '../geometry/innerCentre.ts';
import { lengthM, pointAlong } from '../geometry/segment.ts';
import type { GeoPoint, PlanePoint } from '../quantity/points.ts';
import { YARD_M } from '../quantity/units.ts';
import type { Frame, HoleGround } from './hole.ts';

/** A flag as it is given: a place, or paces of a yard on from the front of the green and in from its left or right edge. */
export type GivenFlag =
  | { readonly kind: 'place'; readonly at: GeoPoint }
  | { readonly kind: 'paces'; readonly on: number; readonly in: number; readonly side: 'L' | 'R' };

/** The line of play into the green is looked at over this last part of the hole line. */
const APPROACH_M = 100;

/** What is known of a hole when its flag is placed. */
export interface FlagGround {
  readonly frame: Frame;
  readonly line: readonly PlanePoint[];
  readonly green: readonly Polygon[];
  /** The pins that carry the hole's number, and all pins. */
  readonly numberedPins: readonly PlanePoint[];
  readonly pins: readonly PlanePoint[];
}

export interface PlacedFlag {
  readonly flag: PlanePoint;
  readonly flagFrom: HoleGround['flagFrom'];
}

/** Is a point on the green? */
export const onGreen = (p: PlanePoint, green: readonly Polygon[]): boolean => green.some((g) => insidePolygon(p, g));

/**
 * The flag: as given, else the pin with the hole's number, else a pin in the green, else the line's last node if it is in the green, else
 * the green's inner centre. A pin outside the green is passed over. Undefined when the given flag is not on the green.
 */
export function placeFlag(given: GivenFlag | undefined, ground: FlagGround): PlacedFlag | undefined {
  const { frame, line, green } = ground;
  if (given !== undefined) {
    const flag = given.kind === 'place' ? frame.toPlane(given.at) : pacedFlag(given, line, green);
    return flag && onGreen(flag, green) ? { flag, flagFrom: 'given' } : undefined;
  }
  const pin = [...ground.numberedPins, ...ground.pins].find((p) => onGreen(p, green));
  if (pin) return { flag: pin, flagFrom: 'pin' };
  const end = line[line.length - 1];
  if (end && onGreen(end, green)) return { flag: end, flagFrom: 'line end' };
  const largest = green.toSorted((a, b) => ringSpan(b.outer) - ringSpan(a.outer))[0];
  return largest ? { flag: innerCentre(largest), flagFrom: 'green centre' } : undefined;
}

const ringSpan = (ring: Ring): number => {
  const box = boxOf(ring);
  return (box.eastM - box.westM) * (box.northM - box.southM);
};

/** Bearing in radians of the line of play into the green: from the hole line 100 m before its end (or its start) to its end. */
export function approachRad(line: readonly PlanePoint[]): number {
  const end = line[line.length - 1];
  const from = pointAlong(line, lengthM(line) - APPROACH_M);
  if (!end || !from) return 0;
  return Math.atan2(end.eastM - from.eastM, end.northM - from.northM);
}

/**
 * The point `on` paces beyond the front of the green and `in` paces inside its edge. Seen along the line of play into the green: the
 * front is the green's nearest place; the edge is the outermost one on the given side, measured across the line of play at the
 * flag's own depth. Undefined when the green is not that deep.
 */
export function pacedFlag(
  given: Extract<GivenFlag, { kind: 'paces' }>,
  line: readonly PlanePoint[],
  green: readonly Polygon[],
): PlanePoint | undefined {
  const rad = approachRad(line);
  const [sin, cos] = [Math.sin(rad), Math.cos(rad)];
  const forwardM = (p: PlanePoint): number => p.eastM * sin + p.northM * cos;
  const rightM = (p: PlanePoint): number => p.eastM * cos - p.northM * sin;
  const rings = green.map((g) => g.outer);
  const frontM = Math.min(...rings.map((ring) => ring.reduce((near, p) => Math.min(near, forwardM(p)), Infinity)));
  const depthM = frontM + given.on * YARD_M;
  let [leftEdgeM, rightEdgeM] = [Infinity, -Infinity];
  for (const ring of rings) {
    for (const [i, a] of ring.entries()) {
      const b = ring[(i + 1) % ring.length] ?? a;
      const [fromM, toM] = [forwardM(a), forwardM(b)];
      if (Math.min(fromM, toM) > depthM || Math.max(fromM, toM) < depthM) continue;
      const share = toM === fromM ? 0 : (depthM - fromM) / (toM - fromM);
      const atM = rightM(a) + share * (rightM(b) - rightM(a));
      leftEdgeM = Math.min(leftEdgeM, atM, toM === fromM ? rightM(b) : atM);
      rightEdgeM = Math.max(rightEdgeM, atM, toM === fromM ? rightM(b) : atM);
    }
  }
  if (!(leftEdgeM <= rightEdgeM)) return undefined;
  const acrossM = given.side === 'R' ? rightEdgeM - given.in * YARD_M : leftEdgeM + given.in * YARD_M;
  return { eastM: depthM * sin + acrossM * cos, northM: depthM * cos - acrossM * sin };
}
