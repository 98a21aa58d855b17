import { type Day, REFERENCE } from '../day/day.ts';
import type { HoleGround } from '../ground/hole.ts';
import { clubKey } from '../player/club.ts';
import type { PlayerModel } from '../player/option.ts';
import { canPlay, solveHole } from '../value/solve.ts';

/** Clubs that the Rules allow in a round, the putter among them. */
const MOST_CLUBS = 14;
/** A club that costs the round less than this when it stays at home earns nothing. */
const EARNS_STROKES = 0.02;

/** What one club is worth in a round: how many more strokes the round costs without it, everything planned anew. */
export interface ClubWorth {
  readonly club: string;
  readonly strokes: number;
  readonly earns: boolean;
}

export interface BagPlan {
  /** Expected strokes of the holes with every club. */
  readonly strokes: number;
  /** What each club is worth while all others are in the bag, the least first. */
  readonly worth: readonly ClubWorth[];
  /** The clubs to carry beside the putter, thirteen at most, and those to leave at home, in the order in which they were left. */
  readonly carry: readonly string[];
  readonly leave: readonly string[];
  /** Expected strokes with those that are carried. */
  readonly carriedStrokes: number;
}

const strokesOf = (grounds: readonly HoleGround[], player: PlayerModel, day: Day): number =>
  grounds.reduce((sum, ground) => {
    const [best] = solveHole(ground, player, day).best({ at: ground.ball, lie: 'tee' }, 0);
    return sum + (best?.strokes ?? Infinity);
  }, 0);

const without = (player: PlayerModel, club: string): PlayerModel => ({
  ...player,
  options: player.options.filter((o) => clubKey(o.club) !== clubKey(club)),
});

const clubsOf = (player: PlayerModel): string[] => {
  const names = new Map(player.options.map((o) => [clubKey(o.club), o.club]));
  return [...names.values()];
};

/**
 * Which clubs a round is played with, by solving its holes again without each: the one that costs least is left at home until thirteen and a putter are
 * left, and after that any that earns nothing. The player's options are taken as they are: a player who states neither more clubs nor patterns
 * has nothing to leave. `told` hears of every club as it is weighed.
 */
export function planBag(
  grounds: readonly HoleGround[],
  player: PlayerModel,
  day: Day = REFERENCE,
  told: (club: string) => void = () => undefined,
): BagPlan {
  const weigh = (of: PlayerModel, strokes: number): ClubWorth[] =>
    clubsOf(of)
      .map((club): ClubWorth => {
        told(club);
        const less = without(of, club);
        const more = canPlay(less) ? strokesOf(grounds, less, day) - strokes : Infinity;
        return { club, strokes: more, earns: more >= EARNS_STROKES };
      })
      .toSorted((a, b) => a.strokes - b.strokes);
  const strokes = strokesOf(grounds, player, day);
  const worth = weigh(player, strokes);
  let [carried, carriedStrokes, next] = [player, strokes, worth];
  const leave: string[] = [];
  for (;;) {
    const [least] = next;
    const many = clubsOf(carried).length >= MOST_CLUBS;
    if (least === undefined || !(many || !least.earns) || least.strokes === Infinity) break;
    leave.push(least.club);
    carried = without(carried, least.club);
    carriedStrokes += least.strokes;
    next = weigh(carried, carriedStrokes);
  }
  return { strokes, worth, carry: clubsOf(carried), leave, carriedStrokes };
}
