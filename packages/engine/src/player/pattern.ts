import { RAD_PER_DEG } from '../quantity/units.ts';
import { MISHIT_DIRECTION_SPREAD, SHORT_HALVES, SHORT_SHARE, THIN_FULL, THIN_PART } from '../stats/mishit.ts';
import type { NormalPart } from './option.ts';

/** A swing in the two-part model: good strikes normal in carry and direction, mishits of a fixed shape. */
export interface TwoPartSwing {
  /** Mean carry of a good strike, ball to pitch in a straight line. */
  readonly carryM: number;
  readonly sdCarryM: number;
  /** Mean direction of a ball, to the right of the aim. */
  readonly directionDeg: number;
  readonly directionSdDeg: number;
  /** Correlation of a good strike's carry and direction. */
  readonly corr: number;
  readonly mishitShare: number;
  /** Full swings cannot be hit far beyond their carry; part swings can. */
  readonly full: boolean;
}

/**
 * The two-part model as normals on the ground, the good strike first: good, short (two normals that keep the mean and variance of the
 * short mishits' beta shape), thin. Each normal has the mean and covariance of its part; the shape between them is the approximation.
 */
export function partsOf(s: TwoPartSwing): readonly NormalPart[] {
  const biasRad = s.directionDeg * RAD_PER_DEG;
  const sdRad = s.directionSdDeg * RAD_PER_DEG;
  const mishit = (weight: number, shape: { readonly mean: number; readonly sd: number }): NormalPart =>
    polarPart(weight, s.carryM * shape.mean, s.carryM * shape.sd, biasRad, sdRad * MISHIT_DIRECTION_SPREAD, 0);
  const short = (s.mishitShare * SHORT_SHARE) / SHORT_HALVES.length;
  return [
    polarPart(1 - s.mishitShare, s.carryM, s.sdCarryM, biasRad, sdRad, s.corr),
    ...SHORT_HALVES.map((half) => mishit(short, half)),
    mishit(s.mishitShare * (1 - SHORT_SHARE), s.full ? THIN_FULL : THIN_PART),
  ];
}

/**
 * Mean and covariance of (c cos d, c sin d) for carry c ~ N(mu, s^2) and direction d ~ N(b, t^2): exact when they are independent,
 * with E[e^{ikd}] = e^{ikb - k^2 t^2 / 2}; the correlation enters to first order.
 */
function polarPart(weight: number, mu: number, s: number, b: number, t: number, corr: number): NormalPart {
  const shrink1 = Math.exp((-t * t) / 2);
  const shrink2 = Math.exp(-2 * t * t);
  const alongM = mu * shrink1 * Math.cos(b) - corr * s * t * shrink1 * Math.sin(b);
  const acrossM = mu * shrink1 * Math.sin(b) + corr * s * t * shrink1 * Math.cos(b);
  const meanSq = mu * mu + s * s;
  const tilt = 2 * corr * mu * s * t * shrink2;
  const alongSq = (meanSq * (1 + shrink2 * Math.cos(2 * b))) / 2 - tilt * Math.sin(2 * b);
  const acrossSq = (meanSq * (1 - shrink2 * Math.cos(2 * b))) / 2 + tilt * Math.sin(2 * b);
  const product = (meanSq * shrink2 * Math.sin(2 * b)) / 2 + tilt * Math.cos(2 * b);
  return fromMoments(
    weight,
    alongM,
    acrossM,
    alongSq - alongM ** 2,
    acrossSq - acrossM ** 2,
    product - alongM * acrossM,
  );
}

function fromMoments(
  weight: number,
  alongM: number,
  acrossM: number,
  varAlong: number,
  varAcross: number,
  covariance: number,
): NormalPart {
  const sdAlongM = Math.sqrt(Math.max(varAlong, 1e-6));
  const sdAcrossM = Math.sqrt(Math.max(varAcross, 1e-6));
  const corr = Math.max(-0.95, Math.min(0.95, covariance / (sdAlongM * sdAcrossM)));
  return { weight, alongM, acrossM, sdAlongM, sdAcrossM, corr };
}

/**
 * A pattern of swings as it plays on a course: `distanceSdShare` of each part's length is added to its spread in quadrature, and
 * `moreMishits` is added to the weight of all parts but the first (at most .8 of all balls).
 */
export function widen(
  parts: readonly NormalPart[],
  distanceSdShare: number,
  moreMishits: number,
): readonly NormalPart[] {
  const wider = parts.map((p) => {
    const added = distanceSdShare * p.alongM;
    return fromMoments(
      p.weight,
      p.alongM,
      p.acrossM,
      p.sdAlongM ** 2 + added ** 2,
      p.sdAcrossM ** 2,
      p.corr * p.sdAlongM * p.sdAcrossM,
    );
  });
  const share = 1 - (parts[0]?.weight ?? 1);
  return withMishitShare(wider, Math.min(0.8, share + moreMishits));
}

/** The same parts with `share` of the weight on all but the first; a pattern of one part, or without mishits, is left as it is. */
function withMishitShare(parts: readonly NormalPart[], share: number): readonly NormalPart[] {
  const good = parts[0]?.weight ?? 1;
  if (parts.length < 2 || good >= 1) return parts;
  return parts.map((p, i) => ({ ...p, weight: i === 0 ? 1 - share : (p.weight * share) / (1 - good) }));
}

/** The narrowest spread that a pattern may have, metres: far under a ball's width, and enough for every density to be finite. */
const LEAST_SD_M = 0.01;

/** Parts as a file gives them, with weights that sum to 1 exactly and spreads of at least a centimetre. */
export function tidyParts(parts: readonly NormalPart[]): readonly NormalPart[] {
  const total = parts.reduce((sum, p) => sum + p.weight, 0);
  return parts.map((p) => ({
    ...p,
    weight: Math.abs(total - 1) < 1e-12 ? p.weight : p.weight / total,
    sdAlongM: Math.max(LEAST_SD_M, p.sdAlongM),
    sdAcrossM: Math.max(LEAST_SD_M, p.sdAcrossM),
  }));
}

/** A pattern from another lie: scaled as a whole by `distance`, its spreads multiplied beyond that, its mishits more frequent. */
export function fromLie(
  parts: readonly NormalPart[],
  effect: { readonly distance: number; readonly along: number; readonly across: number; readonly mishit: number },
): readonly NormalPart[] {
  const moved = parts.map((p) => ({
    ...p,
    alongM: p.alongM * effect.distance,
    acrossM: p.acrossM * effect.distance,
    sdAlongM: p.sdAlongM * effect.distance * effect.along,
    sdAcrossM: p.sdAcrossM * effect.distance * effect.across,
  }));
  const share = 1 - (parts[0]?.weight ?? 1);
  return effect.mishit === 1 ? moved : withMishitShare(moved, Math.min(0.85, share * effect.mishit));
}
