import { reachDown, type Lead, type Weapon } from './arsenal.ts';
import type { Evaluator } from './evaluate.ts';
import { RAD_PER_DEG } from '../quantity/units.ts';
import type { Field } from './field.ts';
import { BUNKER, PENALTY, RECOVERY } from './raster.ts';

/** Aims tried first: every 5.7 degrees to 57 either side of the flag. */
const STEP_RAD = 5.7 * RAD_PER_DEG;
const STEPS = 10;
/** The same round the whole circle, for a stroke that does not fit the distance: sideways and back may be best. */
const ROUND_STEPS = 31;
/** Strokes by the coarse rule within which a minimum goes on to the middle one. */
const KEEP_COARSE = 0.12;
/** Strokes by the middle rule within which a lead is polished, polished once more, and judged by the fine rule. */
const KEEP_MIDDLE = [0.045, 0.012] as const;
const KEEP_FINE = 0.012;
/** How much shorter the steps of the second polishing are. */
const SHORTER = 2.5;
/** Of those aims, every so manieth is tried first, and every other one next. */
const SPARSE = 5;
/** How much worse an option's best may be among these before the aims between are not tried. */
const KEEP_SPARSE = 0.25;
const KEEP_HALF = 0.2;

/** The best stroke found from a state: bearing in the play frame, and what it costs. */
export type Found = Readonly<Lead>;

/** A place that has been looked at, and what was found there. */
export interface Beside {
  readonly u: number;
  readonly v: number;
  readonly leads: readonly Lead[];
}

/** How hard to look among the leads. */
export interface Effort {
  /** Leads that go on to the middle rule. */
  readonly kept: number;
  /** Rounds of polishing for the close ones of these, and the first one's step. */
  readonly rounds: 1 | 2;
  readonly stepRad: number;
}
export const FULL: Effort = { kept: 10, rounds: 2, stepRad: STEP_RAD / 2 };
/** Enough for a first sweep, whose values will be worked again. */
export const QUICK: Effort = { kept: 4, rounds: 1, stepRad: STEP_RAD / 2 };
/** For leads of a flag that has been moved, turned with it. */
export const TURNED: Effort = { kept: 4, rounds: 1, stepRad: STEP_RAD / 5 };
/** For leads that were polished in an earlier sweep, on values that have hardly moved since. */
export const AGAIN: Effort = { kept: 10, rounds: 1, stepRad: STEP_RAD / 5 };

/** Whether a stroke is worth a thought at this distance from the flag, which lies at this bearing of the play frame. */
export function inRange(w: Weapon, distanceM: number, atFlag: number): boolean {
  const reachM = reachDown(w, atFlag);
  return reachM >= 0.25 * distanceM && reachM <= 1.18 * distanceM + 14;
}

/** The strokes worth trying from a distance: those in range, or all of them where none is. */
export function worthTrying(weapons: readonly Weapon[], distanceM: number, atFlag: number): readonly Weapon[] {
  const fitting = weapons.filter((w) => inRange(w, distanceM, atFlag));
  return fitting.length > 0 ? fitting : weapons;
}

/** Lengths of the strokes that are tried all round from trouble, metres: out sideways, forward under the branches, or back. */
const WAYS_OUT_M = [12, 25, 50] as const;

/** The strokes worth trying from a lie: from sand, trees and penalty areas also a few short ones, whatever the distance. */
export function worthTryingFrom(field: Field, lie: number, distanceM: number, atFlag: number): readonly Weapon[] {
  const weapons = field.arsenal.get(lie) ?? [];
  const fitting = worthTrying(weapons, distanceM, atFlag);
  if ((lie !== RECOVERY && lie !== BUNKER && lie !== PENALTY) || fitting === weapons) return fitting;
  const out = WAYS_OUT_M.map((m) =>
    weapons.reduce((a, b) => (Math.abs(b.reachM - m) < Math.abs(a.reachM - m) ? b : a)),
  );
  return [...new Set([...fitting, ...out])];
}

/** The cheapest stroke of a pool from (u, v); `fromHere` is V by the last sweep. */
export function cheapest(
  evaluator: Evaluator,
  pool: readonly Weapon[],
  u: number,
  v: number,
  fromHere: number,
  effort: Effort = FULL,
): Found {
  return closest(evaluator, leadsOf(evaluator, pool, u, v, fromHere), u, v, fromHere, effort);
}

/**
 * All options at 21 aims (63 for those that do not fit) by the coarse rule: every local minimum near the best, cheapest first. Those whose reach fits best come first, so
 * that most others are seen to be too dear after a few aims.
 */
