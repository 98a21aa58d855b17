import type { PlanePoint } from '../quantity/points.ts';
import type { BallState, HoleSolution, Stroke } from '../value/solution.ts';
import { RAD_PER_DEG } from '../quantity/units.ts';
import type { NormalPart, Option } from '../player/option.ts';
import { showStroke, type ShownStroke } from './shown.ts';
import { distanceM, distanceToLineM } from '../geometry/segment.ts';
import { bearingRad, goodStrike, placeAt } from './view.ts';

/**
 * What a player does who does not choose: straight at the flag when it can be reached, else at the middle of the fairway. What the wind takes the
 * good strike aside is allowed for, as any player would; the player's own bias is not.
 */
export interface PlainLine {
  readonly kind: 'flag' | 'fairway';
  readonly shown: ShownStroke;
}

const FAIRWAY_WINDOW_RAD = 40 * RAD_PER_DEG;
const FAIRWAY_STEP_RAD = 0.5 * RAD_PER_DEG;
/** Fairway farther than this from the hole line is another hole's. */
const OWN_FAIRWAY_M = 40;
/** An option reaches the flag when its good strikes finish within this many standard deviations short of it, or this many metres. */
const SHORT_SD = 1.5;
const SHORT_M = 8;

const shortfallM = (good: NormalPart): number => Math.max(SHORT_M, SHORT_SD * good.sdAlongM);

/** The options that are played at a flag: those that reach it, and those as near to it as the nearest. None when nothing reaches. */
function atFlagOptions(solution: HoleSolution, from: BallState, options: readonly Option[], toFlagM: number): Option[] {
  const atFlag = bearingRad(from.at, solution.ground.flag);
  const all = options.flatMap((option) => {
    const good = goodStrike(solution, from, { option, bearingRad: atFlag });
    return good === undefined ? [] : [{ option, good }];
  });
  if (all.every(({ good }) => good.alongM + shortfallM(good) < toFlagM)) return [];
  const nearestM = Math.min(...all.map(({ good }) => Math.abs(good.alongM - toFlagM)));
  return all
    .filter(({ good }) => good.alongM + Math.max(nearestM, shortfallM(good)) >= toFlagM)
    .map(({ option }) => option);
}

/** A plain player does not lay up to find fairway: the option goes at least this share as far as the answer. */
const FAR_SHARE = 0.75;

/** The plain line of a shot whose answer finishes `answerM` away, played with the option that costs least along it. */
export function plainLine(
  solution: HoleSolution,
  from: BallState,
  options: readonly Option[],
  answerM: number,
): PlainLine | undefined {
  const { flag } = solution.ground;
  const reaching = atFlagOptions(solution, from, options, distanceM(from.at, flag));
  if (reaching.length > 0) {
    const atFlag = bearingRad(from.at, flag);
    const shown = cheapest(
      solution,
      from,
      reaching.map((option) => againstDrift(solution, from, { option, bearingRad: atFlag })),
    );
    return shown === undefined ? undefined : { kind: 'flag', shown };
  }
  const strokes = options.flatMap((option): Stroke[] => {
    const alongM = goodStrike(solution, from, { option, bearingRad: bearingRad(from.at, flag) })?.alongM;
    const middle =
      alongM === undefined || alongM < FAR_SHARE * answerM ? undefined : middleOfFairway(solution, from.at, alongM);
    return middle === undefined
      ? []
      : [againstDrift(solution, from, { option, bearingRad: bearingRad(from.at, middle) })];
  });
  const shown = cheapest(solution, from, strokes);
  return shown === undefined ? undefined : { kind: 'fairway', shown };
}

const sideRad = ({ alongM, acrossM }: NormalPart): number => Math.atan2(acrossM, alongM);

/** The same stroke pointed upwind by as much as the day turns its good strike. */
function againstDrift(solution: HoleSolution, from: BallState, stroke: Stroke): Stroke {
  const usual = stroke.option.byLie[from.lie]?.parts[0];
  let { bearingRad: pointed } = stroke;
  for (let round = 0; usual !== undefined && round < 2; round++) {
    const today = goodStrike(solution, from, { ...stroke, bearingRad: pointed });
    if (today !== undefined) pointed = stroke.bearingRad - (sideRad(today) - sideRad(usual));
  }
  return { ...stroke, bearingRad: pointed };
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
 * The middle of the hole's fairway `alongM` metres from a place: the middle of the arc over fairway, of several the one nearest the hole line;
 * `undefined` where the arc crosses none within 40 m of the line.
 */
export function middleOfFairway(solution: HoleSolution, at: PlanePoint, alongM: number): PlanePoint | undefined {
  const { flag, line } = solution.ground;
  const towards = bearingRad(at, flag);
  const placeOf = (k: number): PlanePoint => placeAt(at, towards + k * FAIRWAY_STEP_RAD, alongM);
  const half = Math.round(FAIRWAY_WINDOW_RAD / FAIRWAY_STEP_RAD);
  const middles: { place: PlanePoint; awayM: number }[] = [];
  let first: number | undefined;
  for (let k = -half; k <= half + 1; k++) {
    const on = k <= half && solution.surfaceAt(placeOf(k)) === 'fairway';
    if (on) first ??= k;
    else if (first !== undefined) {
      const place = placeOf((first + k - 1) / 2);
      middles.push({ place, awayM: distanceToLineM(place, line) });
      first = undefined;
    }
  }
  const [nearest] = middles.toSorted((a, b) => a.awayM - b.awayM);
  return nearest !== undefined && nearest.awayM <= OWN_FAIRWAY_M ? nearest.place : undefined;
}
