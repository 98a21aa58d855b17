import { distanceM } from '../geometry/segment.ts';
import type { Option, PlayerModel } from '../player/option.ts';
import type { PlanePoint } from '../quantity/points.ts';
import type { BallState, HoleSolution, Stroke } from '../value/solution.ts';
import { bearingRad, turnRad } from './view.ts';

/** A wind that changes with the aim line is met by aiming again. */
const MOST_AIMS = 6;
const ON_LINE_RAD = 1e-6;

/** The stroke of an option whose good strike's mean lands on the line to a place, bias and drift allowed for; `undefined` if it is not played from the lie. */
export function aimedAt(
  solution: HoleSolution,
  from: BallState,
  option: Option,
  place: PlanePoint,
): Stroke | undefined {
  const wanted = bearingRad(from.at, place);
  let stroke: Stroke = { option, bearingRad: wanted };
  for (let i = 0; i < MOST_AIMS; i++) {
    const good = solution.placesOf(from, stroke)?.pattern.parts[0];
    if (good === undefined) return undefined;
    const next = wanted - Math.atan2(good.acrossM, good.alongM);
    const turn = turnRad(stroke.bearingRad, next);
    stroke = { option, bearingRad: next };
    if (Math.abs(turn) < ON_LINE_RAD) break;
  }
  return stroke;
}

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
    const stroke = aimedAt(solution, from, option, place);
    const finish = stroke && solution.placesOf(from, stroke)?.finishes;
    return stroke === undefined || finish === undefined ? [] : [{ stroke, offM: distanceM(finish, place) }];
  });
  const nearestM = strokes.reduce((least, { offM }) => Math.min(least, offM), Infinity);
  return strokes
    .filter(({ offM }) => offM <= nearestM + AS_NEAR_M)
    .map(({ stroke }) => ({ stroke, strokes: solution.strokesOf(from, stroke) }))
    .toSorted((a, b) => a.strokes - b.strokes)[0]?.stroke;
}
