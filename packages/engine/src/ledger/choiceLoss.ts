import type { Option } from '../player/option.ts';
import type { Priced } from '../value/solution.ts';
import type { Bests } from './left.ts';

/** What a choice cost before the ball was struck, against the player's own best: four parts that add up to all of it. */
export interface ChoiceLoss {
  /** This club and swing, played at another place than its best. */
  readonly spot: number;
  /** Another club of the same length of swing would have been cheaper. */
  readonly number: number;
  /** Another length of swing would have been cheaper. */
  readonly swing: number;
  /** All of it, where the choice took on far more penalty and recovery than the best. */
  readonly risk: number;
}

/** More chance of penalty or recovery than the best choice has, from which on the whole loss is one of risk. */
const RISKY = 0.1;

const dangerOf = ({ chances }: Priced): number => chances.penalty + chances.outOfBounds + chances.recovery;

/**
 * spot = Q(o, a) - min over a of Q(o, .); number = that minimum - the least of the options with the same swing; swing = the rest down to V.
 * Their sum is Q(o, a) - V in all cases.
 */
export function choiceLoss(bests: Bests, option: Option, played: Priced): ChoiceLoss {
  const { best } = bests;
  const lost = played.strokes - best.strokes;
  if (dangerOf(played) - dangerOf(best) > RISKY) return { spot: 0, number: 0, swing: 0, risk: lost };
  const own = bests.of(option)?.strokes ?? played.strokes;
  const least = Math.min(own, bests.ofSwing(option.swing)?.strokes ?? own);
  return { spot: played.strokes - own, number: own - least, swing: least - best.strokes, risk: 0 };
}

/** The choice's parts, each by its weight; for an aim that was not noted. */
export function meanChoice(parts: readonly { readonly weight: number; readonly loss: ChoiceLoss }[]): ChoiceLoss {
  const mean = (pick: (loss: ChoiceLoss) => number): number =>
    parts.reduce((sum, { weight, loss }) => sum + weight * pick(loss), 0);
  return {
    spot: mean((l) => l.spot),
    number: mean((l) => l.number),
    swing: mean((l) => l.swing),
    risk: mean((l) => l.risk),
  };
}
