import type { Fault, Read, RoundHole, RoundPlace, RoundShot } from '@leeway/contract';
import {
  bearingRad,
  clubKey,
  type HoleGround,
  type HoleSolution,
  type Option,
  pacedFlag,
  placeAt,
  type PlanePoint,
  type PlayedFrom,
  type PlayedShot,
  type PlayerModel,
  swingKey,
  YARD_M,
} from '@leeway/engine';

/** Words for a strike that was no good one; anything else that was noted is good. */
const MISHIT = /fat|thin|top|heel|toe|shank|mis|duff|heavy|air/i;

/** What a round file is completed by. */
export interface PlayedOn {
  readonly solution: HoleSolution;
  readonly player: PlayerModel;
  readonly file: string;
}

/**
 * A hole of a round file as strokes that can be accounted for. What is not said is taken from what is: the first stroke from the tee, each next from where the
 * last finished, a lie as mapped there, the last stroke holed. A stroke that cannot be placed refuses the hole.
 */
export function playedHole({ hole, shots }: RoundHole, on: PlayedOn): Read<readonly PlayedShot[]> {
  const { ground } = on.solution;
  const played: PlayedShot[] = [];
  const refuse = (i: number, found: string, expected: string): Read<readonly PlayedShot[]> => ({
    faults: [{ code: 'stroke', level: 'refused', file: on.file, at: `hole ${hole}, shot ${i + 1}`, found, expected }],
  });
  for (const [i, shot] of shots.entries()) {
    const last = played.at(-1);
    if (last?.finish === 'holed') return refuse(i, 'a stroke after the ball was holed', 'the end of the hole');
    const tee = { at: ground.ball, lie: 'tee' } as const;
    const from = fromOf(shot, last, tee, ground, on.solution);
    if (from === undefined) return refuse(i, 'no place it was played from', 'from, or the finish of the stroke before');
    const next = shots[i + 1];
    const said = shot.finish === 'holed' ? 'holed' : shot.finish && placeOf(shot.finish, from.at, ground);
    const finish =
      said ?? (next?.from && placeOf(next.from, from.at, ground)) ?? (next === undefined ? 'holed' : undefined);
    if (finish === undefined)
      return refuse(i, 'no place where it finished', 'finish, or where the next was played from');
    if (next === undefined && finish !== 'holed')
      return refuse(i, 'a last stroke that was not holed', 'strokes until the ball is holed');
    const option = optionOf(shot, on.player);
    played.push({
      shot: i + 1,
      from,
      ...(option === undefined ? {} : { club: option.club, swing: option.swing }),
      ...(shot.aim === undefined ? {} : { aim: placeOf(shot.aim, from.at, ground) }),
      finish,
      ...(shot.strike === undefined
        ? {}
        : { strike: MISHIT.test(shot.strike) ? ('mishit' as const) : ('good' as const) }),
      penaltyStrokes: Number(shot.penalty ?? 0),
    });
  }
  return { value: played, faults: unknownClubs(hole, shots, played, on) };
}

function fromOf(
  shot: RoundShot,
  last: PlayedShot | undefined,
  tee: PlayedFrom,
  ground: HoleGround,
  solution: HoleSolution,
): PlayedFrom | undefined {
  const before = last === undefined ? tee.at : last.finish === 'holed' ? undefined : last.finish;
  const at = shot.from === undefined ? before : placeOf(shot.from, last?.from.at ?? tee.at, ground);
  if (at === undefined) return undefined;
  if (shot.lie !== undefined) return { at, lie: shot.lie };
  if (last === undefined) return { at, lie: 'tee' };
  const surface = solution.surfaceAt(at);
  return { at, lie: surface === 'tee' ? 'fairway' : surface === 'out' ? 'rough' : surface };
}

function placeOf(place: RoundPlace, seenFrom: PlanePoint, ground: HoleGround): PlanePoint {
  const { flag, frame, line, areas } = ground;
  if ('lon' in place) return frame.toPlane(place);
  if ('onFromFrontM' in place) {
    const green = areas.filter((a) => a.surface === 'green').map((a) => a.polygon);
    const paces = { on: place.onFromFrontM / YARD_M, in: place.inFromRightM / YARD_M };
    return pacedFlag({ kind: 'paces', ...paces, side: 'R' }, line, green) ?? flag;
  }
  const [beyond, right] =
    'beyondFlagM' in place
      ? [place.beyondFlagM, place.rightOfFlagM]
      : [place.beyondFlagPaces * YARD_M, place.rightOfFlagPaces * YARD_M];
  return placeAt(flag, bearingRad(seenFrom, flag), beyond, right);
}

/** The option of any spelling; a full swing where none is said. */
function optionOf({ club, swing = 'full' }: RoundShot, player: PlayerModel): Option | undefined {
  if (club === undefined) return undefined;
  return player.options.find((o) => clubKey(o.club) === clubKey(club) && swingKey(o.swing) === swingKey(swing));
}

const unknownClubs = (
  hole: string,
  shots: readonly RoundShot[],
  played: readonly PlayedShot[],
  { file, player }: PlayedOn,
): readonly Fault[] =>
  shots.flatMap((shot, i) =>
    shot.club === undefined || shot.lie === 'green' || played[i]?.club !== undefined || played[i]?.from.lie === 'green'
      ? []
      : [
          {
            code: 'unknown-club',
            level: 'note',
            file,
            at: `hole ${hole}, shot ${i + 1}`,
            found: `${shot.club}, ${shot.swing ?? 'full'}`,
            expected: `a club and swing of ${player.name}`,
            done: 'its loss is told, its choice is not',
          },
        ],
  );
