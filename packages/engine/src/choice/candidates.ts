import { distanceM } from '../geometry/segment.ts';
import { RAD_PER_DEG } from '../quantity/units.ts';
import type { BallState, Candidate, HoleSolution } from '../value/solution.ts';
import { reachOf } from './caution.ts';
import { contend, type Contender } from './shown.ts';
import { offsetOf, placeAt } from './view.ts';

/** Alternatives cost at most this much more than the answer. */
const ALTERNATIVE_STROKES = 0.3;
/** How far off the best to look when every spot nearer than that is on unmapped ground. */
const FAR_STROKES = 3;
/** The fast rule may be wrong by this much: every stroke so near the best is priced densely. */
const FAST_RULE_STROKES = 0.01;
const PRICED_AT_MOST = 12;
const DISTINCT_WANTED = 4;
/** A flagged stroke gives way to one that costs less than this more. */
const FLAG_STROKES = 0.1;
const TURN_STEP_RAD = 1 * RAD_PER_DEG;
const TURN_STEPS = 40;
const HALVINGS = 4;
/** Two spots of one option are plainly distinct when this far apart. */
const DISTINCT_M = 10;
const DISTINCT_SHARE = 0.06;

/** Densely priced strokes whose spots lie on mapped ground, cheapest first; on unmapped ground only when no aim of any option avoids it. */
export function pricedCandidates(solution: HoleSolution, from: BallState): Contender[] {
  const near = showSome(solution, from, solution.best(from, ALTERNATIVE_STROKES));
  const mapped = near.flatMap((s) => onMapped(solution, from, s));
  if (mapped.length > 0) return cheapestFirst(mapped);
  const far = showSome(solution, from, solution.best(from, FAR_STROKES), Number.POSITIVE_INFINITY);
  const found = far.flatMap((s) => onMapped(solution, from, s));
  return cheapestFirst(found.length > 0 ? found : near);
}

const cheapestFirst = (strokes: readonly Contender[]): Contender[] => strokes.toSorted((a, b) => a.strokes - b.strokes);

/** All that the fast rule cannot tell from the best, and enough others for two alternatives. */
function showSome(
  solution: HoleSolution,
  from: BallState,
  candidates: readonly Candidate[],
  most = PRICED_AT_MOST,
): Contender[] {
  const shown: Contender[] = [];
  const limit = (candidates[0]?.strokes ?? 0) + FAST_RULE_STROKES;
  for (const candidate of candidates) {
    const enough = candidate.strokes > limit && distinct(from, shown).length >= DISTINCT_WANTED;
    if (shown.length >= most || (enough && most === PRICED_AT_MOST)) break;
    shown.push(contend(solution, from, candidate));
  }
  return shown;
}

/** Those that differ from all before them in option, or plainly in spot. */
export function distinct(from: BallState, strokes: readonly Contender[]): Contender[] {
  const kept: Contender[] = [];
  for (const s of strokes) if (kept.every((k) => areDistinct(from, k, s))) kept.push(s);
  return kept;
}

function areDistinct(from: BallState, a: Contender, b: Contender): boolean {
  if (a.priced.option !== b.priced.option) return true;
  return distanceM(a.spot, b.spot) >= Math.max(DISTINCT_M, DISTINCT_SHARE * distanceM(from.at, a.spot));
}

/** The stroke itself, or turned to either side until its spot is on mapped ground. */
function onMapped(solution: HoleSolution, from: BallState, shown: Contender): Contender[] {
  if (!solution.isUnmapped(shown.spot)) return [shown];
  const { alongM, acrossM } = offsetOf(shown.spot, from.at, shown.priced.bearingRad);
  const allowed = (bearing: number): boolean => !solution.isUnmapped(placeAt(from.at, bearing, alongM, acrossM));
  return turned(solution, from, shown, allowed, Number.POSITIVE_INFINITY).filter((s) => !solution.isUnmapped(s.spot));
}

/** The cheapest stroke within 0.1 of the best whose pattern reaches no caution: a candidate, or one with its aim turned away. */
export function unflagged(
  solution: HoleSolution,
  from: BallState,
  priced: readonly Contender[],
): Contender | undefined {
  const limit = (priced[0]?.strokes ?? 0) + FLAG_STROKES;
  const within = priced.filter((s) => s.strokes < limit);
  const away = distinct(from, within).flatMap((s) => {
    const { pattern } = s.priced;
    if (s.flagged.length === 0) return [];
    const runM = distanceM(from.at, s.aim) - (pattern.parts[0]?.alongM ?? 0);
    const reach = reachOf(pattern, runM, from, solution.ground.cautions);
    return turned(solution, from, s, (bearing) => reach(bearing).length === 0, limit);
  });
  const clear = [...within, ...away].filter((s) => s.flagged.length === 0 && !solution.isUnmapped(s.spot));
  return cheapestFirst(clear.filter((s) => s.strokes < limit))[0];
}

/** A stroke turned to the left and to the right by the least that is allowed, found in steps and then halved down. */
function turned(
  solution: HoleSolution,
  from: BallState,
  shown: Contender,
  allowed: (bearingRad: number) => boolean,
  limit: number,
): Contender[] {
  const { option, bearingRad } = shown.priced;
  return [-1, 1].flatMap((side) => {
    for (let k = 1; k <= TURN_STEPS; k++) {
      const bearing = bearingRad + side * k * TURN_STEP_RAD;
      if (Number.isFinite(limit) && solution.strokesOf(from, { option, bearingRad: bearing }) > limit) return [];
      if (!allowed(bearing)) continue;
      const least = leastTurn(allowed, bearing - side * TURN_STEP_RAD, bearing);
      return [contend(solution, from, { option, bearingRad: least })];
    }
    return [];
  });
}

function leastTurn(allowed: (bearingRad: number) => boolean, barred: number, free: number): number {
  let [low, high] = [barred, free];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (allowed(middle)) high = middle;
    else low = middle;
  }
  return high;
}
