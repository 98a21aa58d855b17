import type { PlanePoint } from '../quantity/points.ts';
import type { BallState, HoleSolution } from '../value/solution.ts';
import { placeAt } from './view.ts';

/** How far a ball may stray from the spot before it costs `more` strokes than expected; `null` beyond 75 m. */
export interface Room {
  readonly more: number;
  readonly leftM: number | null;
  readonly rightM: number | null;
  readonly shortM: number | null;
  readonly longM: number | null;
}

const ROOM_MORE = [0.1, 0.25] as const;
const FARTHEST_M = 75;
const STEP_M = 0.5;
const HALVINGS = 6;

/** The four arms of a spot, along and across the aim line, for each of `ROOM_MORE`. A ball at rest there makes 1 + V exceed the expected strokes by `more`. */
export function roomOf(
  solution: HoleSolution,
  from: BallState,
  spot: PlanePoint,
  bearingRad: number,
  expectedStrokes: number,
): Room[] {
  const arm = (turnRad: number): (number | null)[] => {
    const costAt = (m: number): number =>
      1 + solution.strokesAtRest(placeAt(spot, bearingRad + turnRad, m), from) - expectedStrokes;
    return firstBeyond(costAt, ROOM_MORE);
  };
  const long = arm(0);
  const right = arm(Math.PI / 2);
  const short = arm(Math.PI);
  const left = arm(-Math.PI / 2);
  return ROOM_MORE.map((more, i) => ({
    more,
    leftM: left[i] ?? null,
    rightM: right[i] ?? null,
    shortM: short[i] ?? null,
    longM: long[i] ?? null,
  }));
}

/** For each of rising limits, the first distance where the cost exceeds it: outward in steps, then halved down. */
function firstBeyond(costAt: (m: number) => number, limits: readonly number[]): (number | null)[] {
  const found: (number | null)[] = [];
  for (let m = 0; m <= FARTHEST_M && found.length < limits.length; m += STEP_M) {
    const cost = costAt(m);
    for (let limit = limits[found.length]; limit !== undefined && cost > limit; limit = limits[found.length]) {
      found.push(m === 0 ? 0 : edge(costAt, limit, m - STEP_M, m));
    }
  }
  return limits.map((_, i) => found[i] ?? null);
}

function edge(costAt: (m: number) => number, limit: number, within: number, beyond: number): number {
  let low = within;
  let high = beyond;
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (costAt(middle) > limit) high = middle;
    else low = middle;
  }
  return high;
}