export function leadsOf(evaluator: Evaluator, pool: readonly Weapon[], u: number, v: number, fromHere: number): Lead[] {
  const distanceM = evaluator.field.distanceM(u, v);
  const atFlag = evaluator.field.bearingToFlag(u, v);
  const leads: Lead[] = [];
  const whole = new Float64Array(2 * ROUND_STEPS + 1);
  let best = Infinity;
  const fits = (w: Weapon): number => Math.abs(reachDown(w, atFlag) - distanceM);
  for (const weapon of [...pool].sort((a, b) => fits(a) - fits(b))) {
    const steps = inRange(weapon, distanceM, atFlag) ? STEPS : ROUND_STEPS;
    const row = whole.subarray(0, 2 * steps + 1);
    const look = (k: number): number =>
      (row[k] = evaluator.always(weapon, weapon.coarse, u, v, atFlag + (k - steps) * STEP_RAD, fromHere));
    // a few aims first; the ones between only where they may matter
    row.fill(Infinity);
    let least = Infinity;
    for (let k = steps % SPARSE; k <= 2 * steps; k += SPARSE) least = Math.min(least, look(k));
    if (least > best + KEEP_SPARSE) continue;
    for (let k = 0; k <= 2 * steps; k += 2) if (row[k] === Infinity) least = Math.min(least, look(k));
    if (least > best + KEEP_HALF) continue;
    for (let k = 1; k < 2 * steps; k += 2) {
      if (row[k] !== Infinity) continue;
      const lower = Math.min(row[k - 1]!, row[k + 1]!);
      if (lower > Math.min(best, least) + KEEP_HALF) row[k] = lower;
      else look(k);
    }
    for (let k = 0; k <= 2 * steps; k++) {
      const q = row[k]!;
      if (q > best + KEEP_COARSE) continue;
      if ((k > 0 && row[k - 1]! < q) || (k < 2 * steps && row[k + 1]! <= q)) continue;
      leads.push({ weapon, bearing: atFlag + (k - steps) * STEP_RAD, strokes: q });
      if (q < best) best = q;
    }
  }
  return leads
    .filter((l) => l.strokes <= best + KEEP_COARSE)
    .sort((a, b) => a.strokes - b.strokes)
    .slice(0, FULL.kept);
}

/** The leads found from places beside, as they are from here: turned with the line to the flag, each stroke and valley once. */
export function leadsBeside(evaluator: Evaluator, found: readonly Beside[], u: number, v: number): Lead[] {
  const { field } = evaluator;
  const atFlag = field.bearingToFlag(u, v);
  const all = found.flatMap((place) => {
    const turn = atFlag - field.bearingToFlag(place.u, place.v);
    return place.leads.map(({ weapon, bearing, strokes }) => ({ weapon, bearing: bearing + turn, strokes }));
  });
  all.sort((a, b) => a.strokes - b.strokes);
  const leads: Lead[] = [];
  for (const lead of all) {
    if (leads.length === FULL.kept) break;
    const known = leads.some((l) => l.weapon === lead.weapon && Math.abs(l.bearing - lead.bearing) < STEP_RAD);
    if (!known) leads.push(lead);
  }
  return leads;
}

/** The cheapest of the leads, the close ones polished; the bearings found are kept in them. */
export function closest(
  evaluator: Evaluator,
  leads: readonly Lead[],
  u: number,
  v: number,
  fromHere: number,
  effort: Effort,
): Found {
  let least = Infinity;
  const kept = Math.min(leads.length, effort.kept);
  for (let i = 0; i < kept; i++) {
    const lead = leads[i]!;
    lead.strokes = evaluator.always(lead.weapon, lead.weapon.middle, u, v, lead.bearing, fromHere);
    if (lead.strokes < least) least = lead.strokes;
  }
  for (let round = 0; round < effort.rounds; round++) {
    const margin = least + KEEP_MIDDLE[round]!;
    for (let i = 0; i < kept; i++) {
      const lead = leads[i]!;
      if (lead.strokes > margin) continue;
      const { weapon } = lead;
      const cost = (bearing: number): number => evaluator.always(weapon, weapon.middle, u, v, bearing, fromHere);
      polish(lead, cost, effort.stepRad / SHORTER ** round);
      if (lead.strokes < least) least = lead.strokes;
    }
  }
  let found = leads[0]!;
  let best = Infinity;
  for (let i = 0; i < kept; i++) {
    const { weapon, bearing, strokes } = leads[i]!;
    if (strokes > least + KEEP_FINE) continue;
    const q = evaluator.always(weapon, weapon.fine, u, v, bearing, fromHere);
    if (q < best) {
      best = q;
      found = leads[i]!;
    }
  }
  return { weapon: found.weapon, bearing: found.bearing, strokes: best };
}

/** Takes a lead to the bottom of its valley, as near as one step size tells: steps to the lower side, then through a parabola. */
export function polish(lead: Lead, cost: (bearing: number) => number, stepRad: number): void {
  let at = lead.bearing;
  let low = lead.strokes;
  let left = cost(at - stepRad);
  let right = cost(at + stepRad);
  for (let k = 0; k < 4 && Math.min(left, right) < low; k++) {
    if (left < right) {
      [at, right, low] = [at - stepRad, low, left];
      left = cost(at - stepRad);
    } else {
      [at, left, low] = [at + stepRad, low, right];
      right = cost(at + stepRad);
    }
  }
  const bend = left - 2 * low + right;
  if (bend > 0) {
    const bottom = at + (0.5 * stepRad * (left - right)) / bend;
    const q = cost(bottom);
    if (q < low) [at, low] = [bottom, q];
  }
  lead.bearing = at;
  lead.strokes = low;
}
