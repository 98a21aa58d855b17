import { offsetOf, placeAt } from '../choice/view.ts';
import { distanceM } from '../geometry/segment.ts';
import type { Random } from '../math/random.ts';
import type { PlanePoint } from '../quantity/points.ts';
import { puttsAt, puttsOf } from '../value/putts.ts';
import type { BallState, HoleSolution, Stroke } from '../value/solution.ts';
import type { PlayedShot } from './played.ts';
import type { StrokesLeft } from './left.ts';

const MOST_STROKES = 30;
/** Where a putt that is not the last is left. */
const TAP_IN_M = 0.5;

/**
 * A hole as a virtual player plays it, by a way of choosing, every ball drawn from the player's own pattern: strokes with known habits for the account to
 * find. Runs are the good strike's, in proportion. Putts are whole numbers with the table's mean.
 */
export function virtualHole(left: StrokesLeft, choose: (from: BallState) => Stroke, random: Random): PlayedShot[] {
  const { solution } = left;
  const shots: PlayedShot[] = [];
  let state: BallState = { at: solution.ground.ball, lie: 'tee' };
  while (shots.length < MOST_STROKES) {
    const stroke = choose(state);
    const { club, swing } = stroke.option;
    const finish = finishOf(solution, state, stroke, random);
    const onGreen = solution.surfaceAt(finish) === 'green';
    const next = onGreen ? undefined : solution.next(finish, state);
    const aim = placeAt(state.at, stroke.bearingRad, distanceM(state.at, finish));
    shots.push({
      shot: shots.length + 1,
      from: state,
      club,
      swing,
      aim,
      finish,
      penaltyStrokes: next?.penaltyStrokes ?? 0,
    });
    if (next === undefined) return [...shots, ...puttOut(left, finish, shots.length, random)];
    state = next.state;
  }
  return shots;
}

function finishOf(solution: HoleSolution, from: BallState, stroke: Stroke, random: Random): PlanePoint {
  const places = solution.placesOf(from, stroke);
  if (places === undefined) throw new RangeError(`${stroke.option.club} is not played from ${from.lie}`);
  const { parts } = places.pattern;
  let chance = random.next();
  const part = parts.find((p) => (chance -= p.weight) < 0) ?? parts[0];
  if (part === undefined) throw new RangeError('a pattern without parts');
  const [z, y] = [random.normal(), random.normal()];
  const lands = offsetOf(places.lands, from.at, stroke.bearingRad);
  const rests = offsetOf(places.finishes, from.at, stroke.bearingRad);
  const longer = rests.alongM / lands.alongM;
  const along = part.alongM + part.sdAlongM * z;
  const across = part.acrossM + part.sdAcrossM * (part.corr * z + Math.sqrt(1 - part.corr ** 2) * y);
  return placeAt(from.at, stroke.bearingRad, along * longer, across * longer);
}

function puttOut({ solution, player }: StrokesLeft, at: PlanePoint, before: number, random: Random): PlayedShot[] {
  const { flag } = solution.ground;
  const mean = puttsAt(puttsOf(player.putting), distanceM(at, flag));
  const count = Math.max(1, Math.floor(mean) + (random.next() < mean % 1 ? 1 : 0));
  const tapIn: PlanePoint = { eastM: flag.eastM + TAP_IN_M, northM: flag.northM };
  return Array.from({ length: count }, (_, i) => ({
    shot: before + 1 + i,
    from: { at: i === 0 ? at : tapIn, lie: 'green' as const },
    finish: i === count - 1 ? ('holed' as const) : tapIn,
    penaltyStrokes: 0,
  }));
}
