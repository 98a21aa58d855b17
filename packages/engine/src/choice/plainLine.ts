import type { PlanePoint } from '../quantity/points.ts';
import type { BallState, HoleSolution, Stroke } from '../value/solution.ts';
import { RAD_PER_DEG } from '../quantity/units.ts';
import type { Option } from '../player/option.ts';
import { showStroke, type ShownStroke } from './shown.ts';
import { distanceM } from '../geometry/segment.ts';
import { bearingRad, goodStrike, placeAt } from './view.ts';

/** What a player does who does not choose: straight at the flag when it can be reached, else at the middle of the fairway. */
export interface PlainLine {
  readonly kind: 'flag' | 'fairway';
  readonly shown: ShownStroke;
}

const FAIRWAY_WINDOW_RAD = 40 * RAD_PER_DEG;
const FAIRWAY_STEP_RAD = 0.5 * RAD_PER_DEG;

/** The flag is in reach of an option whose good strikes finish within one standard deviation of it, or beyond. */
function reaches(from: BallState, option: Option, toFlagM: number): boolean {
  const good = goodStrike(from, { option });
  return good !== undefined && good.alongM + good.sdAlongM >= toFlagM;
}

/** The plain line of a shot, played with the option that costs least along it. */
export function plainLine(solution: HoleSolution, from: BallState, options: readonly Option[]): PlainLine | undefined {
  const { flag } = solution.ground;
  const toFlagM = distanceM(from.at, flag);
  const reaching = options.filter((option) => reaches(from, option, toFlagM));
  if (reaching.length > 0) {
    const atFlag = bearingRad(from.at, flag);
    const shown = cheapest(
      solution,
      from,
      reaching.map((option) => ({ option, bearingRad: atFlag })),
    );
    return shown === undefined ? undefined : { kind: 'flag', shown };
  }
  const strokes = options.flatMap((option): Stroke[] => {
    const alongM = goodStrike(from, { option })?.alongM;
    const middle = alongM === undefined ? undefined : middleOfFairway(solution, from.at, alongM);
    return middle === undefined ? [] : [{ option, bearingRad: bearingRad(from.at, middle) }];
  });
  const shown = cheapest(solution, from, strokes);
  return shown === undefined ? undefined : { kind: 'fairway', shown };
}

function cheapest(solution: HoleSolution, from: BallState, strokes: readonly Stroke[]): ShownStroke | undefined {
  let best: { stroke: Stroke; strokes: number } | undefined;
  for (const stroke of strokes) {
    const cost = solution.strokesOf(from, stroke);
    if (best === undefined || cost < best.strokes) best = { stroke, strokes: cost };
  }
  return best && showStroke(solution, from, best.stroke);
}

/**
 * The middle of the fairway `alongM` metres from a place: the middle of the arc over fairway, of several the one nearest the flag's direction;
 * `undefined` where the arc crosses none.
 */
export function middleOfFairway(solution: HoleSolution, at: PlanePoint, alongM: number): PlanePoint | undefined {
  const middle = bearingRad(at, solution.ground.flag);
  const half = Math.round(FAIRWAY_WINDOW_RAD / FAIRWAY_STEP_RAD);
  const arcs: number[] = [];
  let first: number | undefined;
  for (let k = -half; k <= half + 1; k++) {
    const place = placeAt(at, middle + k * FAIRWAY_STEP_RAD, alongM);
    const on = k <= half && solution.surfaceAt(place) === 'fairway';
    if (on) first ??= k;
    else if (first !== undefined) {
      arcs.push((first + k - 1) / 2);
      first = undefined;
    }
  }
  const nearest = arcs.toSorted((a, b) => Math.abs(a) - Math.abs(b))[0];
  return nearest === undefined ? undefined : placeAt(at, middle + nearest * FAIRWAY_STEP_RAD, alongM);
}
