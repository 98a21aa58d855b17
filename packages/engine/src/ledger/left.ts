import { distanceM } from '../geometry/segment.ts';
import type { Option, PlayerModel } from '../player/option.ts';
import { puttsAt, puttsOf } from '../value/putts.ts';
import type { BallState, Candidate, HoleSolution, Priced } from '../value/solution.ts';
import type { PlayedFrom } from './played.ts';

/** How far the scan's strokes may be from dense ones. */
const SCAN_ERROR = 0.03;

/** The best from a state, and the best of one option or of one length of swing; priced densely, each when it is first asked for. */
export class Bests {
  readonly state: BallState;
  readonly best: Priced;
  private readonly solution: HoleSolution;
  private readonly scanned: readonly Candidate[];
  private readonly priced = new Map<Option, Priced | undefined>();

  constructor(solution: HoleSolution, state: BallState, scanned: readonly Candidate[], best: Priced) {
    this.solution = solution;
    this.state = state;
    this.scanned = scanned;
    this.best = best;
    this.priced.set(best.option, best);
  }

  of(option: Option): Priced | undefined {
    if (!this.priced.has(option)) {
      const found = this.scanned.find((c) => c.option === option);
      this.priced.set(option, found && this.solution.price(this.state, found));
    }
    return this.priced.get(option);
  }

  /** Of the options with this length of swing. */
  ofSwing(swing: string): Priced | undefined {
    const found = this.scanned.find((c) => c.option.swing === swing);
    return found && this.of(found.option);
  }
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
    const scanned = player.options
      .flatMap((option) => solution.bestOf(state, option) ?? [])
      .toSorted((a, b) => a.strokes - b.strokes);
    const close = scanned.filter((c) => c.strokes < (scanned[0]?.strokes ?? 0) + SCAN_ERROR);
    const [best] = close.map((c) => solution.price(state, c)).toSorted((a, b) => a.strokes - b.strokes);
    return best && new Bests(solution, state, scanned, best);
  }
}
