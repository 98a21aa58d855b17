import type { Caution } from '../ground/hole.ts';
import type { Option, PlayerModel } from '../player/option.ts';
import type { BallState, Candidate, HoleSolution, Stroke } from '../value/solution.ts';
import { RAD_PER_DEG } from '../quantity/units.ts';
import { reachOf } from './caution.ts';
import { type Because, explain } from './explain.ts';
import { type Landmark, landmarksOf } from './landmark.ts';
import { type Lesson, worthLearning } from './learn.ts';
import { type TodaysNumber, todaysNumber } from './number.ts';
import { type PlainLine, plainLine } from './plainLine.ts';
import { type Reason, reasonsOf } from './reason.ts';
import { type Room, roomOf } from './room.ts';
import { showStroke, type ShownStroke } from './shown.ts';
import { simplest } from './simplest.ts';
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
}

/** Another choice and why it costs more. */
export interface Alternative {
  readonly shown: ShownStroke;
  readonly because: Because;
}

/** Alternatives cost at most this much more than the answer. */
const ALTERNATIVE_STROKES = 0.3;
/** The fast rule may be wrong by this much: every stroke so near the best is priced densely. */
const FAST_RULE_STROKES = 0.01;
const PRICED_AT_MOST = 12;
/** A flagged stroke gives way to one that costs less than this more. */
const FLAG_STROKES = 0.1;
const SEARCH_STEP_RAD = 1 * RAD_PER_DEG;
const SEARCH_STEPS = 30;
/** Two spots of one option are plainly distinct when this far apart. */
const DISTINCT_M = 10;
const DISTINCT_SHARE = 0.06;

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
  const priced = pricedCandidates(solution, from, solution.best(from, ALTERNATIVE_STROKES));
  const [optimum] = priced;
  if (optimum === undefined) return undefined;
  const answer = optimum.flagged.length === 0 ? optimum : (unflagged(solution, from, priced) ?? optimum);
  const heldBack = answer === optimum ? undefined : optimum;
  const marks = landmarksOf(ground);
  const plain = plainLine(solution, from, options);
  const room = roomOf(solution, from, answer.spot, answer.priced.bearingRad, answer.strokes);
  return {
    from,
    toFlagM: distanceM(from.at, ground.flag),
    landsM: distanceM(from.at, answer.priced.lands),
    finishesM: distanceM(from.at, answer.spot),
    number: todaysNumber(from, answer.priced),
    answer,
    startLine: startLine(ground, marks, from.at, answer.priced.bearingRad, distanceM(from.at, answer.aim)),
    plain,
    room,
    reasons: reasonsOf(solution, marks, { answer, plain, heldBack, room }),
    alternatives: alternativesOf(from, answer, priced, marks),
    simplest: simplest(solution, from, options, answer),
    heldBack,
    named: named.map((stroke) => showStroke(solution, from, stroke)),
    worthLearning: worthLearning(solution, from, player.learnable, answer.strokes),
  };
}

/** Densely priced candidates, cheapest first: all that the fast rule cannot tell from the best, and enough others for two alternatives. */
function pricedCandidates(solution: HoleSolution, from: BallState, candidates: readonly Candidate[]): ShownStroke[] {
  const [best] = candidates;
  if (best === undefined) return [];
  const shown: ShownStroke[] = [];
  const unmapped: ShownStroke[] = [];
  for (const candidate of candidates) {
    const close = candidate.strokes <= best.strokes + FAST_RULE_STROKES;
    if (shown.length >= PRICED_AT_MOST || (!close && distinct(from, shown).length > 3)) break;
    const stroke = showStroke(solution, from, candidate);
    (solution.isUnmapped(stroke.spot) ? unmapped : shown).push(stroke);
  }
  const usable = shown.length > 0 ? shown : unmapped;
  return usable.toSorted((a, b) => a.strokes - b.strokes);
}

/** Those that differ from all before them in option, or plainly in spot. */
function distinct(from: BallState, strokes: readonly ShownStroke[]): ShownStroke[] {
  const kept: ShownStroke[] = [];
  for (const s of strokes) if (kept.every((k) => areDistinct(from, k, s))) kept.push(s);
  return kept;
}

function areDistinct(from: BallState, a: ShownStroke, b: ShownStroke): boolean {
  if (a.priced.option !== b.priced.option) return true;
  return distanceM(a.spot, b.spot) >= Math.max(DISTINCT_M, DISTINCT_SHARE * distanceM(from.at, a.spot));
}

function alternativesOf(
  from: BallState,
  answer: ShownStroke,
  priced: readonly ShownStroke[],
  marks: ReadonlyMap<number, Landmark>,
): Alternative[] {
  const dearer = priced.filter((s) => s !== answer && s.strokes >= answer.strokes);
  return distinct(from, [answer, ...dearer])
    .slice(1, 3)
    .map((shown) => ({ shown, because: explain(marks, answer.priced, shown.priced) }));
}

/** The cheapest stroke within 0.1 of the best whose pattern reaches no caution: a candidate, or one with its aim turned away. */
function unflagged(solution: HoleSolution, from: BallState, priced: readonly ShownStroke[]): ShownStroke | undefined {
  const limit = (priced[0]?.strokes ?? 0) + FLAG_STROKES;
  const clear = priced.filter((s) => s.flagged.length === 0 && s.strokes < limit);
  const turned = distinct(from, priced)
    .filter((s) => s.strokes < limit)
    .flatMap((s) => turnedAway(solution, from, s, limit));
  return [...clear, ...turned].toSorted((a, b) => a.strokes - b.strokes)[0];
}

function turnedAway(solution: HoleSolution, from: BallState, shown: ShownStroke, limit: number): ShownStroke[] {
  const { option, bearingRad } = shown.priced;
  const pattern = option.byLie[from.lie];
  if (pattern === undefined || shown.flagged.length === 0) return [];
  const runM = distanceM(from.at, shown.aim) - (pattern.parts[0]?.alongM ?? 0);
  const reach: (bearing: number) => readonly Caution[] = reachOf(pattern, runM, from, solution.ground.cautions);
  return [-1, 1].flatMap((side) => {
    for (let k = 1; k <= SEARCH_STEPS; k++) {
      const stroke = { option, bearingRad: bearingRad + side * k * SEARCH_STEP_RAD };
      if (solution.strokesOf(from, stroke) > limit) return [];
      if (reach(stroke.bearingRad).length > 0) continue;
      const turned = showStroke(solution, from, stroke);
      return turned.strokes < limit && !solution.isUnmapped(turned.spot) ? [turned] : [];
    }
    return [];
  });
}

/** The option of a player by club and swing, as the player file spells them. */
export const optionNamed = (player: PlayerModel, club: string, swing: string): Option | undefined =>
  player.options.find((o) => o.club === club && o.swing === swing);
