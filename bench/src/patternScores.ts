import { virtualBalls, virtualPlayer, type VirtualSwing, type World } from '@leeway/demo';
import { drawsOf, fitSwings, randomFrom, TwoPart, type Ball, type SwingFit } from '@leeway/engine';

/** Balls a club, and how far a prediction of the balls that follow them was right: mean logarithm of the density of a fresh ball's carry. */
export interface LogScores {
  readonly pooled: number;
  readonly alone: number;
  readonly plain: number;
}

export interface Scores {
  readonly swings: number;
  /** Share of truths inside the 50, 80 and 95 in 100 intervals, by figure. */
  readonly covered: { readonly [figure: string]: readonly [number, number, number] };
  /** Root mean square error of the good carry, yards: with the bag, each club alone, the plain mean. */
  readonly rmsYd: LogScores;
  readonly logScore: LogScores;
  /** Mean of the fitted mishit share less the true one. */
  readonly mishitBias: number;
}

const YARD_M = 0.9144;
const INTERVALS = [
  [2, 4],
  [1, 5],
  [0, 6],
] as const;
const FRESH = 12;
const DRAWS = 60;
const NO_COURSE = { distanceShare: 0, mishitShare: 0 };

/** Fits the balls of many made-up players and compares with their truth. `balls` is how many each club of a player gets. */
export function scorePatterns(
  players: number,
  clubs: number,
  balls: (random: ReturnType<typeof randomFrom>) => number,
  world: World,
  seed: number,
): Scores {
  const random = randomFrom(seed);
  const covered = new Map<string, [number, number, number]>();
  const sq = { pooled: 0, alone: 0, plain: 0 };
  const log = { pooled: 0, alone: 0, plain: 0 };
  let swings = 0;
  let bias = 0;
  for (let i = 0; i < players; i++) {
    const player = virtualPlayer(random, clubs, world);
    const hit = player.swings.map((s) => ({
      club: s.club,
      swing: s.swing,
      balls: virtualBalls(s, balls(random), random, world),
    }));
    const pooled = fitSwings(player.level, hit, []);
    player.swings.forEach((truth, k) => {
      const fit = pooled[k]!;
      const [alone] = fitSwings(player.level, [hit[k]!], []);
      const last = truth.carryM * (1 + world.drift) * meanBall(world);
      cover(covered, fit, truth, last);
      const fresh = virtualBalls({ ...truth, carryM: truth.carryM * (1 + world.drift) }, FRESH, random, {
        ...world,
        drift: 0,
      });
      const plain = plainOf(hit[k]!.balls);
      sq.pooled += (fit.fit.carryM.value - last) ** 2;
      sq.alone += (alone!.fit.carryM.value - last) ** 2;
      sq.plain += (plain.mean - last) ** 2;
      log.pooled += logScoreOf(fit, fresh);
      log.alone += logScoreOf(alone!, fresh);
      log.plain += fresh.reduce((sum, b) => sum + plainLog(b.carryM, plain), 0) / FRESH;
      bias += fit.fit.mishitShare.value - truth.mishitShare;
      swings++;
    });
  }
  const root = (x: number): number => Math.sqrt(x / swings) / YARD_M;
  const mean = (x: number): number => x / swings;
  return {
    swings,
    covered: Object.fromEntries([...covered].map(([k, c]) => [k, [mean(c[0]), mean(c[1]), mean(c[2])] as const])),
    rmsYd: { pooled: root(sq.pooled), alone: root(sq.alone), plain: root(sq.plain) },
    logScore: { pooled: mean(log.pooled), alone: mean(log.alone), plain: mean(log.plain) },
    mishitBias: mean(bias),
  };
}

const meanBall = ({ otherBalls }: World): number =>
  otherBalls === undefined ? 1 : 1 + otherBalls.share * (otherBalls.goes - 1);

function cover(
  covered: Map<string, [number, number, number]>,
  { fit }: SwingFit,
  truth: VirtualSwing,
  carryM: number,
): void {
  const all = [
    ['carry', fit.carryM.cuts, carryM],
    ['spread', fit.sdCarryM.cuts, (truth.sdCarryM / truth.carryM) * fit.carryM.value],
    ['start', fit.directionDeg.cuts, truth.directionDeg],
    ['direction', fit.directionSdDeg.cuts, truth.sdDirectionDeg],
    ['mishits', fit.mishitShare.cuts, truth.mishitShare],
  ] as const;
  for (const [figure, cuts, x] of all) {
    const row = covered.get(figure) ?? [0, 0, 0];
    INTERVALS.forEach(([lo, hi], i) => {
      if (x >= cuts[lo]! && x <= cuts[hi]!) row[i]!++;
    });
    covered.set(figure, row);
  }
}

/** Mean log density of fresh balls' carries, the belief averaged over its draws. */
function logScoreOf({ fit }: SwingFit, fresh: readonly Ball[]): number {
  const swings = drawsOf(fit.sample, DRAWS).map((x) => new TwoPart(x, true, NO_COURSE));
  let sum = 0;
  for (const { carryM } of fresh) {
    let density = 0;
    for (const swing of swings) {
      const { good, mishit } = swing.partsAt({ carryM });
      density += (good + mishit) / DRAWS;
    }
    sum += Math.log(density);
  }
  return sum / fresh.length;
}

function plainOf(balls: readonly Ball[]): { readonly mean: number; readonly sd: number } {
  const mean = balls.reduce((sum, b) => sum + b.carryM, 0) / balls.length;
  const sq = balls.reduce((sum, b) => sum + (b.carryM - mean) ** 2, 0);
  return { mean, sd: Math.max(1, Math.sqrt(sq / (balls.length - 1))) };
}

const plainLog = (x: number, { mean, sd }: { readonly mean: number; readonly sd: number }): number =>
  -0.5 * Math.log(2 * Math.PI) - Math.log(sd) - 0.5 * ((x - mean) / sd) ** 2;
