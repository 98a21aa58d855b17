import type { PlanePoint } from '../quantity/points.ts';
import type { BallState, HoleSolution } from '../value/solution.ts';

/** Where the next stroke is played from, and whether it was dropped there. */
export interface NextBall {
  readonly state: BallState;
  readonly dropped: boolean;
  /** Penalty strokes on the way there; one for a drop unless said. */
  readonly penaltyStrokes?: number;
}

/** The state after a ball comes to rest at `rest`: as it lies, or by the cheapest relief, or again from where it was. `undefined` on the green. */
export function nextBall(solution: HoleSolution, from: BallState, rest: PlanePoint): NextBall | undefined {
  if (solution.surfaceAt(rest) === 'green') return undefined;
  const { state, penaltyStrokes } = solution.next(rest, from);
  if (solution.surfaceAt(state.at) === 'green') return undefined;
  return { state, dropped: penaltyStrokes > 0, penaltyStrokes };
}
