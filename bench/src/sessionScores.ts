import { type Changes, virtualApproaches, virtualPlayer, virtualSessions } from '@leeway/demo';
import { type Ball, fitSwings, onCoursePrior, randomFrom, type SwingBalls, YARD_M } from '@leeway/engine';

/** How well the carry now is found: mean error and root mean square, yards, and truths in the 80-in-100 interval. */
export interface SessionScore {
  readonly biasYd: number;
  readonly rmsYd: number;
  readonly covered80: number;
}

/** All balls taken alike, as if hit today with the player's own ball; and with their days and kinds known. */
export interface SessionScores {
  readonly alike: SessionScore;
  readonly known: SessionScore;
}

const CLUBS = 8;
/** Clubs that approaches with the player's own ball are logged of, and how many each. */
const ON_COURSE = [4, 5, 6] as const;

/** Made-up players with sessions over a year, six balls a club each; `approaches` are balls of three clubs on the course, now. */
export function scoreSessions(players: number, changes: Changes, approaches: number, seed: number): SessionScores {
  const random = randomFrom(seed);
  const found = { alike: tally(), known: tally() };
  for (let i = 0; i < players; i++) {
    const { level, swings } = virtualPlayer(random, CLUBS);
    const own = {
      ...changes,
      ...(changes.rangeBall === undefined
        ? {}
        : { rangeBall: Math.exp(Math.log(changes.rangeBall) + 0.03 * random.normal()) }),
    };
    const hit = virtualSessions(swings, [360, 200, 90, 30, 0], 6, own, random);
    const course = onCoursePrior(level);
    const adds = { distanceShare: course.distanceSdPct / 100, mishitShare: course.mishitShare };
    const bag = swings.map((s, k): SwingBalls => {
      const { club, swing } = s;
      if (approaches === 0 || !ON_COURSE.some((c) => c === k)) return { club, swing, balls: hit[k]! };
      const log = virtualApproaches(s, adds, approaches, 0, random);
      const now = (b: Ball): Ball => ({ ...b, ageDays: 0 });
      return {
        club,
        swing,
        balls: [...hit[k]!, ...log.balls.map(now)],
        unseen: log.misses.map((u) => ({ ...u, ageDays: 0 })),
      };
    });
    const alike = bag.map((s) => ({
      ...s,
      balls: s.balls.map(({ ageDays: _a, rangeBall: _r, ...b }): Ball => b),
      ...(s.unseen && { unseen: s.unseen.map(({ ageDays: _a, ...u }) => u) }),
    }));
    for (const [name, balls] of [
      ['alike', alike],
      ['known', bag],
    ] as const)
      fitSwings(level, balls, []).forEach(({ fit }, k) =>
        found[name].add(fit.carryM.value - swings[k]!.carryM, swings[k]!.carryM, fit.carryM.cuts),
      );
  }
  return { alike: found.alike.score(), known: found.known.score() };
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
    score: (): SessionScore => ({
      biasYd: sum / n / YARD_M,
      rmsYd: Math.sqrt(sq / n) / YARD_M,
      covered80: inside / n,
    }),
  };
}
