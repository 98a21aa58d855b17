import { type Ball, type CourseAdds, packBalls, type Unseen } from './ball.ts';
import { normalQuantile } from '../math/normal.ts';
import { sampleFrom } from './importance.ts';
import { peakOf, type Peak } from './posterior.ts';
import { meanOf, quantilesOf, type Sample, sdOf } from './sample.ts';
import {
  BIAS,
  FISHER_Z,
  FIGURES,
  LOG_CARRY,
  LOG_DIRECTION,
  LOG_SPREAD,
  logitOf,
  LOGIT_MISHIT,
  shareOfLogit,
  SKEW,
  TwoPart,
} from './twoPartModel.ts';

/** A belief about one figure: normal. */
export interface Normal {
  readonly mean: number;
  readonly sd: number;
}

/** What is believed before the balls: one normal a figure of the model, on the scales and in the order of `twoPartModel.ts`. */
export type FigurePriors = readonly Normal[];

/** What was seen of one club and swing. */
export interface Seen {
  readonly balls: readonly Ball[];
  readonly unseen?: readonly Unseen[];
  readonly full: boolean;
  readonly course?: CourseAdds;
}

/** An estimate with its standard error on the scale on which it is near enough normal: plain, logarithm, or logit. */
export interface Estimate {
  readonly value: number;
  readonly se: number;
  /** On the plain scale: the values below which `CUTS` of the belief lie. */
  readonly cuts: readonly number[];
}

export const CUTS = [0.025, 0.1, 0.25, 0.5, 0.75, 0.9, 0.975] as const;

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
  /** Logarithm of the short side's width over the long side's, of good strikes. */
  readonly skew: number;
  /** Chance that each ball was a mishit, in the order of the balls. */
  readonly mishitChances: readonly number[];
  /** The belief itself, to draw from. */
  readonly sample: Sample;
}

/** Players of one level differ by 25 % in a spread, as much as 8 balls tell: 1 / (2 x .25^2). */
export const SPREAD_COUNT = 8;
export const SD_LOG_SPREAD = 1 / Math.sqrt(2 * SPREAD_COUNT);
/** They differ by .07 in a mishit share of .15 to .20, which is .5 in its logit; as much as 26 balls tell. */
export const MISHIT_COUNT = 26;
export const SD_LOGIT_MISHIT = 0.5;
/** Players' mean directions differ by this much. */
export const SD_BIAS_DEG = 2;
/** Their correlations of carry and direction differ by this much, in Fisher's z; worth 13 balls. */
export const SD_FISHER_Z = 0.25;
/** Good strikes fall off a little further short than long: our assumption, wide enough for balls to change it. */
export const SKEW_PRIOR: Normal = { mean: 0.06, sd: 0.12 };
const NO_COURSE: CourseAdds = { distanceShare: 0, mishitShare: 0 };

/** What is believed before the balls, as a coach would say it. */
export interface TwoPartPrior {
  readonly carryM: number;
  /** Standard deviation of the belief in the good strike's mean carry. */
  readonly seCarryM: number;
  readonly sdCarryM: number;
  readonly directionSdDeg: number;
  readonly mishitShare: number;
}

/** The priors of all figures, with players' usual differences about what is believed. */
export const priorsOf = (p: TwoPartPrior): FigurePriors => [
  { mean: Math.log(p.carryM), sd: p.seCarryM / p.carryM },
  { mean: Math.log(p.sdCarryM / p.carryM), sd: SD_LOG_SPREAD },
  { mean: 0, sd: SD_BIAS_DEG },
  { mean: Math.log(p.directionSdDeg), sd: SD_LOG_SPREAD },
  { mean: 0, sd: SD_FISHER_Z },
  { mean: logitOf(Math.min(0.95, Math.max(0.002, p.mishitShare))), sd: SD_LOGIT_MISHIT },
  SKEW_PRIOR,
];

const POINTS = 900;

/** A weighed sample, and the peaks that it was thrown from. */
export interface Belief {
  readonly sample: Sample;
  readonly tops: readonly (readonly number[])[];
}

/**
 * The belief in a swing's figures after its balls: every peak that is found from several starts is stood for by a normal, and the normals'
 * points are weighed by the likelihood and the priors. Mishits are kept and weighed, never dropped. With no balls it gives the priors back.
 * `from` are peaks to climb from again in place of the starts.
 */
export function beliefIn(
  seen: Seen,
  priors: FigurePriors,
  points = POINTS,
  from?: readonly (readonly number[])[],
): Belief {
  const { balls, full, unseen = [], course = NO_COURSE } = seen;
  const packed = packBalls(balls, unseen);
  const f = (x: readonly number[]): number => {
    let sum = new TwoPart(x, full, course).logLikelihood(packed);
    for (let i = 0; i < FIGURES; i++) {
      const { mean, sd } = priors[i]!;
      const z = (x[i]! - mean) / sd;
      sum -= 0.5 * z * z;
    }
    return sum;
  };
  const peaks = peaksOf(f, seen, priors, from);
  return { sample: sampleFrom(f, peaks, points), tops: peaks.map((p) => p.at) };
}

