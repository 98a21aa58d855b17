import type { Option } from '../player/option.ts';
import type { PlanePoint } from '../quantity/points.ts';
import type { BallState, HoleSolution, Stroke } from '../value/solution.ts';
import { isTie } from './doubt.ts';
import { middleOfFairway } from './plainLine.ts';
import { contend, type ShownStroke, withNudges } from './shown.ts';
import { centroid } from '../geometry/polygon.ts';
import { distanceM } from '../geometry/segment.ts';
import { bearingRad, turnRad } from './view.ts';

/** Shares of the turn from the answer's best aim to the plain mark that are tried, plainest first. */
const SHARES = [1, 0.75, 0.5, 0.25, 0];
/** A stroke that costs more than this more is never offered as a tie, however little is known. */
const WITHIN_STROKES = 0.1;
/** The plainer choice of the same option must bring the spot this much nearer the mark. */
const NEARER_M = 2;

/**
 * A plainer choice within a tie of the answer: a full swing, with its spot as near the middle of the green (out of reach: of the fairway) as the tie
 * allows. `undefined` when the answer is already the plainest.
 */
export function simplest(
  solution: HoleSolution,
  from: BallState,
  options: readonly Option[],
  answer: ShownStroke,
): ShownStroke | undefined {
  const full = options.filter((o) => o.full);
  const found = full.flatMap((option): ShownStroke[] => {
    const plainest = plainestOf(solution, from, option, answer);
    return plainest === undefined ? [] : [plainest];
  });
  const away = (s: ShownStroke): number => awayFromMarkM(solution, from, s);
  const plainest = found.toSorted((a, b) => away(a) - away(b) || a.strokes - b.strokes)[0];
  if (plainest === undefined) return undefined;
  if (answer.priced.option.full && away(answer) - away(plainest) < NEARER_M) return undefined;
  return plainest;
}

function plainestOf(
  solution: HoleSolution,
  from: BallState,
  option: Option,
  answer: ShownStroke,
): ShownStroke | undefined {
  const best = option === answer.priced.option ? answer.priced : solution.bestOf(from, option);
  if (best === undefined || best.strokes > answer.strokes + WITHIN_STROKES) return undefined;
  const finish = solution.placesOf(from, best)?.finishes;
  if (finish === undefined) return undefined;
  const mark = markOf(solution, from, distanceM(from.at, finish));
  const turn = turnRad(best.bearingRad, bearingRad(from.at, mark));
  for (const share of SHARES) {
    const stroke: Stroke = { option, bearingRad: best.bearingRad + share * turn };
    if (solution.strokesOf(from, stroke) > answer.strokes + WITHIN_STROKES) continue;
    const contender = contend(solution, from, stroke);
    if (contender.flagged.length > 0 || solution.isUnmapped(contender.spot)) continue;
    const shown = withNudges(solution, from, contender);
    if (isTie(shown, answer)) return shown;
  }
  return undefined;
}

/** The plain player's mark: the middle of the green, or of the fairway at the spot's distance when the green is farther off than that. */
function markOf(solution: HoleSolution, from: BallState, spotM: number): PlanePoint {
  const { ground } = solution;
  const green = ground.areas.find((a) => a.surface === 'green');
  const middle = green === undefined ? ground.flag : centroid(green.polygon.outer);
  if (solution.surfaceAt(middle) === 'green' && distanceM(from.at, middle) > spotM * SHORT_OF_GREEN) {
    return middleOfFairway(solution, from.at, spotM) ?? middle;
  }
  return middle;
}

/** A spot short of the middle of the green by more than this share is a lay-up. */
const SHORT_OF_GREEN = 1.2;

const awayFromMarkM = (solution: HoleSolution, from: BallState, shown: ShownStroke): number =>
  distanceM(shown.spot, markOf(solution, from, distanceM(from.at, shown.spot)));
