import { logGamma } from '../math/gamma.ts';
import { MISHIT_DIRECTION_SPREAD, SHORT_BETA, SHORT_SHARE, THIN_FULL, THIN_PART } from './mishit.ts';
import { peakOf } from './posterior.ts';

/** One ball: carry in a straight line to its pitch, and direction to the right of the aim when it was measured. */
export interface Ball {
  readonly carryM: number;
  readonly directionDeg?: number;
}

/** What is believed before the balls. */
export interface TwoPartPrior {
  readonly carryM: number;
  /** Standard deviation of the belief in the good strike's mean carry. */
  readonly seCarryM: number;
  readonly sdCarryM: number;
  readonly directionSdDeg: number;
  readonly mishitShare: number;
  readonly full: boolean;
}

/** An estimate with its standard error on the scale on which it is near enough normal: plain, logarithm, or logit. */
export interface Estimate {
  readonly value: number;
  readonly se: number;
}

/** A club and swing as fitted. */
export interface TwoPartFit {
  readonly n: number;
  readonly carryM: Estimate;
  /** `se` is of the logarithm. */
  readonly sdCarryM: Estimate;
  readonly directionDeg: Estimate;
  /** `se` is of the logarithm. */
  readonly directionSdDeg: Estimate;
  readonly corr: number;
  /** `se` is of the logit. */
  readonly mishitShare: Estimate;
  /** Chance that each ball was a mishit, in the order of the balls. */
  readonly mishitChances: readonly number[];
  readonly settled: boolean;
}

/** Balls that the prior of a spread is worth: players of one level differ by 25 %, and 1 / (2 x .25^2) = 8. */
export const SPREAD_COUNT = 8;
export const SD_LOG_SPREAD = 1 / Math.sqrt(2 * SPREAD_COUNT);
/** Balls that the prior of the mishit share is worth: players of one level differ by .07 at .15 to .20. */
export const MISHIT_COUNT = 26;
/** Players' mean directions differ by this much. */
export const SD_BIAS_DEG = 2;
/** Their correlations of carry and direction differ by this much, in Fisher's z; worth 13 balls. */
const SD_FISHER_Z = 0.25;
/** Good strikes' directions have the tails of Student's t with this many degrees of freedom. */
const FREEDOM = 8;
/** Share of mishits that may have any carry up to twice the good one, so that a stray figure is a mishit and not a crisis. */
const STRAY = 0.01;

const LOG_T = logGamma((FREEDOM + 1) / 2) - logGamma(FREEDOM / 2) - 0.5 * Math.log(Math.PI * (FREEDOM - 2));
const LOG_NORMAL = -0.5 * Math.log(2 * Math.PI);

const LOG_BETA_SCALE = logGamma(SHORT_BETA.a + SHORT_BETA.b) - logGamma(SHORT_BETA.a) - logGamma(SHORT_BETA.b);

/** Density of the short mishits' share of the good carry, in (0, 1). */
const shortDensity = (x: number): number =>
  Math.exp(LOG_BETA_SCALE + (SHORT_BETA.a - 1) * Math.log(x)) * (1 - x) ** (SHORT_BETA.b - 1);

interface Parameters {
  readonly mu: number;
  readonly s: number;
  readonly bias: number;
  readonly t: number;
  readonly corr: number;
  readonly mishit: number;
}

/** Log density of a direction about `mean` with standard deviation `sd`: a t of 8 degrees of freedom, scaled. */
const logDirection = (deg: number, mean: number, sd: number): number => {
  const q = (deg - mean) / sd;
  return LOG_T - Math.log(sd) - ((FREEDOM + 1) / 2) * Math.log1p((q * q) / (FREEDOM - 2));
};

function logGood(ball: Ball, p: Parameters): number {
  const z = (ball.carryM - p.mu) / p.s;
  const carry = LOG_NORMAL - Math.log(p.s) - 0.5 * z * z;
  if (ball.directionDeg === undefined) return carry;
  const zHeld = Math.max(-3, Math.min(3, z));
  return carry + logDirection(ball.directionDeg, p.bias + p.corr * p.t * zHeld, p.t * Math.sqrt(1 - p.corr ** 2));
}

