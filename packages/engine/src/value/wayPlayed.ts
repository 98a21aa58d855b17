import { type Day, REFERENCE } from '../day/day.ts';
import type { HoleGround } from '../ground/hole.ts';
import { randomFrom } from '../math/random.ts';
import type { PlayerModel } from '../player/option.ts';
import { LIE_CODES, LIE_OF, type Lead } from './arsenal.ts';
import { Field } from './field.ts';
import { playHole, type Place } from './play.ts';
import { Policy } from './policy.ts';
import type { ScoreChances } from './scoreChances.ts';
import { scoresFrom } from './scores.ts';
import { cheapest, worthTryingFrom } from './search.ts';
import type { BallState, SolveStatus } from './solution.ts';
import { PATIENCE } from './solve.ts';
import { Sweeps, type Patience } from './sweep.ts';
import type { Way } from './way.ts';

/** What a way of playing costs from everywhere, and the scores that it makes. */
export interface WayPlayed {
  readonly status: SolveStatus;
  /** Expected strokes from a state. */
  strokes(from: BallState): number;
  scores(from: BallState): ScoreChances;
  /** The mean of so many holes played ball by ball, with its standard error. */
  simulate(from: BallState, rounds: number, seed: number): { readonly mean: number; readonly se: number };
}

const SAME_STROKES = 1e-4;
const MOST_PASSES = 12;

/** Evaluates a way of playing a hole; without one, that of playing best. Strokes that it names must be of the player's own options. */
export function playedSo(
  ground: HoleGround,
  player: PlayerModel,
  way?: Way,
  day: Day = REFERENCE,
  patience: Patience = PATIENCE,
): WayPlayed {
  const field = new Field(ground, player, day);
  const allowed = way && leadsOfWay(field, way);
  const sweeps = new Sweeps(field, allowed);
  const status = sweeps.solve(patience);
  const policy = new Policy(field, sweeps.evaluator, sweeps.states, allowed);
  const placeOf = (from: BallState): Place & { readonly value: number } => {
    const [u, v, lie] = [field.frame.u(from.at), field.frame.v(from.at), LIE_CODES[from.lie]];
    return { u, v, lie, value: valueAt(field, sweeps, allowed?.(lie, u, v), { u, v, lie }) };
  };
  return {
    status,
    strokes: (from) => placeOf(from).value,
    scores: (from) => scoresFrom(field, sweeps, policy, placeOf(from)),
    simulate: (from, rounds, seed) => {
      const place = placeOf(from);
      const random = randomFrom(seed);
      let [sum, second] = [0, 0];
      for (let i = 0; i < rounds; i++) {
        const { strokes, putts } = playHole(field, sweeps, policy, place, random);
        sum += strokes + putts;
        second += (strokes + putts) ** 2;
      }
      const mean = sum / rounds;
      return { mean, se: Math.sqrt(Math.max(0, second / rounds - mean * mean) / rounds) };
    },
  };
}

/** The strokes of a way as the solver knows them. */
function leadsOfWay(field: Field, way: Way): (lie: number, u: number, v: number) => readonly Lead[] | undefined {
  return (lie, u, v) => {
    const strokes = way({ at: field.frame.toPlane(u, v), lie: LIE_OF[lie]! });
    if (strokes === undefined) return undefined;
    const weapons = field.arsenal.get(lie) ?? [];
    const leads = strokes.flatMap(({ option, bearingRad }): Lead[] => {
      const place = field.player.options.indexOf(option);
      const weapon = weapons.find((w) => w.option === place);
      return weapon === undefined ? [] : [{ weapon, bearing: bearingRad - field.frame.bearingRad, strokes: 0 }];
    });
    return leads.length === 0 ? undefined : leads;
  };
}

/** V of one state, asked until it agrees with itself. */
function valueAt(
  field: Field,
  { evaluator }: Sweeps,
  leads: readonly Lead[] | undefined,
  { u, v, lie }: Place,
): number {
  let strokes = 6;
  for (let pass = 0; pass < MOST_PASSES; pass++) {
    const before = strokes;
    if (leads === undefined) {
      const pool = worthTryingFrom(field, lie, field.distanceM(u, v), field.bearingToFlag(u, v));
      strokes = cheapest(evaluator, pool, u, v, before).strokes;
    } else {
      const costs = leads.map(({ weapon, bearing }) => evaluator.always(weapon, weapon.fine, u, v, bearing, before));
      strokes = Math.min(...costs);
    }
    if (Math.abs(strokes - before) < SAME_STROKES) break;
  }
  return strokes;
}
