import { rankCorrelation } from '../stats/rankCorrelation.ts';

/** A ball of a session in the order it was hit, and the good carry of its club and swing. */
export interface HitInOrder {
  readonly carryM: number;
  readonly goodCarryM: number;
}

const LEAST_BALLS = 20;
/** A fall that chance gives in one session of twenty. */
const Z = 1.645;

/**
 * Whether the carries of a session fall off from its first ball to its last, mishits among them, by more than chance: Spearman's correlation of a ball's place with the share
 * of its club's carry that it went. False below 20 balls.
 */
export function isTiring(balls: readonly HitInOrder[]): boolean {
  if (balls.length < LEAST_BALLS) return false;
  const r = rankCorrelation(balls.map((b, i) => [i, b.carryM / b.goodCarryM]));
  return r * Math.sqrt(balls.length - 1) < -Z;
}
