import { distanceM } from '../geometry/segment.ts';
import type { NormalPart } from '../player/option.ts';
import type { PlanePoint } from '../quantity/points.ts';
import type { BallState, HoleSolution, Stroke } from '../value/solution.ts';

/** Metres on along a bearing, and to the right of it. */
export interface Offset {
  readonly alongM: number;
  readonly acrossM: number;
}

/** Bearing from `a` to `b`, radians clockwise from north. */
export const bearingRad = (a: PlanePoint, b: PlanePoint): number => Math.atan2(b.eastM - a.eastM, b.northM - a.northM);

/** The place `alongM` metres from `at` down a bearing and `acrossM` to the right of it. */
export function placeAt(at: PlanePoint, bearing: number, alongM: number, acrossM = 0): PlanePoint {
  const sin = Math.sin(bearing);
  const cos = Math.cos(bearing);
  return { eastM: at.eastM + alongM * sin + acrossM * cos, northM: at.northM + alongM * cos - acrossM * sin };
}

/** Where `p` lies from `at`, along a bearing and across it: the inverse of `placeAt`. */
export function offsetOf(p: PlanePoint, at: PlanePoint, bearing: number): Offset {
  const sin = Math.sin(bearing);
  const cos = Math.cos(bearing);
  const east = p.eastM - at.eastM;
  const north = p.northM - at.northM;
  return { alongM: east * sin + north * cos, acrossM: east * cos - north * sin };
}

/** The smallest turn from one bearing to another, in (-pi, pi]; right is positive. */
export const turnRad = (from: number, to: number): number => {
  const turn = (to - from) % (2 * Math.PI);
  return turn > Math.PI ? turn - 2 * Math.PI : turn <= -Math.PI ? turn + 2 * Math.PI : turn;
};

/** The good strike's part of a stroke's pattern as it flies today; `undefined` if the option is not played from the lie. */
export const goodStrike = (solution: HoleSolution, from: BallState, stroke: Stroke): NormalPart | undefined =>
  solution.placesOf(from, stroke)?.pattern.parts[0];

/** Points along a line no more than `stepM` apart, its corners among them. */
export function alongLine(points: readonly PlanePoint[], closed: boolean, stepM: number): PlanePoint[] {
  const found: PlanePoint[] = points.slice(0, 1);
  const ends = closed ? [...points.slice(1), ...points.slice(0, 1)] : points.slice(1);
  let a = points[0];
  for (const b of ends) {
    if (a === undefined) break;
    const steps = Math.max(1, Math.ceil(distanceM(a, b) / stepM));
    for (let i = 1; i <= steps; i++) {
      const t = i / steps;
      found.push({ eastM: a.eastM + t * (b.eastM - a.eastM), northM: a.northM + t * (b.northM - a.northM) });
    }
    a = b;
  }
  return found;
}
