/**
 * How long a mishit is, as a share of the good strike's carry: most are short (fat, or off the toe or heel), a few are thin and long.
 * Short: Beta(3.2, 2.0), mean .615 and sd .195. Thin: a normal. Source: our own calibration of a whole-round model to published
 * counts of greens hit and of awful shots; no measured rate of fat and thin shots was found, so treat the shape as an assumption.
 */
export const SHORT_SHARE = 0.92;
export const SHORT_BETA = { a: 3.2, b: 2.0 } as const;

/** A thin full shot: the calibration's 1.25 to 1.55, capped at 1.30 because a full swing has no more to give. */
export const THIN_FULL = { mean: 1.275, sd: 0.03 } as const;
/** A thin part shot: uniform from 1.25 to 1.55. */
export const THIN_PART = { mean: 1.4, sd: 0.0866 } as const;

/** A mishit's direction is this much wider than a good strike's. */
export const MISHIT_DIRECTION_SPREAD = 1.6;

/**
 * Beta(3.2, 2.0) as two normals of equal weight: the means and standard deviations of its halves below and above the median,
 * so that the mean and the variance of the whole are kept.
 */
export const SHORT_HALVES = [
  { mean: 0.45412, sd: 0.12663 },
  { mean: 0.77665, sd: 0.0911 },
] as const;
