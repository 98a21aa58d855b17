import { clubKey, isFullSwing, swingKey } from './club.ts';
import { carryRatio, sevenIronPriorM, type Level } from './prior.ts';
import { SD_LOG_CARRY_BY_INDEX, SD_LOG_CLAIM, SD_LOG_PART_SWING, SD_LOG_RATIO } from './priorTable.ts';

/** What is known of a club's and swing's good carry: measured (with its standard error) or claimed. */
export interface KnownCarry {
  readonly club: string;
  readonly swing: string;
  readonly loftDeg?: number;
  readonly carryM: number;
  /** Standard error of the logarithm of the carry. */
  readonly seLog: number;
}

export interface CarryBelief {
  readonly carryM: number;
  readonly sdLog: number;
}

export const claimedCarry = (club: string, swing: string, carryM: number, loftDeg?: number): KnownCarry => ({
  club,
  swing,
  carryM,
  seLog: SD_LOG_CLAIM,
  ...(loftDeg === undefined ? {} : { loftDeg }),
});

/**
 * What one club and swing is believed to carry from the level and from what is known of the *other* clubs (and claims of its own).
 * log carry = log C7 + log ratio + e: the 7-iron's carry C7 differs between players of one index by 8 %, a club's ratio to it by 4 %
 * (8 % more for an in-between swing). Everything is normal, so the belief is a precision-weighted mean.
 */
export function carryBelief(
  level: Level,
  target: { readonly club: string; readonly swing: string; readonly loftDeg?: number },
  others: readonly KnownCarry[],
): CarryBelief {
  const prior = sevenIronPriorM(level);
  let seven = prior;
  let variance = SD_LOG_CARRY_BY_INDEX ** 2;
  // The ratios depend a little on C7 itself; three rounds settle them to well under a part in a thousand.
  for (let round = 0; round < 3; round++) {
    let precision = 1 / SD_LOG_CARRY_BY_INDEX ** 2;
    let sum = Math.log(prior) * precision;
    for (const known of others) {
      if (isSame(known, target)) continue;
      const weight = 1 / (known.seLog ** 2 + ratioVariance(known.swing));
      sum += weight * Math.log(known.carryM / carryRatio(known.club, known.swing, seven, known.loftDeg));
      precision += weight;
    }
    seven = Math.exp(sum / precision);
    variance = 1 / precision;
  }
  const carryM = seven * carryRatio(target.club, target.swing, seven, target.loftDeg);
  return withOwn({ carryM, sdLog: Math.sqrt(variance + ratioVariance(target.swing)) }, target, others);
}

const ratioVariance = (swing: string): number => SD_LOG_RATIO ** 2 + (isFullSwing(swing) ? 0 : SD_LOG_PART_SWING ** 2);

const isSame = (a: { club: string; swing: string }, b: { club: string; swing: string }): boolean =>
  clubKey(a.club) === clubKey(b.club) && swingKey(a.swing) === swingKey(b.swing);

function withOwn(
  belief: CarryBelief,
  target: { readonly club: string; readonly swing: string },
  known: readonly KnownCarry[],
): CarryBelief {
  let precision = 1 / belief.sdLog ** 2;
  let sum = precision * Math.log(belief.carryM);
  for (const own of known) {
    if (!isSame(own, target)) continue;
    sum += Math.log(own.carryM) / own.seLog ** 2;
    precision += 1 / own.seLog ** 2;
  }
  return { carryM: Math.exp(sum / precision), sdLog: 1 / Math.sqrt(precision) };
}
