import type { Caution } from '../ground/hole.ts';
import type { PlanePoint } from '../quantity/points.ts';
import type { BallState, HoleSolution, Priced, Stroke } from '../value/solution.ts';
import { reachOf } from './caution.ts';
import { type Nudge, nudgesOf } from './doubt.ts';
import { goodStrike, offsetOf, placeAt } from './view.ts';

/** A stroke priced for showing: where the player points, where the good strike's mean finishes, and what is doubtful or unwise about it. */
export interface ShownStroke {
  readonly priced: Priced;
  readonly strokes: number;
  /** On the aim line, at the option's own mean distance. */
  readonly aim: PlanePoint;
  readonly spot: PlanePoint;
  readonly nudges: readonly Nudge[];
  /** What its 95-in-100 pattern reaches and should not. */
  readonly flagged: readonly Caution[];
}

export function showStroke(solution: HoleSolution, from: BallState, stroke: Stroke): ShownStroke {
  const priced = solution.price(from, stroke);
  const { bearingRad } = stroke;
  const { alongM } = offsetOf(priced.finishes, from.at, bearingRad);
  const pattern = stroke.option.byLie[from.lie];
  const runM = alongM - (goodStrike(from, stroke)?.alongM ?? alongM);
  return {
    priced,
    strokes: priced.strokes,
    aim: placeAt(from.at, bearingRad, alongM),
    spot: priced.finishes,
    nudges: nudgesOf(solution, from, stroke),
    flagged:
      pattern === undefined || solution.ground.cautions.length === 0
        ? []
        : reachOf(pattern, runM, from, solution.ground.cautions)(bearingRad),
  };
}