function logMishit(ball: Ball, p: Parameters, full: boolean): number {
  const x = ball.carryM / p.mu;
  const thin = full ? THIN_FULL : THIN_PART;
  const z = (x - thin.mean) / thin.sd;
  const short = x < 1 ? SHORT_SHARE * shortDensity(Math.max(0.02, x)) : 0;
  const long = ((1 - SHORT_SHARE) * Math.exp(-0.5 * z * z + LOG_NORMAL)) / thin.sd;
  const carry = Math.log((1 - STRAY) * (short + long) + STRAY / 2) - Math.log(p.mu);
  if (ball.directionDeg === undefined) return carry;
  return carry + logDirection(ball.directionDeg, p.bias, p.t * MISHIT_DIRECTION_SPREAD);
}

/** log(e^a + e^b). */
const logSum = (a: number, b: number): number => Math.max(a, b) + Math.log1p(Math.exp(-Math.abs(a - b)));

const logitOf = (p: number): number => Math.log(p / (1 - p));
const shareOf = (logit: number): number => 1 / (1 + Math.exp(-logit));

const unpack = ([mu = 0, logS = 0, bias = 0, logT = 0, z = 0, logit = 0]: readonly number[]): Parameters => ({
  mu: Math.max(1e-3, mu),
  s: Math.exp(logS),
  bias,
  t: Math.exp(logT),
  corr: Math.tanh(z),
  mishit: Math.min(1 - 1e-9, Math.max(1e-9, shareOf(logit))),
});

const pack = (p: Parameters): readonly number[] => [
  p.mu,
  Math.log(p.s),
  p.bias,
  Math.log(p.t),
  Math.atanh(p.corr),
  logitOf(p.mishit),
];

/** Log of likelihood times prior; the prior of spreads and of the mishit share are counts of balls that behaved as expected. */
function logPosterior(balls: readonly Ball[], prior: TwoPartPrior, p: Parameters): number {
  const logGoodShare = Math.log(1 - p.mishit);
  const logMishitShare = Math.log(p.mishit);
  let sum = 0;
  for (const ball of balls)
    sum += logSum(logGoodShare + logGood(ball, p), logMishitShare + logMishit(ball, p, prior.full));
  const spread = (now: number, before: number): number => -SPREAD_COUNT * (Math.log(now) + 0.5 * (before / now) ** 2);
  return (
    sum -
    0.5 * ((p.mu - prior.carryM) / prior.seCarryM) ** 2 -
    0.5 * (p.bias / SD_BIAS_DEG) ** 2 -
    0.5 * (Math.atanh(p.corr) / SD_FISHER_Z) ** 2 +
    spread(p.s, prior.sdCarryM) +
    spread(p.t, prior.directionSdDeg) +
    MISHIT_COUNT * (prior.mishitShare * logMishitShare + (1 - prior.mishitShare) * logGoodShare)
  );
}

const mishitChance = (ball: Ball, p: Parameters, full: boolean): number =>
  shareOf(logitOf(p.mishit) + logMishit(ball, p, full) - logGood(ball, p));

/** One round of expectation and maximisation: shares each ball between the parts, then moves every parameter with the prior's counts. */
function emRound(balls: readonly Ball[], prior: TwoPartPrior, p: Parameters): Parameters {
  const good = balls.map((b) => 1 - mishitChance(b, p, prior.full));
  const total = good.reduce((sum, g) => sum + g, 0);
  const weight = (p.s / prior.seCarryM) ** 2;
  let carry = weight * prior.carryM;
  balls.forEach((b, i) => (carry += (good[i] ?? 0) * b.carryM));
  const mu = carry / (weight + total);
  let carrySq = SPREAD_COUNT * prior.sdCarryM ** 2;
  balls.forEach((b, i) => (carrySq += (good[i] ?? 0) * (b.carryM - mu) ** 2));
  const direction = directionRound(balls, good, prior, p);
  const expected = MISHIT_COUNT * prior.mishitShare + balls.length - total;
  return {
    ...p,
    ...direction,
    mu,
    s: Math.sqrt(carrySq / (SPREAD_COUNT + total)),
    mishit: expected / (MISHIT_COUNT + balls.length),
  };
}

