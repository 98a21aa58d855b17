import { type Day, REFERENCE } from '../day/day.ts';
import type { HoleGround } from '../ground/hole.ts';
import { lengthM } from '../geometry/segment.ts';
import type { PlayerModel } from '../player/option.ts';
import { solveHole } from '../value/solve.ts';

/** A round from one set of tees. */
export interface TeesPlan {
  readonly name: string;
  readonly lengthM: number;
  readonly par: number;
  readonly strokes: number;
  /** Share of the holes that are expected to cost no more than a stroke over par. */
  readonly reachable: number;
}

/** A hole counts as within reach when no more than this over par is expected. */
const WITHIN_REACH_STROKES = 1;

/**
 * Sets of tees by what the round costs from each, solved anew, the longest first. They suit, of those from which at least half of the holes come within
 * a stroke of par, the longest; without any, the shortest.
 */
export function planTees(
  sets: readonly { readonly name: string; readonly holes: readonly HoleGround[] }[],
  player: PlayerModel,
  day: Day = REFERENCE,
): { readonly tees: readonly TeesPlan[]; readonly suits: string | undefined } {
  const tees = sets
    .map(({ name, holes }): TeesPlan => {
      const costs = holes.map((ground) => ({
        ground,
        strokes: solveHole(ground, player, day).best({ at: ground.ball, lie: 'tee' }, 0)[0]?.strokes ?? Infinity,
      }));
      const near = costs.filter(({ ground, strokes }) => strokes <= ground.par + WITHIN_REACH_STROKES).length;
      return {
        name,
        lengthM: holes.reduce((sum, h) => sum + lengthM(h.line), 0),
        par: holes.reduce((sum, h) => sum + h.par, 0),
        strokes: costs.reduce((sum, c) => sum + c.strokes, 0),
        reachable: holes.length === 0 ? 0 : near / holes.length,
      };
    })
    .toSorted((a, b) => b.lengthM - a.lengthM);
  return { tees, suits: (tees.find((t) => t.reachable >= 0.5) ?? tees.at(-1))?.name };
}
