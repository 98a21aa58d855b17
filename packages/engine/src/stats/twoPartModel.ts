import { normalCdf } from '../math/normal.ts';
import type { Ball, CourseAdds, PackedBalls, Unseen, Window } from './ball.ts';
import { MISHIT_DIRECTION_SPREAD } from './mishit.ts';
import { mishitShape, type MishitShape } from './mishitShape.ts';

/**
 * The figures of a swing on scales where they are near enough normal, in this order: logarithm of the good carry (metres), logarithm of its
 * standard deviation as a share of the carry, bias (degrees), logarithm of the direction's standard deviation (degrees), Fisher's z of
 * their correlation, logit of the mishit share, and the logarithm of the short side's width over the long side's.
 */
export const FIGURES = 7;
export const LOG_CARRY = 0;
export const LOG_SPREAD = 1;
export const BIAS = 2;
export const LOG_DIRECTION = 3;
export const FISHER_Z = 4;
export const LOGIT_MISHIT = 5;
export const SKEW = 6;

/** At most this share of balls on a course is mishit, whatever is added. */
const MOST_MISHITS = 0.8;
/** No chance is taken for smaller, so that a logarithm stays a number. */
const LEAST = 1e-300;
/** Share of mishits that start anywhere within this many degrees, so that a wild ball is a mishit and widens nothing. */
const WILD = 0.03;
const WILD_DEG = 120;
const ROOT_2PI = 1 / Math.sqrt(2 * Math.PI);
const HALF_MEAN = Math.sqrt(2 / Math.PI);

export const shareOfLogit = (logit: number): number => 1 / (1 + Math.exp(-logit));
export const logitOf = (share: number): number => Math.log(share / (1 - share));

/**
 * A good strike's carry: two half normals joined at the mode, of mean 0 and standard deviation 1, the short side exp(skew) times as wide as
 * the long one.
 */
export class SkewNormal {
  readonly mode: number;
  readonly short: number;
  readonly long: number;
  private readonly top: number;

  constructor(skew: number) {
    const difference = 2 * Math.sinh(skew / 2);
    const scale = 1 / Math.sqrt(1 + (1 - 2 / Math.PI) * difference * difference);
    this.short = scale * Math.exp(skew / 2);
    this.long = scale * Math.exp(-skew / 2);
    this.top = HALF_MEAN / (this.short + this.long);
    this.mode = HALF_MEAN * (this.short - this.long);
  }

  pdf(z: number): number {
    const u = z - this.mode;
    const v = u / (u < 0 ? this.short : this.long);
    return this.top * Math.exp(-0.5 * v * v);
  }

  cdf(z: number): number {
    const u = z - this.mode;
    const total = this.short + this.long;
    return u < 0
      ? ((2 * this.short) / total) * normalCdf(u / this.short)
      : 1 - ((2 * this.long) / total) * normalCdf(-u / this.long);
  }
}

/** One swing with its figures taken off their scales; answers for single balls. */
export class TwoPart {
  readonly carryM: number;
  readonly sdCarryM: number;
  readonly biasDeg: number;
  readonly directionSdDeg: number;
  readonly corr: number;
  readonly mishitShare: number;
  private readonly good: SkewNormal;
  private readonly shape: MishitShape;
  private readonly course: CourseAdds;
  private goodThere = 0;
  private mishitThere = 0;

  constructor(x: readonly number[], full: boolean, course: CourseAdds) {
    this.carryM = Math.exp(x[LOG_CARRY]!);
    this.sdCarryM = this.carryM * Math.exp(x[LOG_SPREAD]!);
    this.biasDeg = x[BIAS]!;
    this.directionSdDeg = Math.exp(x[LOG_DIRECTION]!);
    this.corr = Math.tanh(x[FISHER_Z]!);
    this.mishitShare = shareOfLogit(x[LOGIT_MISHIT]!);
    this.good = new SkewNormal(x[SKEW]!);
    this.shape = mishitShape(full);
    this.course = course;
  }

  /** Density of the ball as a good strike and as a mishit, each times its share. */
  partsAt(ball: Ball): { readonly good: number; readonly mishit: number } {
    this.weigh(
      ball.carryM,
      ball.directionDeg ?? Number.NaN,
      ball.seCarryM ?? 0,
      ball.seDirectionDeg ?? 0,
      ball.onCourse === true,
      this.corr,
    );
    return { good: this.goodThere, mishit: this.mishitThere };
  }

