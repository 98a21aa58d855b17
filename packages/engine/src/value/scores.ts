import { randomFrom } from '../math/random.ts';
import { puttChances } from '../player/puttChances.ts';
import type { Field } from './field.ts';
import { playHole, type Place } from './play.ts';
import type { Policy } from './policy.ts';
import type { ScoreChances } from './scoreChances.ts';
import type { Found } from './search.ts';
import type { Solving } from './sweep.ts';

/** Holes played for the chances: their standard error is at most 0.008. */
const ROUNDS = 4000;
const MOST_SCORE = 20;
const SEED = 20;

/** Chances of the strokes still to play from a state, a first stroke given: holes played ball by ball, putts as they fall. The same balls each time. */
export function scoresFrom(
  field: Field,
  solved: Solving,
  policy: Policy,
  from: Place,
  first?: Found,
  rounds = ROUNDS,
): ScoreChances {
  const random = randomFrom(SEED);
  const chances = Array.from({ length: MOST_SCORE + 1 }, () => 0);
  for (let i = 0; i < rounds; i++) {
    const { strokes, putts } = playHole(field, solved, policy, from, random, first);
    if (putts < 1) chances[Math.min(MOST_SCORE, strokes)]! += 1 / rounds;
    else puttChances(putts).forEach((p, k) => (chances[Math.min(MOST_SCORE, strokes + k + 1)]! += p / rounds));
  }
  return chances;
}
