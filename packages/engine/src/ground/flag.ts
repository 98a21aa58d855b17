import { boxOf, insidePolygon } from '../geometry/polygon.ts';
import type { Polygon, Ring } from '../geometry/polygon.ts';
import { innerCentre } from '../geometry/innerCentre.ts';
import type { GeoPoint, PlanePoint } from '../quantity/points.ts';
import { YARD_M } from '../quantity/units.ts';
import { seenGreen } from './seenGreen.ts';
import type { Frame, HoleGround } from './hole.ts';

/** A flag as it is given: a place, or paces of a yard on from the front of the green and in from its left or right edge. */
export type GivenFlag =
  | { readonly kind: 'place'; readonly at: GeoPoint }
  | { readonly kind: 'paces'; readonly on: number; readonly in: number; readonly side: 'L' | 'R' };

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
  const seen = seenGreen(line, green);
  const depthM = seen.frontM + given.on * YARD_M;
  const edges = seen.edgesAt(depthM);
  if (edges === undefined) return undefined;
  return seen.placeAt(depthM, given.side === 'R' ? edges.rightM - given.in * YARD_M : edges.leftM + given.in * YARD_M);
}
