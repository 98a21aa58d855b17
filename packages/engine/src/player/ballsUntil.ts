import { normalQuantile } from '../math/normal.ts';

export const Z95 = normalQuantile(0.975);
/** A good strike among doubtful ones tells this much of a certain one, about. */
export const INFORMATION = 0.85;

/** What one ball tells of a carry, as a precision: (1 - mishits) x .85 / sd^2. */
export const ballPrecision = (sdM: number, mishitShare: number): number => ((1 - mishitShare) * INFORMATION) / sdM ** 2;

/** Balls until a carry of this standard error has a 95-in-100 interval of half width `withinM`; precision adds up. */
export const ballsUntil = (withinM: number, seM: number, precision: number): number =>
  Math.max(0, Math.ceil(((Z95 / withinM) ** 2 - 1 / seM ** 2) / precision - 1e-9));
