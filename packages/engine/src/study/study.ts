import { choose, type Choice } from '../choice/choose.ts';
import type { HoleGround } from '../ground/hole.ts';
import type { PlayerModel } from '../player/option.ts';
import type { PlanePoint } from '../quantity/points.ts';
import type { BallState, HoleSolution } from '../value/solution.ts';
import { solveHole } from '../value/solve.ts';

/** How good an answer must be: quick enough to follow a finger, or as good as a hole solved from scratch. */
export type Grade = 'following' | 'settled';

/**
 * One hole held open for one player, so that a moved flag costs less than a hole solved afresh. Two studies share nothing that is written to.
 * Its `solution` is good until the flag is moved again.
 */
export class Study {
  readonly player: PlayerModel;
  private held: HoleSolution;

  constructor(ground: HoleGround, player: PlayerModel) {
    this.player = player;
    this.held = solveHole(ground, player);
  }

  get ground(): HoleGround {
    return this.held.ground;
  }

  get solution(): HoleSolution {
    return this.held;
  }

  /** Puts the flag at a place of the hole's plane. */
  moveFlag(flag: PlanePoint, _grade: Grade = 'settled'): void {
    this.held = solveHole({ ...this.ground, flag, flagFrom: 'given' }, this.player);
  }

  /** The choice from a state; `undefined` when nothing can be played from its lie. */
  ask(from: BallState): Choice | undefined {
    return choose(this.held, this.player, from);
  }
}
