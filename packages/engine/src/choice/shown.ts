import type { Caution } from '../ground/hole.ts';
import type { PlanePoint } from '../quantity/points.ts';
import type { BallState, HoleSolution, Priced, Stroke } from '../value/solution.ts';
import { reachOf } from './caution.ts';
import { type Nudge, nudgesOf } from './doubt.ts';
import { offsetOf, placeAt } from './view.ts';

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

/** A stroke with all that decides whether it is shown. */
export type Contender = Omit<ShownStroke, 'nudges'>;

export const showStroke = (solution: HoleSolution, from: BallState, stroke: Stroke): ShownStroke =>
  withNudges(solution, from, contend(solution, from, stroke));

/** The same with how sure it is, which takes as long again. */
export const withNudges = (solution: HoleSolution, from: BallState, contender: Contender): ShownStroke => {
  const { option, bearingRad } = contender.priced;
  return { ...contender, nudges: nudgesOf(solution, from, { option, bearingRad }) };
};

export function contend(solution: HoleSolution, from: BallState, stroke: Stroke): Contender {
  const priced = solution.price(from, stroke);
  const { bearingRad } = stroke;
  const { alongM } = offsetOf(priced.finishes, from.at, bearingRad);
  const { pattern } = priced;
  const runM = alongM - (pattern.parts[0]?.alongM ?? alongM);
  return {
    priced,
    strokes: priced.strokes,
    aim: placeAt(from.at, bearingRad, alongM),
    spot: priced.finishes,
    flagged:
      solution.ground.cautions.length === 0 ? [] : reachOf(pattern, runM, from, solution.ground.cautions)(bearingRad),
  };
}
