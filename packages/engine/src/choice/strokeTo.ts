import { distanceM } from '../geometry/segment.ts';
import type { PlayerModel } from '../player/option.ts';
import type { PlanePoint } from '../quantity/points.ts';
import type { BallState, HoleSolution, Stroke } from '../value/solution.ts';
import { finishOf } from './finish.ts';
import { bearingRad, goodStrike } from './view.ts';

/** Strokes that finish this much farther from a place than the nearest one are still strokes to it. */
const AS_NEAR_M = 3;

/**
 * The stroke to a place of the user's own: of all options from the lie, aimed so that the good strike's mean goes at the place, those that finish
 * nearest it (to within 3 m of the nearest), and of these the cheapest by the fast rule. `undefined` if nothing is played from the lie.
 */
export function strokeTo(
  solution: HoleSolution,
  player: PlayerModel,
  from: BallState,
  place: PlanePoint,
): Stroke | undefined {
  const strokes = player.options.flatMap((option) => {
    const good = goodStrike(from, { option });
    if (good === undefined) return [];
    const stroke = { option, bearingRad: bearingRad(from.at, place) - Math.atan2(good.acrossM, good.alongM) };
    const finish = finishOf(solution, from, stroke);
    return finish === undefined ? [] : [{ stroke, offM: distanceM(finish, place) }];
  });
  const nearestM = strokes.reduce((least, { offM }) => Math.min(least, offM), Infinity);
  return strokes
    .filter(({ offM }) => offM <= nearestM + AS_NEAR_M)
    .map(({ stroke }) => ({ stroke, strokes: solution.strokesOf(from, stroke) }))
    .toSorted((a, b) => a.strokes - b.strokes)[0]?.stroke;
}
