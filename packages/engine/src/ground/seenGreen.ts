import type { Polygon } from '../geometry/polygon.ts';
import { lengthM, pointAlong } from '../geometry/segment.ts';
import type { PlanePoint } from '../quantity/points.ts';

/** The line of play into the green is looked at over this last part of the hole line. */
const APPROACH_M = 100;

/** Bearing in radians of the line of play into the green: from the hole line 100 m before its end (or its start) to its end. */
export function approachRad(line: readonly PlanePoint[]): number {
  const end = line[line.length - 1];
  const from = pointAlong(line, lengthM(line) - APPROACH_M);
  if (!end || !from) return 0;
  return Math.atan2(end.eastM - from.eastM, end.northM - from.northM);
}

/** A green as it is seen along the line of play into it. Metres forward and to the right, from the plane's own origin. */
export interface SeenGreen {
  readonly frontM: number;
  readonly backM: number;
  /** Its outermost edges at a depth; undefined where there is no green. */
  readonly edgesAt: (forwardM: number) => { readonly leftM: number; readonly rightM: number } | undefined;
  readonly placeAt: (forwardM: number, rightM: number) => PlanePoint;
  readonly of: (p: PlanePoint) => { readonly forwardM: number; readonly rightM: number };
}

export function seenGreen(line: readonly PlanePoint[], green: readonly Polygon[]): SeenGreen {
  const rad = approachRad(line);
  const [sin, cos] = [Math.sin(rad), Math.cos(rad)];
  const forward = (p: PlanePoint): number => p.eastM * sin + p.northM * cos;
  const right = (p: PlanePoint): number => p.eastM * cos - p.northM * sin;
  const rings = green.map((g) => g.outer);
  const corners = rings.flat();
  return {
    frontM: corners.reduce((near, p) => Math.min(near, forward(p)), Infinity),
    backM: corners.reduce((far, p) => Math.max(far, forward(p)), -Infinity),
    edgesAt: (depthM) => {
      let [leftM, rightM] = [Infinity, -Infinity];
      for (const ring of rings) {
        for (const [i, a] of ring.entries()) {
          const b = ring[(i + 1) % ring.length] ?? a;
          const [fromM, toM] = [forward(a), forward(b)];
          if (Math.min(fromM, toM) > depthM || Math.max(fromM, toM) < depthM) continue;
          const share = toM === fromM ? 0 : (depthM - fromM) / (toM - fromM);
          const atM = right(a) + share * (right(b) - right(a));
          leftM = Math.min(leftM, atM, toM === fromM ? right(b) : atM);
          rightM = Math.max(rightM, atM, toM === fromM ? right(b) : atM);
        }
      }
      return leftM <= rightM ? { leftM, rightM } : undefined;
    },
    placeAt: (forwardM, rightM) => ({
      eastM: forwardM * sin + rightM * cos,
      northM: forwardM * cos - rightM * sin,
    }),
    of: (p) => ({ forwardM: forward(p), rightM: right(p) }),
  };
}
