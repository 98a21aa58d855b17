import type { Ball, Unseen } from '../stats/ball.ts';
import { goodChances } from '../stats/goodStrikes.ts';
import { afterMeasuring, type JointNormal, type Measured } from '../stats/linear.ts';
import { meanOf, sdOf } from '../stats/sample.ts';
import { beliefIn, type FigurePriors, priorsOf, type Seen } from '../stats/twoPart.ts';
import { LOG_CARRY } from '../stats/twoPartModel.ts';
import { Bag, type BagSwing } from './bag.ts';
import { INFORMATION } from './ballsUntil.ts';
import { isFullSwing } from './club.ts';
import { type Level, spreadPrior } from './prior.ts';

/** Balls of one day and one kind. `offset` is how far they went of what the player's own ball goes now, as a logarithm. */
export interface Occasion {
  readonly ageDays?: number;
  readonly rangeBall: boolean;
  readonly balls: number;
  readonly offset: number;
  readonly sd: number;
}

export interface Occasions {
  readonly occasions: readonly Occasion[];
  /** How far a range ball goes of the player's own, as a logarithm; absent when no range ball was hit. */
  readonly rangeBall?: { readonly mean: number; readonly sd: number };
  /** How much a carry wanders in a year, as a share: the likeliest of three. */
  readonly wanders: number;
  /** For each swing, what the doubt of its carry is multiplied by because days and balls differ. */
  readonly widths: readonly number[];
}

/**
 * A player's carries all wander together: by this share of themselves in a year, the likeliest of the three by the balls and by how common each is assumed to
 * be; and from one day to the next.
 */
const WANDERS = [0.012, 0.03, 0.07] as const;
const HOW_COMMON = [0.3, 0.45, 0.25] as const;
const SD_DAY = 0.01;
const YEAR_DAYS = 365.25;
/** A range ball is taken as the player's own, give or take 5 %, until balls of both kinds say it: our assumption, for no measurement was found. */
const RANGE_BALL = { mean: 0, sd: 0.05 } as const;
/** The belief that course balls are read on, wide so that they speak for themselves. */
const WIDE = 0.12;

/**
 * What days and kinds of ball did to a player's carries: the carries of all swings and the offsets of all occasions are normal together, and the mean good strike of each
 * swing on each occasion measures a sum of two. `undefined` when no ball tells its day or that it was of the range.
 */
export function occasionsOf(level: Level, swings: readonly (BagSwing & Seen)[]): Occasions | undefined {
  const keys = new Map<string, { readonly ageDays: number | undefined; readonly rangeBall: boolean; balls: number }>();
  for (const { balls, unseen = [] } of swings)
    for (const b of [...balls, ...unseen]) {
      const { ageDays, rangeBall } = kindOf(b);
      const known = keys.get(keyOf(b));
      if (known === undefined) keys.set(keyOf(b), { ageDays, rangeBall, balls: 1 });
      else known.balls++;
    }
  const kinds = [...keys.values()];
  if (kinds.every((k) => k.ageDays === undefined && !k.rangeBall)) return undefined;
  const at = new Map([...keys.keys()].map((key, j) => [key, j]));
  const bag = new Bag(level, swings).carries();
  const measured = swings.flatMap((s, k) => measuredOf(level, s, k, swings.length, at, bag.means[k]!));
  const tried = WANDERS.map((wanders, i) => {
    const after = afterMeasuring(beforeOf(bag, kinds, wanders), measured);
    return { wanders, after, score: after.logChance + Math.log(HOW_COMMON[i]!) };
  });
  const best = tried.reduce((a, b) => (b.score > a.score ? b : a));
  const { mean, covariance } = best.after;
  const d = mean.length;
  const n = swings.length;
  const known = afterMeasuring(
    beforeOf(bag, [], 0),
    measured.map(({ of, value, variance }) => ({ of: [of[0]!], value: value - mean[of[1]!]!, variance })),
  );
  const hasRange = kinds.some((k) => k.rangeBall);
  return {
    wanders: best.wanders,
    occasions: kinds
      .map((k, j) => ({ ...k, offset: mean[n + j]!, sd: Math.sqrt(covariance[(n + j) * d + n + j]!) }))
      .map(({ ageDays, ...k }) => ({ ...k, ...(ageDays === undefined ? {} : { ageDays }) })),
    ...(hasRange ? { rangeBall: { mean: mean[d - 1]!, sd: Math.sqrt(covariance[d * d - 1]!) } } : {}),
    widths: swings.map((_, k) =>
      Math.sqrt(Math.max(1, covariance[k * d + k]! / known.covariance[k * known.mean.length + k]!)),
    ),
  };
}

const kindOf = (b: Ball | Unseen): { readonly ageDays: number | undefined; readonly rangeBall: boolean } => ({
  ageDays: b.ageDays,
  rangeBall: 'carryM' in b && b.rangeBall === true,
});
const keyOf = (b: Ball | Unseen): string => {
  const { ageDays, rangeBall } = kindOf(b);
  return JSON.stringify([ageDays ?? '', rangeBall]);
};

