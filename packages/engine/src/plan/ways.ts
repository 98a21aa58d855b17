import { distanceM } from '../geometry/segment.ts';
import type { HoleGround } from '../ground/hole.ts';
import type { Option, PlayerModel } from '../player/option.ts';
import type { PlanePoint } from '../quantity/points.ts';
import { aimedAt } from '../choice/strokeTo.ts';
import { bearingRad } from '../choice/view.ts';
import type { HoleSolution } from '../value/solution.ts';
import type { Way } from '../value/way.ts';

/** Always straight at the flag, with whatever club costs least so; no allowance is made for a sideways bias. */
export const alwaysAtFlag =
  (ground: HoleGround, player: PlayerModel): Way =>
  (from) => {
    const atFlag = bearingRad(from.at, ground.flag);
    return player.options
      .filter((option) => option.byLie[from.lie] !== undefined)
      .map((option) => ({ option, bearingRad: atFlag }));
  };

/** One stroke of a coach's plan: where it is played from, the option, and the spot that its good strike's mean is to pitch at the line of. */
export interface CoachStroke {
  readonly from: PlanePoint;
  readonly option: Option;
  readonly spot: PlanePoint;
}

/** A ball farther than this from where a stroke was planned from is off the plan. */
const ON_PLAN_M = 40;

/** A coach's own plan, aimed with the hole's day: each planned stroke is played from within 40 m of where it was planned from; everywhere else the player chooses best. */
export const coachPlan =
  (solution: HoleSolution, strokes: readonly CoachStroke[]): Way =>
  (from) => {
    const near = strokes
      .map((stroke) => ({ stroke, awayM: distanceM(stroke.from, from.at) }))
      .filter(({ stroke, awayM }) => awayM <= ON_PLAN_M && stroke.option.byLie[from.lie] !== undefined)
      .toSorted((a, b) => a.awayM - b.awayM)[0]?.stroke;
    const stroke = near && aimedAt(solution, from, near.option, near.spot);
    return stroke && [stroke];
  };

/**
 * The choices of another pattern, such as last year's: what was best by that solution of the same hole, played by the player as they are now. Free
 * where the player has no such option any more.
 */
export const choicesOf =
  (other: HoleSolution, player: PlayerModel): Way =>
  (from) => {
    const then = other.playedFrom(from);
    const now =
      then &&
      player.options.find((o) => o.club === then.option.club && o.swing === then.option.swing && o.byLie[from.lie]);
    return then === undefined || now === undefined ? undefined : [{ option: now, bearingRad: then.bearingRad }];
  };