/** Bias and direction spread: mishits count at their wider spread, and far directions count less, as Student's t has it. */
function directionRound(
  balls: readonly Ball[],
  good: readonly number[],
  prior: TwoPartPrior,
  p: Parameters,
): { readonly bias: number; readonly t: number } {
  let sum = 0;
  let weights = (p.t / SD_BIAS_DEG) ** 2;
  let sq = SPREAD_COUNT * prior.directionSdDeg ** 2;
  let count = SPREAD_COUNT;
  balls.forEach((b, i) => {
    if (b.directionDeg === undefined) return;
    const g = good[i] ?? 0;
    for (const [share, widening] of [
      [g, 1],
      [1 - g, MISHIT_DIRECTION_SPREAD],
    ] as const) {
      const q = (b.directionDeg - p.bias) / (p.t * widening);
      const w = (share * (FREEDOM + 1)) / (FREEDOM - 2 + q * q);
      sum += (w * b.directionDeg) / widening ** 2;
      weights += w / widening ** 2;
      sq += w * ((b.directionDeg - p.bias) / widening) ** 2;
      count += share;
    }
  });
  return { bias: sum / weights, t: Math.sqrt(sq / count) };
}

const EM_ROUNDS = 40;

/**
 * Fits the two-part pattern of one club and swing: the most probable parameters given the balls and the prior, by expectation and
 * maximisation from several starts, then Newton's method; standard errors by the curvature there. Mishits are kept and weighed, never
 * dropped. With no balls it gives the prior back.
 */
export function fitTwoPart(balls: readonly Ball[], prior: TwoPartPrior): TwoPartFit {
  const value = (x: readonly number[]): number => logPosterior(balls, prior, unpack(x));
  const base = {
    s: prior.sdCarryM,
    bias: 0,
    t: prior.directionSdDeg,
    corr: 0,
    mishit: Math.min(0.9, Math.max(0.005, prior.mishitShare)),
  };
  const sorted = balls.map((b) => b.carryM).toSorted((a, b) => a - b);
  const quantile = (share: number): number => sorted[Math.floor(share * (sorted.length - 1))] ?? prior.carryM;
  const starts = [prior.carryM, quantile(0.5), quantile(0.75), quantile(0.9)].filter((mu) => mu > 0);
  let best: { readonly p: Parameters; readonly height: number } | undefined;
  for (const mu of starts) {
    let p: Parameters = { ...base, mu };
    for (let round = 0; round < EM_ROUNDS; round++) p = emRound(balls, prior, p);
    const height = value(pack(p));
    if (best === undefined || height > best.height) best = { p, height };
  }
  const from = best?.p ?? { ...base, mu: prior.carryM };
  const n = balls.length;
  const steps = [
    0.1 / Math.sqrt(1 / prior.seCarryM ** 2 + n / from.s ** 2),
    0.1 / Math.sqrt(2 * (SPREAD_COUNT + n)),
    0.1 / Math.sqrt(1 / SD_BIAS_DEG ** 2 + n / from.t ** 2),
    0.1 / Math.sqrt(2 * (SPREAD_COUNT + n)),
    0.1 / Math.sqrt(1 / SD_FISHER_Z ** 2 + n),
    0.1 / Math.sqrt((MISHIT_COUNT + n) * from.mishit * (1 - from.mishit)),
  ];
  const peak = peakOf(value, pack(from), steps);
  const p = unpack(peak.at);
  const se = (i: number): number => Math.sqrt(peak.covariance[i]?.[i] ?? 0);
  return {
    n,
    carryM: { value: p.mu, se: se(0) },
    sdCarryM: { value: p.s, se: se(1) },
    directionDeg: { value: p.bias, se: se(2) },
    directionSdDeg: { value: p.t, se: se(3) },
    corr: p.corr,
    mishitShare: { value: p.mishit, se: se(5) },
    mishitChances: balls.map((b) => mishitChance(b, p, prior.full)),
    settled: peak.settled,
  };
}
