import { distanceM } from '../geometry/segment.ts';
import type { Option, PlayerModel } from '../player/option.ts';
import { puttsAt, puttsOf } from '../value/putts.ts';
import type { BallState, HoleSolution, Priced } from '../value/solution.ts';
import type { PlayedFrom } from './played.ts';

/** The best of every option from a state, priced densely. */
export interface Bests {
  readonly state: BallState;
  readonly byOption: ReadonlyMap<Option, Priced>;
  readonly best: Priced;
}

/** Expected strokes of one player on one hole, each state asked once, so that the strokes of a hole add up to its score. */
export class StrokesLeft {
  readonly solution: HoleSolution;
  readonly player: PlayerModel;
  private readonly putts: ReturnType<typeof puttsOf>;
  private readonly asked = new Map<string, Bests | undefined>();

  constructor(solution: HoleSolution, player: PlayerModel) {
    this.solution = solution;
    this.player = player;
    this.putts = puttsOf(player.putting);
  }

  /** Strokes still to play; on a green the map's putts there, or the putting table's where the map has no green. `undefined` from a lie that nothing is played from. */
  from({ at, lie }: PlayedFrom): number | undefined {
    const { solution } = this;
    if (lie !== 'green') return this.bests({ at, lie })?.best.strokes;
    return solution.surfaceAt(at) === 'green'
      ? solution.strokesAtRest(at, { at, lie: 'fairway' })
      : puttsAt(this.putts, distanceM(at, solution.ground.flag));
  }

  bests(state: BallState): Bests | undefined {
    const key = `${state.at.eastM.toFixed(3)} ${state.at.northM.toFixed(3)} ${state.lie}`;
    if (!this.asked.has(key)) this.asked.set(key, this.ask(state));
    return this.asked.get(key);
  }

  private ask(state: BallState): Bests | undefined {
    const { solution, player } = this;
    const byOption = new Map<Option, Priced>();
    for (const option of player.options) {
      const found = solution.bestOf(state, option);
      if (found !== undefined) byOption.set(option, solution.price(state, found));
    }
    const [best] = [...byOption.values()].toSorted((a, b) => a.strokes - b.strokes);
    return best && { state, byOption, best };
  }
}
