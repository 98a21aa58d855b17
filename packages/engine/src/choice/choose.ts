import type { PlayerModel } from '../player/option.ts';
import type { BallState, HoleSolution, Stroke } from '../value/solution.ts';
import { distinct, pricedCandidates, unflagged } from './candidates.ts';
import { posteriorMean } from './doubt.ts';
import { type Because, explain } from './explain.ts';
import { landmarksOf } from './landmark.ts';
import { type Lesson, worthLearning } from './learn.ts';
import { type TodaysNumber, todaysNumber } from './number.ts';
import { type PlainLine, plainLine } from './plainLine.ts';
import { type Reason, reasonsOf } from './reason.ts';
import { type Room, roomOf } from './room.ts';
import { type Contender, showStroke, type ShownStroke, withNudges } from './shown.ts';
import { simplest } from './simplest.ts';
import { type Settling, settling } from './settle.ts';
import { type StartLine, startLine } from './startLine.ts';
import { distanceM } from '../geometry/segment.ts';

/** The choice for one shot, with everything that is said about it. */
export interface Choice {
  readonly from: BallState;
  readonly toFlagM: number;
  /** Straight distances from the ball to where the good strike's mean pitches and finishes. */
  readonly landsM: number;
  readonly finishesM: number;
  readonly number: TodaysNumber;
  readonly answer: ShownStroke;
  readonly startLine: StartLine | undefined;
  readonly plain: PlainLine | undefined;
  readonly room: readonly Room[];
  readonly reasons: readonly Reason[];
  readonly alternatives: readonly Alternative[];
  readonly simplest: ShownStroke | undefined;
  /** The cheapest stroke, when it is not shown first because of what it reaches. */
  readonly heldBack: ShownStroke | undefined;
  readonly named: readonly ShownStroke[];
  readonly worthLearning: readonly Lesson[];
  /** The choice hangs on what is not known: the balls that would settle it against the next best. */
  readonly settling: Settling | undefined;
}

/** What the slope of a green may make of a putt: spots that differ by less, and by the putt alone, are a tie where it is not known. */
const SLOPE_STROKES = 0.05;

/** Another choice and why it costs more. */
export interface Alternative {
  readonly shown: ShownStroke;
  readonly because: Because;
  /** It differs by the putt alone, and too little for a green whose slope is not known. */
  readonly putts: boolean;
}

/**
 * The choice from a state: the option and aim that cost fewest strokes, whose spot is on mapped ground, and, unless everything near it is
 * flagged, whose pattern reaches nothing it should not. `undefined` when no option can be played from the lie.
 */
export function choose(
  solution: HoleSolution,
  player: PlayerModel,
  from: BallState,
  named: readonly Stroke[] = [],
): Choice | undefined {
  const { ground } = solution;
  const options = player.options.filter((o) => o.byLie[from.lie] !== undefined);
  const priced = pricedCandidates(solution, from);
  const optimum = leastOverPosterior(solution, from, priced);
  if (optimum === undefined) return undefined;
  const chosen = optimum.flagged.length === 0 ? optimum : (unflagged(solution, from, priced) ?? optimum);
  const answer = withNudges(solution, from, chosen);
  const heldBack = chosen === optimum ? undefined : withNudges(solution, from, optimum);
  const marks = landmarksOf(ground);
  const plain = plainLine(solution, from, options, distanceM(from.at, answer.spot));
  const room = roomOf(solution, from, answer.spot, answer.priced.bearingRad, answer.strokes);
  const alternatives = alternativesOf(from, chosen, priced).map((other): Alternative => {
    const because = explain(marks, answer.priced, other.priced);
    const putts =
      because.kind === 'putt' && solution.greenTakenAsFlat && other.strokes - answer.strokes < SLOPE_STROKES;
    return { shown: withNudges(solution, from, other), because, putts };
  });
  const next = alternatives.find(({ shown }) => shown.priced.option !== answer.priced.option);
  return {
    from,
    toFlagM: distanceM(from.at, ground.flag),
    landsM: distanceM(from.at, answer.priced.lands),
    finishesM: distanceM(from.at, answer.spot),
    number: todaysNumber(solution, from, answer.priced),
    answer,
    startLine: startLine(ground, marks, from.at, answer.priced.bearingRad, distanceM(from.at, answer.aim)),
    plain,
    room,
    reasons: reasonsOf(solution, marks, { answer, plain, heldBack, room }),
    alternatives,
    simplest: simplest(solution, from, options, answer),
    settling: next && settling(next.shown, answer),
    heldBack,
    named: named.map((stroke) => showStroke(solution, from, stroke)),
    worthLearning: worthLearning(solution, from, player.learnable, answer.strokes),
  };
}

/** Options this near the cheapest are compared over the posterior of their patterns too, so many of them. */
const NEAR_STROKES = 0.03;
const COMPARED = 3;

/** The cheapest stroke, of options that are close by their mean over what is not known of their patterns; stated patterns have nothing of the kind. */
function leastOverPosterior(
  solution: HoleSolution,
  from: BallState,
  priced: readonly Contender[],
): Contender | undefined {
  const [first] = priced;
  if (first === undefined) return undefined;
  const near = priced
    .filter((s, i) => priced.findIndex((other) => other.priced.option === s.priced.option) === i)
    .filter((s) => s.strokes < first.strokes + NEAR_STROKES)
    .slice(0, COMPARED);
  if (near.length < 2) return first;
  const mean = (s: Contender): number => posteriorMean(s.strokes, withNudges(solution, from, s).nudges);
  return near.map((s) => ({ s, mean: mean(s) })).reduce((a, b) => (b.mean < a.mean ? b : a)).s;
}

/** The next best that are another option or plainly another spot. */
function alternativesOf(from: BallState, chosen: Contender, priced: readonly Contender[]): Contender[] {
  const dearer = priced.filter((s) => s !== chosen && s.strokes >= chosen.strokes);
  return distinct(from, [chosen, ...dearer]).slice(1, 3);
}
