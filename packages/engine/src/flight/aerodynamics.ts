/** The ball of the Equipment Rules: the greatest mass and the least diameter allowed. */
export const BALL_MASS_KG = 0.04593;
export const BALL_RADIUS_M = 0.021335;

/** Standard gravity; its change with latitude and height is below 0.3 %. */
export const GRAVITY_MPS2 = 9.80665;

/** Reynolds numbers, in units of 100,000, that the coefficients are fitted to; beyond them the ends are held. */
const REYNOLDS_RANGE: readonly [number, number] = [0.45, 2.4];

const SATURATION = 0.48;
const FAINT_SPIN = 0.015;

/** The spin factor, bent so that the fit, a parabola, stays sound for wedges: .48 tanh(S / .48). */
const bent = (spinFactor: number): number => SATURATION * Math.tanh(spinFactor / SATURATION);

/** The part of the drag coefficient that the spin factor S = r w / V decides: .583 s + .502 s^2. */
export function dragOfSpin(spinFactor: number): number {
  const s = bent(spinFactor);
  return 0.583 * s + 0.502 * s * s;
}

/** The part of the drag coefficient that the Reynolds number decides; `reynolds` in units of 100,000. */
export const dragOfReynolds = (reynolds: number): number => 0.1375 + 0.0192 * reynolds;

/** The part of the lift coefficient that the spin factor decides, before the Reynolds number takes from it. */
export const liftOfSpin = (spinFactor: number): number => 0.082 + 0.99 * bent(spinFactor);

/** What the Reynolds number takes from the lift coefficient; `reynolds` in units of 100,000. */
export const liftLostToReynolds = (reynolds: number): number => 0.023 / (reynolds * reynolds);

/** Share of the lift that a ball with hardly any spin keeps: nought without spin, whole to 1 in 10^7 from S = .06 on. */
export const liftShare = (spinFactor: number): number => 1 - Math.exp(-((spinFactor / FAINT_SPIN) ** 2));

/** The Reynolds number that the coefficients are taken at: Re / 100,000, held within the fitted range. */
export const heldReynolds = (reynolds: number): number =>
  Math.min(REYNOLDS_RANGE[1], Math.max(REYNOLDS_RANGE[0], reynolds));

/**
 * Drag coefficient of a golf ball, F = 1/2 rho pi r^2 V^2 C along the air: C_D = .1375 + .0192 R + .583 s + .502 s^2 with s the bent
 * spin factor and R = Re / 100,000. A regression in the form of the rules bodies' own (US patent 6,186,002), refitted to public radar
 * figures; supported by data for 22 to 82 m/s and S from .04 to .9.
 */
export const dragCoefficient = (spinFactor: number, reynolds: number): number =>
  dragOfReynolds(heldReynolds(reynolds)) + dragOfSpin(spinFactor);

/** Lift coefficient, along spin axis x air velocity: C_L = max(0, .082 + .99 s - .023 / R^2) (1 - exp(-(S / .015)^2)). */
export const liftCoefficient = (spinFactor: number, reynolds: number): number =>
  Math.max(0, liftOfSpin(spinFactor) - liftLostToReynolds(heldReynolds(reynolds))) * liftShare(spinFactor);

/**
 * How fast spin fades, d ln w / dt = -rate V with V the air speed: 2.0e-5 rho / 1.20 / r (Smits and Smith 1994, as quoted by Penner
 * 2001; as a torque it grows with the density). 1/m.
 */
export const spinDecayPerM = (densityKgM3: number): number => ((2e-5 / BALL_RADIUS_M) * densityKgM3) / 1.2;