  /** Logarithm of the chance of all that was seen. */
  logLikelihood(seen: PackedBalls): number {
    let sum = 0;
    for (let i = 0; i < seen.n; i++) {
      const window = seen.windows[i];
      // The chance of a window leaves correlation out, so a ball that is seen only in one must too.
      const corr = window === undefined ? this.corr : 0;
      this.weigh(
        seen.carryM[i]!,
        seen.directionDeg[i]!,
        seen.seCarryM[i]!,
        seen.seDirectionDeg[i]!,
        seen.onCourse[i] === 1,
        corr,
      );
      let density = this.goodThere + this.mishitThere;
      if (window !== undefined) density /= Math.max(1e-9, this.chanceOf(window, 'inside', seen.seCarryM[i]!));
      sum += seen.counts[i]! * Math.log(Math.max(LEAST, density));
    }
    for (const miss of seen.unseen)
      sum += (miss.counts ?? 1) * Math.log(Math.max(1e-12, this.chanceOf(miss.window, miss.side, 0)));
    return sum;
  }

  private weigh(carryM: number, deg: number, erredM: number, erredDeg: number, onCourse: boolean, corr: number): void {
    const sd = this.sdOf(onCourse, erredM);
    const share = this.shareOf(onCourse);
    const z = (carryM - this.carryM) / sd;
    this.goodThere = ((1 - share) * this.good.pdf(z)) / sd;
    this.mishitThere = (share * this.shape.density(carryM / this.carryM)) / this.carryM;
    if (Number.isNaN(deg)) return;
    const held = z < -3 ? -3 : z > 3 ? 3 : z;
    const own = this.directionSdDeg;
    const erredSq = erredDeg * erredDeg;
    const off = deg - this.biasDeg;
    const t = Math.sqrt(own * own * (1 - corr * corr) + erredSq);
    const u = (off - corr * own * held) / t;
    this.goodThere *= (ROOT_2PI * Math.exp(-0.5 * u * u)) / t;
    const wide = Math.sqrt(own * own * MISHIT_DIRECTION_SPREAD ** 2 + erredSq);
    const v = off / wide;
    this.mishitThere *= (1 - WILD) * ((ROOT_2PI * Math.exp(-0.5 * v * v)) / wide) + WILD / WILD_DEG;
  }

  private sdOf(onCourse: boolean, erredM: number): number {
    if (!onCourse && erredM === 0) return this.sdCarryM;
    const added = onCourse ? this.course.distanceShare * this.carryM : 0;
    return Math.sqrt(this.sdCarryM * this.sdCarryM + added * added + erredM * erredM);
  }

  private shareOf(onCourse: boolean): number {
    return onCourse ? Math.min(MOST_MISHITS, this.mishitShare + this.course.mishitShare) : this.mishitShare;
  }

  /** Chance that a ball on the course carries under `carryM`, by part. */
  private below(carryM: number, erredM: number): { readonly good: number; readonly mishit: number } {
    return {
      good: this.good.cdf((carryM - this.carryM) / this.sdOf(true, erredM)),
      mishit: this.shape.below(carryM / this.carryM),
    };
  }

  /** Chance that a ball on the course comes down in the window, or misses it on one side; correlation is left out of it. */
  chanceOf(window: Window, side: Unseen['side'] | 'inside', erredM: number): number {
    const share = this.shareOf(true);
    const from = this.below(window.shortM, erredM);
    const to = this.below(window.longM, erredM);
    const chance = (short: number, long: number, startsBelow: (deg: number) => number): number => {
      if (side === 'short') return short;
      if (side === 'long') return Math.max(0, 1 - long);
      const left = startsBelow(window.leftDeg);
      const right = startsBelow(window.rightDeg);
      if (side === 'left') return (long - short) * left;
      if (side === 'right') return (long - short) * (1 - right);
      const inside = (long - short) * (right - left);
      return side === 'inside' ? inside : 1 - inside;
    };
    const sd = this.directionSdDeg;
    const good = (deg: number): number => normalCdf((deg - this.biasDeg) / sd);
    const mishit = (deg: number): number =>
      (1 - WILD) * normalCdf((deg - this.biasDeg) / (sd * MISHIT_DIRECTION_SPREAD)) + WILD * (0.5 + deg / WILD_DEG);
    return (1 - share) * chance(from.good, to.good, good) + share * chance(from.mishit, to.mishit, mishit);
  }
}
