import type { ScoresAnswer } from '../asks.ts';
import type { OpenHole } from './openHole.ts';

/** Chances of the score with the choice of a shot and with those beside it. */
export function askScores({ plan }: OpenHole, shot: number): ScoresAnswer | 'unknown' {
  const planned = plan.shots[shot];
  if (planned === undefined) throw new RangeError(`there is no shot ${shot + 1} in this plan`);
  const { choice, scoresOf } = planned;
  const scores = [choice.answer, ...choice.alternatives.map(({ shown }) => shown)].map((shown) => scoresOf?.(shown));
  const [own, ...others] = scores.flatMap((one) => one ?? []);
  return own === undefined || others.length + 1 < scores.length ? 'unknown' : { choice: own, others };
}