/** Carries of swings, offsets of occasions, and the range ball's own, before a ball: an undated occasion has no day's part. */
function beforeOf(
  bag: { readonly means: readonly number[]; readonly covariance: readonly (readonly number[])[] },
  kinds: readonly { readonly ageDays: number | undefined; readonly rangeBall: boolean }[],
  wanders: number,
): JointNormal {
  const n = bag.means.length;
  const d = n + kinds.length + 1;
  const mean = new Float64Array(d);
  const covariance = new Float64Array(d * d);
  const put = (i: number, j: number, x: number): void => void (covariance[i * d + j] = x);
  bag.means.forEach((m, i) => {
    mean[i] = m;
    bag.covariance[i]!.forEach((x, j) => put(i, j, x));
  });
  const variance = RANGE_BALL.sd ** 2;
  mean[d - 1] = RANGE_BALL.mean;
  put(d - 1, d - 1, variance);
  kinds.forEach((a, i) => {
    if (a.rangeBall) {
      mean[n + i] = RANGE_BALL.mean;
      put(n + i, d - 1, variance);
      put(d - 1, n + i, variance);
    }
    kinds.forEach((b, j) => {
      let x = a.rangeBall && b.rangeBall ? variance : 0;
      if (a.ageDays !== undefined && b.ageDays !== undefined)
        x += (wanders ** 2 * Math.min(a.ageDays, b.ageDays)) / YEAR_DAYS + (a.ageDays === b.ageDays ? SD_DAY ** 2 : 0);
      put(n + i, n + j, x);
    });
  });
  return { mean, covariance };
}

/** What a swing's balls of each occasion say of its carry then. */
function measuredOf(
  level: Level,
  s: BagSwing & Seen,
  k: number,
  swings: number,
  at: ReadonlyMap<string, number>,
  logCarry: number,
): readonly Measured[] {
  const { sdCarryShare, directionSdDeg, mishitShare } = spreadPrior(level, s.club, s.swing);
  const full = isFullSwing(s.swing);
  const range = s.balls.filter((b) => b.onCourse !== true);
  const before = { logCarry, sdLog: WIDE, spread: sdCarryShare, mishitShare, full };
  const chances = goodChances(
    range.map((b) => b.carryM),
    before,
  );
  const sums = new Map<string, { weight: number; sum: number; errors: number }>();
  range.forEach((b, i) => {
    const sum = sums.get(keyOf(b)) ?? { weight: 0, sum: 0, errors: 0 };
    sums.set(keyOf(b), sum);
    const weight = chances[i]!;
    sum.weight += weight;
    sum.sum += weight * Math.log(Math.max(1, b.carryM));
    sum.errors += weight * ((b.seCarryM ?? 0) / Math.max(1, b.carryM)) ** 2;
  });
  const of = (key: string): readonly number[] => [k, swings + at.get(key)!];
  const found: Measured[] = [...sums].flatMap(([key, { weight, sum, errors }]) =>
    weight < 0.3
      ? []
      : [{ of: of(key), value: sum / weight, variance: (sdCarryShare ** 2 / INFORMATION + errors / weight) / weight }],
  );
  const carryM = Math.exp(logCarry);
  const wide: FigurePriors = priorsOf({
    carryM,
    seCarryM: WIDE * carryM,
    sdCarryM: sdCarryShare * carryM,
    directionSdDeg,
    mishitShare,
  });
  const course = Map.groupBy([...s.balls.filter((b) => b.onCourse === true), ...(s.unseen ?? [])], keyOf);
  for (const [key, of1] of course) {
    const balls = of1.filter((b): b is Ball => 'carryM' in b);
    const unseen = of1.filter((b): b is Unseen => !('carryM' in b));
    const { sample } = beliefIn({ ...s, full, balls, unseen }, wide, 300);
    const mean = meanOf(sample, LOG_CARRY);
    const precision = 1 / sdOf(sample, LOG_CARRY, mean) ** 2 - 1 / WIDE ** 2;
    if (precision > 0.1 / WIDE ** 2)
      found.push({
        of: of(key),
        value: (mean * (precision + 1 / WIDE ** 2) - logCarry / WIDE ** 2) / precision,
        variance: 1 / precision,
      });
  }
  return found;
}

/** Balls as they would have gone now and with the player's own ball. */
export function movedToNow<T extends Seen>(seen: T, { occasions }: Occasions): T {
  const by = new Map(occasions.map((o) => [JSON.stringify([o.ageDays ?? '', o.rangeBall]), Math.exp(-o.offset)]));
  const scaled = (w: Unseen['window'], x: number): Unseen['window'] => ({
    ...w,
    shortM: w.shortM * x,
    longM: w.longM * x,
  });
  return {
    ...seen,
    balls: seen.balls.map((b): Ball => {
      const x = by.get(keyOf(b)) ?? 1;
      const erred = b.seCarryM === undefined ? {} : { seCarryM: b.seCarryM * x };
      const within = b.seenIn === undefined ? {} : { seenIn: scaled(b.seenIn, x) };
      return { ...b, carryM: b.carryM * x, ...erred, ...within };
    }),
    ...(seen.unseen === undefined
      ? {}
      : { unseen: seen.unseen.map((u): Unseen => ({ ...u, window: scaled(u.window, by.get(keyOf(u)) ?? 1) })) }),
  };
}