function peaksOf(
  f: (x: readonly number[]) => number,
  seen: Seen,
  priors: FigurePriors,
  from: readonly (readonly number[])[] | undefined,
): readonly Peak[] {
  const means = priors.map((p) => p.mean);
  const widest = priors.map((p) => p.sd);
  const n = seen.balls.length;
  const steps = priors.map(({ sd }, i) => 0.1 / Math.sqrt(1 / sd ** 2 + n * INFORMATION[i]!));
  steps[LOG_CARRY] = 0.1 / Math.sqrt(1 / priors[LOG_CARRY]!.sd ** 2 + n * Math.exp(-2 * means[LOG_SPREAD]!));
  steps[BIAS] = 0.1 / Math.sqrt(1 / priors[BIAS]!.sd ** 2 + n * Math.exp(-2 * means[LOG_DIRECTION]!));
  const sorted = seen.balls
    .map((b) => b.carryM)
    .filter((c) => c > 1)
    .toSorted((a, b) => a - b);
  const starts = [
    means[LOG_CARRY]!,
    ...(sorted.length === 0 ? [] : [0.4, 0.65, 0.9].map((q) => Math.log(sorted[Math.floor(q * (sorted.length - 1))]!))),
  ];
  const spread = Math.exp(means[LOG_SPREAD]!);
  const begun =
    from ??
    starts
      .map((carry) => means.map((m, i) => (i === LOG_CARRY ? carry : m)))
      .map((at) => ({ at, height: f(at) }))
      .toSorted((a, b) => b.height - a.height)
      .map(({ at }) => at);
  const peaks: Peak[] = [];
  for (const at of begun) {
    if (peaks.length === 2) break;
    if (peaks.some((p) => Math.abs(p.at[LOG_CARRY]! - at[LOG_CARRY]!) < spread)) continue;
    const peak = peakOf(f, at, steps, widest, CLOSE);
    const seenBefore = peaks.some((p) => p.at.every((x, i) => Math.abs(x - peak.at[i]!) < 20 * CLOSE * steps[i]!));
    if (!seenBefore) peaks.push(peak);
  }
  const best = Math.max(...peaks.map((p) => p.height));
  return peaks.filter((p) => p.height > best - 12);
}

/** The points need a peak only to this many standard deviations. */
const CLOSE = 0.05;

/** About what one ball tells of each figure, for the size of a step. */
const INFORMATION = [0, 2, 0, 2, 1, 0.13, 0.3];

/** The belief in a swing, told in its figures. */
export function fitOf(seen: Seen, sample: Sample): TwoPartFit {
  const carryM = meanOf(sample, LOG_CARRY, Math.exp);
  const at = Array.from({ length: FIGURES }, (_, i) => meanOf(sample, i));
  const normal = (figure: number): readonly number[] => {
    const sd = sdOf(sample, figure, at[figure]);
    return CUTS.map((share) => at[figure]! + sd * normalQuantile(share));
  };
  const of = (figure: number, to: (x: number) => number, value: number, scale = 1): Estimate => ({
    value,
    se: Math.max(1e-6, scale * sdOf(sample, figure, at[figure])),
    // Balls that may be mishits leave a carry lopsided, or with two peaks; the other figures are near enough normal, and so smoother.
    cuts: (figure === LOG_CARRY ? quantilesOf(sample, figure, CUTS) : normal(figure)).map(to),
  });
  let spread = 0;
  for (let i = 0; i < sample.weights.length; i++)
    spread += sample.weights[i]! * (sample.x[i * FIGURES + LOG_CARRY]! + sample.x[i * FIGURES + LOG_SPREAD]!);
  const sdM = Math.exp(spread);
  const share = meanOf(sample, LOGIT_MISHIT, shareOfLogit);
  const corr = meanOf(sample, FISHER_Z, Math.tanh);
  const swing = new TwoPart(at, seen.full, seen.course ?? NO_COURSE);
  return {
    n: seen.balls.length,
    carryM: of(LOG_CARRY, Math.exp, carryM, carryM),
    sdCarryM: of(LOG_SPREAD, (x) => Math.exp(x) * carryM, sdM),
    directionDeg: of(BIAS, (x) => x, at[BIAS]!),
    directionSdDeg: of(LOG_DIRECTION, Math.exp, Math.exp(at[LOG_DIRECTION]!)),
    corr,
    mishitShare: of(LOGIT_MISHIT, shareOfLogit, share),
    skew: at[SKEW]!,
    mishitChances: seen.balls.map((b) => {
      const { good, mishit } = swing.partsAt(b);
      return good + mishit > 0 ? mishit / (good + mishit) : 1;
    }),
    sample,
  };
}

/** Fits one club and swing on a prior of its own. */
export const fitTwoPart = (seen: Seen, prior: TwoPartPrior): TwoPartFit =>
  fitOf(seen, beliefIn(seen, priorsOf(prior)).sample);
