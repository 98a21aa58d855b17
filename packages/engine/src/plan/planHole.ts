import type { PlayerModel } from '../player/option.ts';
import type { BallState, HoleSolution, SolveStatus, Stroke } from '../value/solution.ts';
import { choose, type Choice } from '../choice/choose.ts';
import { doubtOf, type Doubt, type Nudge } from '../choice/doubt.ts';
import { type Scores, scoreChances, scoresOn } from '../choice/scores.ts';
import type { ShownStroke } from '../choice/shown.ts';
import { type NextBall, nextBall } from './relief.ts';

/** One shot of a plan. The doubt of a stroke holds its own and that of the shots planned after it. */
export interface PlannedShot {
  readonly choice: Choice;
  readonly doubtOf: (shown: ShownStroke) => Doubt;
  /** The ball is here by a drop or by stroke and distance. */
  readonly dropped: boolean;
  /** Chances of the score on the hole; `undefined` where it is not known how many strokes are played already. Plays thousands of holes. */
  readonly scoresOf?: (shown: ShownStroke) => Scores | undefined;
}

export interface HolePlan {
  readonly solution: HoleSolution;
  readonly status: SolveStatus;
  readonly shots: readonly PlannedShot[];
  /** Why the plan ends before the green: no option can be played from this lie, or it would go on for ever. */
  readonly stuck: BallState | undefined;
}

/** A shot as it was chosen, and the strokes played before it. */
interface Chosen {
  readonly choice: Choice;
  readonly dropped: boolean;
  readonly taken: number;
}

/** A plan of more shots than this is going round in circles. */
const MOST_SHOTS = 12;

/** The plan from the tee: each next shot from where the spot of the one before lies, or its drop, until the spot is on the green. */
export const planHole = (solution: HoleSolution, player: PlayerModel, named: readonly Stroke[] = []): HolePlan =>
  planFrom(solution, player, { at: solution.ground.ball, lie: 'tee' }, named);

/** The plan from any state. Named strokes are priced beside the first shot. */
export function planFrom(
  solution: HoleSolution,
  player: PlayerModel,
  from: BallState,
  named: readonly Stroke[] = [],
): HolePlan {
  const steps = planSteps(solution, player, [{ state: from, dropped: false }], named);
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
  }
}

/**
 * The plan through balls that lie already, in the order they are played, and on from the last of them; it stops after each shot, so that whoever
 * takes the steps can do something between. Named strokes are priced beside the first shot.
 */
export function* planSteps(
  solution: HoleSolution,
  player: PlayerModel,
  balls: readonly NextBall[],
  named: readonly Stroke[] = [],
): Generator<undefined, HolePlan> {
  const choices: Chosen[] = [];
  let ball = balls[0];
  let taken = ball?.state.lie === 'tee' && ball.state.at === solution.ground.ball ? 0 : NaN;
  while (ball !== undefined && choices.length < MOST_SHOTS) {
    const { state, dropped, penaltyStrokes = dropped ? 1 : 0 } = ball;
    taken += penaltyStrokes;
    const choice = choose(solution, player, state, choices.length === 0 ? named : []);
    if (choice === undefined) break;
    choices.push({ choice, dropped, taken });
    taken++;
    ball = balls[choices.length] ?? nextBall(solution, state, choice.answer.spot);
    yield;
  }
  return { solution, status: solution.status, shots: withDoubt(solution, choices), stuck: ball?.state };
}

/** From the last shot back: what is doubtful later is doubtful now, and adds up where two shots use one option. */
function withDoubt(solution: HoleSolution, choices: readonly Chosen[]): PlannedShot[] {
  const shots: PlannedShot[] = [];
  let later: readonly Nudge[] = [];
  const { par } = solution.ground;
  for (const { choice, dropped, taken } of choices.toReversed()) {
    const after = later;
    shots.unshift({
      choice,
      dropped,
      doubtOf: (shown) => doubtOf(shown.strokes, [...shown.nudges, ...after], shown.priced.option),
      scoresOf: ({ priced: { option, bearingRad } }) =>
        Number.isNaN(taken)
          ? undefined
          : scoresOn(scoreChances(solution.scores(choice.from, { option, bearingRad }), taken), par),
    });
    later = [...choice.answer.nudges, ...after];
  }
  return shots;
}
