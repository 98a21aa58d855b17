import { virtualApproaches, virtualBalls, virtualPlayer } from '@leeway/demo';
import { type Ball, fitSwings, onCoursePrior, randomFrom, type SwingBalls, YARD_M } from '@leeway/engine';

/** Mean error of the carry and its root mean square, yards, and how often the truth lies in the 80-in-100 interval. */
export interface ApproachScore {
  readonly biasYd: number;
  readonly rmsYd: number;
  readonly covered80: number;
}

/** What is made of approaches: greens hit only, with the likelihood that knows it; the misses too; and the plain mean of the greens hit. */
export interface ApproachScores {
  readonly approaches: number;
  readonly greensHit: ApproachScore;
  readonly withMisses: ApproachScore;
  readonly plainMean: ApproachScore;
}

const CLUB = 5;

/**
 * Players who log 7-iron approaches until they have hit `n` greens, playing them at a number `overYd` beyond what the club carries; three other clubs have
 * eight balls each from the range.
 */
export function scoreApproaches(players: number, n: number, overYd: number, seed: number): ApproachScores {
  const random = randomFrom(seed);
  const errors = { greensHit: tally(), withMisses: tally(), plainMean: tally() };
  let approaches = 0;
  for (let i = 0; i < players; i++) {
    const { level, swings } = virtualPlayer(random, CLUB + 1);
    const truth = swings[CLUB]!;
    const course = onCoursePrior(level);
    const adds = { distanceShare: course.distanceSdPct / 100, mishitShare: course.mishitShare };
    const log = virtualApproaches(truth, adds, n, overYd, random);
    approaches += log.marks.length + log.misses.length;
    const others = swings.slice(CLUB - 3, CLUB).map((s) => ({ ...s, balls: virtualBalls(s, 8, random) }));
    const fitOf = (balls: readonly Ball[], more: Partial<SwingBalls> = {}) =>
      fitSwings(level, [{ club: truth.club, swing: truth.swing, balls, ...more }, ...others], [])[0]!.fit.carryM;
    const hit = fitOf(log.marks);
    const all = fitOf(log.balls, { unseen: log.misses });
    errors.greensHit.add(hit.value - truth.carryM, truth.carryM, hit.cuts);
    errors.withMisses.add(all.value - truth.carryM, truth.carryM, all.cuts);
    errors.plainMean.add(log.marks.reduce((sum, b) => sum + b.carryM, 0) / log.marks.length - truth.carryM, 0, []);
  }
  return {
    approaches: approaches / players,
    greensHit: errors.greensHit.score(),
    withMisses: errors.withMisses.score(),
    plainMean: errors.plainMean.score(),
  };
}

function tally() {
  let [n, sum, sq, inside] = [0, 0, 0, 0];
  return {
    add: (error: number, truth: number, cuts: readonly number[]): void => {
      n++;
      sum += error;
      sq += error * error;
      if (truth > (cuts[1] ?? Infinity) && truth < (cuts[5] ?? 0)) inside++;
    },
    score: (): ApproachScore => ({
      biasYd: sum / n / YARD_M,
      rmsYd: Math.sqrt(sq / n) / YARD_M,
      covered80: inside / n,
    }),
  };
}
