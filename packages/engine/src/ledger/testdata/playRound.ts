import { placeAt } from '../../choice/view.ts';
import { distanceM } from '../../geometry/segment.ts';
import type { Random } from '../../math/random.ts';
import type { BallState, HoleSolution, Stroke } from '../../value/solution.ts';
import { puttsAt, puttsOf } from '../../value/putts.ts';
import type { PlayedFrom, PlayedShot } from '../played.ts';

/** Plays a hole by a way of choosing, each ball drawn from its stated pattern of places at rest; putts are one or more by the table's mean. */
export function playHole(solution: HoleSolution, choose: (from: BallState) => Stroke, random: Random, putting: Parameters<typeof puttsOf>[0]): PlayedShot[] {
  const shots: PlayedShot[] = [];
  const putts = puttsOf(putting);
  let state: BallState = { at: solution.ground.ball, lie: 'tee' };
  for (let shot = 1; shot < 30; shot++) {
    const stroke = choose(state);
    const { parts } = stroke.option.byLie[state.lie]!;
    let chance = random.next();
    const part = parts.find((p) => (chance -= p.weight) < 0) ?? parts[0]!;
    const [z, y] = [random.normal(), random.normal()];
    const finish = placeAt(
      state.at,
      stroke.bearingRad,
      part.alongM + part.sdAlongM * z,
      part.acrossM + part.sdAcrossM * (part.corr * z + Math.sqrt(1 - part.corr ** 2) * y),
    );
    const { club, swing } = stroke.option;
    const aim = placeAt(state.at, stroke.bearingRad, parts[0]!.alongM);
    const from: PlayedFrom = state;
    const onGreen = solution.surfaceAt(finish) === 'green';
    const next = onGreen ? undefined : solution.next(finish, state);
    shots.push({ shot, from, club, swing, aim, finish, penaltyStrokes: next?.penaltyStrokes ?? 0 });
    if (next === undefined) return [...shots, ...puttOut(finish)];
    state = next.state;
  }
  return shots;

  /** The mean of the table as whole putts, each but the last left where the next one is that many putts. */
  function puttOut(at: PlayedFrom['at']): PlayedShot[] {
    const mean = puttsAt(putts, distanceM(at, solution.ground.flag));
    const count = Math.floor(mean) + (random.next() < mean % 1 ? 1 : 0);
    return Array.from({ length: count }, (_, i): PlayedShot => ({
      shot: shots.length + 1 + i,
      from: { at: i === 0 ? at : { eastM: solution.ground.flag.eastM + 0.5, northM: solution.ground.flag.northM }, lie: 'green' },
      finish: i === count - 1 ? 'holed' : { eastM: solution.ground.flag.eastM + 0.5, northM: solution.ground.flag.northM },
      penaltyStrokes: 0,
    }));
  }
}
