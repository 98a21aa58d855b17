import type { ScoreChances } from '../value/scoreChances.ts';

/** What was expected of a round, and how likely a score so low was. */
export interface PredictedScore {
  readonly mean: number;
  readonly lo80: number;
  readonly hi80: number;
  /** Chance of the score that was played, or fewer: half of the score itself counted. */
  readonly chance: number;
}

/** The score of holes that are played one after the other, each independent: their chances convolved. */
export function predictedScore(holes: readonly ScoreChances[], score: number): PredictedScore {
  const round = holes.reduce<number[]>(
    (sum, hole) => {
      const next = Array.from({ length: sum.length + hole.length - 1 }, () => 0);
      sum.forEach((p, i) => hole.forEach((q, k) => (next[i + k]! += p * q)));
      return next;
    },
    [1],
  );
  const upTo = (least: number): number => {
    let sum = 0;
    return round.findIndex((p) => (sum += p) >= least);
  };
  return {
    mean: round.reduce((sum, p, i) => sum + i * p, 0),
    lo80: upTo(0.1),
    hi80: upTo(0.9),
    chance: round.reduce((sum, p, i) => sum + (i < score ? p : i === score ? p / 2 : 0), 0),
  };
}
