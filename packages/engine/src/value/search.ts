import type { Weapon } from './arsenal.ts';
import type { Evaluator } from './evaluate.ts';
import { RAD_PER_DEG } from '../quantity/units.ts';

/** Aims tried first: every 5.7 degrees to 57 either side of the flag. */
const STEP_RAD = 5.7 * RAD_PER_DEG;
const STEPS = 10;
/** The same round the whole circle, where nothing in the bag fits the distance: sideways and back may be best. */
const ROUND_STEPS = 31;
/** Strokes by the coarse rule within which a minimum goes on to the fine one, and by the fine rule to be polished. */
const KEEP_COARSE = 0.12;
const KEEP_FINE = 0.06;
/** How much worse an option's best may be at every other aim before the aims between are not tried. */
const KEEP_HALF = 0.3;

/** The best stroke found from a state: bearing in the play frame, and what it costs. */
export interface Found {
  readonly weapon: Weapon;
  readonly bearing: number;
  readonly strokes: number;
}

/** How hard to look. */
export interface Effort {
  /** Minima of the coarse rule that go on to the fine one, and rounds of polishing for the close ones of these. */
  readonly kept: number;
  readonly rounds: number;
}
export const FULL: Effort = { kept: 10, rounds: 2 };
/** Enough for a first sweep, whose values will be worked again. */
export const QUICK: Effort = { kept: 4, rounds: 1 };

interface Lead {
  weapon: Weapon;
  bearing: number;
  strokes: number;
}

/** Whether a stroke of this reach is worth a thought at this distance from the flag. */
export const inRange = (w: Weapon, distanceM: number): boolean =>
  w.reachM >= 0.25 * distanceM && w.reachM <= 1.18 * distanceM + 14;

/** The strokes worth trying from a distance: those in range, or all of them where none is. */
export function worthTrying(weapons: readonly Weapon[], distanceM: number): readonly Weapon[] {
  const fitting = weapons.filter((w) => inRange(w, distanceM));
  return fitting.length > 0 ? fitting : weapons;
}

/**
 * The cheapest stroke of a pool from (u, v): all options at 21 aims by the coarse rule; every local minimum near the best goes to the
 * fine rule, and the close ones of these are polished. `fromHere` is V by the last sweep. Into `close`, if given, go the options that
 * the coarse rule puts within `KEEP_HALF` of the best.
 */
export function cheapest(
  evaluator: Evaluator,
  pool: readonly Weapon[],
  u: number,
  v: number,
  fromHere: number,
  effort: Effort = FULL,
  close?: Weapon[],
): Found {
  const distanceM = Math.hypot(u, v);
  const atFlag = Math.atan2(-u, -v);
  const steps = pool.some((w) => inRange(w, distanceM)) ? STEPS : ROUND_STEPS;
  const bests: number[] = [];
  const leads: Lead[] = [];
  const row = new Float64Array(2 * steps + 1);
  let best = Infinity;
  for (const weapon of pool) {
    // every other aim first; the ones between only where they may matter
    let least = Infinity;
    for (let k = 0; k <= 2 * steps; k += 2) {
      const q = evaluator.always(weapon, weapon.coarse, u, v, atFlag + (k - steps) * STEP_RAD, fromHere);
      row[k] = q;
      if (q < least) least = q;
    }
    bests.push(least);
    if (least > best + KEEP_HALF) continue;
    for (let k = 1; k < 2 * steps; k += 2) {
      const lower = Math.min(row[k - 1]!, row[k + 1]!);
      row[k] =
        lower > Math.min(best, least) + KEEP_HALF
          ? lower
          : evaluator.always(weapon, weapon.coarse, u, v, atFlag + (k - steps) * STEP_RAD, fromHere);
    }
    for (let k = 0; k <= 2 * steps; k++) {
      const q = row[k]!;
      if (q > best + KEEP_COARSE) continue;
      if ((k > 0 && row[k - 1]! < q) || (k < 2 * steps && row[k + 1]! <= q)) continue;
      leads.push({ weapon, bearing: atFlag + (k - steps) * STEP_RAD, strokes: q });
      if (q < best) best = q;
    }
  }
  if (close !== undefined) {
    close.length = 0;
    pool.forEach((w, i) => {
      if (bests[i]! <= best + KEEP_HALF) close.push(w);
    });
  }
  const kept = leads
    .filter((l) => l.strokes <= best + KEEP_COARSE)
    .sort((a, b) => a.strokes - b.strokes)
    .slice(0, effort.kept);
  let found: Found = kept[0]!;
  let bestFine = Infinity;
  for (const lead of kept) {
    lead.strokes = evaluator.always(lead.weapon, lead.weapon.fine, u, v, lead.bearing, fromHere);
    if (lead.strokes < bestFine) [found, bestFine] = [lead, lead.strokes];
  }
  if (effort.rounds === 0) return found;
  const rivals = kept.filter((lead) => lead.strokes <= bestFine + KEEP_FINE);
  for (const lead of rivals) {
    const polished = polish(evaluator, lead, u, v, fromHere, effort.rounds);
    if (polished.strokes < found.strokes) found = polished;
  }
  return found;
}

/** Descends to the bottom of the valley: step to the lower side, else through a parabola, with a step that shrinks. */
export function polish(
  evaluator: Evaluator,
  from: Found,
  u: number,
  v: number,
  fromHere: number,
  rounds: number,
  step = STEP_RAD / 2,
): Found {
  const { weapon } = from;
  const cost = (bearing: number): number => evaluator.always(weapon, weapon.fine, u, v, bearing, fromHere);
  let at = from.bearing;
  let low = from.strokes;
  let h = step;
  for (let round = 0; round < rounds; round++, h /= 2.5) {
    let left = cost(at - h);
    let right = cost(at + h);
    for (let k = 0; k < 4 && Math.min(left, right) < low; k++) {
      if (left < right) {
        [at, right, low] = [at - h, low, left];
        left = cost(at - h);
      } else {
        [at, left, low] = [at + h, low, right];
        right = cost(at + h);
      }
    }
    const bend = left - 2 * low + right;
    if (bend <= 0) continue;
    const bottom = at + (0.5 * h * (left - right)) / bend;
    const q = cost(bottom);
    if (q < low) [at, low] = [bottom, q];
  }
  return { weapon, bearing: at, strokes: low };
}
