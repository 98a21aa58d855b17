import { BALL_RADIUS_M } from './aerodynamics.ts';
import type { Launch } from './launch.ts';

/** How high a player hits this club against players of the same speed: a word that a coach can give without a measurement. */
export const FLIGHT_TAGS = ['low', 'normal', 'high'] as const;
export type FlightTag = (typeof FLIGHT_TAGS)[number];

/** How far a launch is moved from the family's own: degrees added, and a factor on the spin. */
export interface LaunchShift {
  readonly launchDeg: number;
  readonly spin: number;
}

export const UNSHIFTED: LaunchShift = { launchDeg: 0, spin: 1 };

/** What each tag moves (our assumption, a third of the usual range between players). */
export const TAG_SHIFT: { readonly [T in FlightTag]: LaunchShift } = {
  low: { launchDeg: -3, spin: 0.85 },
  normal: UNSHIFTED,
  high: { launchDeg: 3, spin: 1.15 },
};

/** The launches of one swing by ball speed, m/s. */
export type LaunchFamily = (speedMps: number) => Launch;

/** Mile = 1.609344 km, exactly. */
const MPS_PER_MPH = 0.44704;
const RPM_PER_RAD_PER_S = 60 / (2 * Math.PI);
/** Up to this loft a club is taken for a driver on a tee, degrees. */
const TEED_LOFT_DEG = 12.5;

/** Ball speed of a tournament player with this loft, m/s: 188.5 - 1.75 loft in mph. */
export const tournamentSpeedMps = (loftDeg: number): number => (188.5 - 1.75 * loftDeg) * MPS_PER_MPH;

/**
 * The central guess of how a ball leaves a club of this loft at each ball speed, where nothing but a carry is known. Anchored on public
 * radar means of tournament play (108 mph, 22.4 deg, 9,400 rpm to 170, 10.4, 2,600); how slower and faster players differ (higher with
 * less spin factor; the spin rate held) is our judgement. `loftDeg` 8 to 64.
 */
export function launchFamily(loftDeg: number, shift: LaunchShift = UNSHIFTED): LaunchFamily {
  const reference = tournamentSpeedMps(loftDeg);
  const teed = loftDeg <= TEED_LOFT_DEG;
  return (speedMps) => {
    const slow = Math.min(0.45, Math.max(0, (reference - speedMps) / reference));
    const fast = Math.max(0, (speedMps - reference) / reference);
    const launchDeg = teed
      ? 10.5 + 9 * slow + 0.3 * (loftDeg - 10)
      : Math.max(0.47 * loftDeg, 9 + 0.02 * loftDeg) + 12 * slow;
    const spinFactor = teed
      ? 0.075 + 0.1 * slow + 0.003 * (loftDeg - 10)
      : (0.0078 * Math.min(loftDeg, 36) + 0.015 * Math.max(0, loftDeg - 36)) * (1 - 0.5 * slow);
    const spin = (spinFactor / (1 + fast)) * (speedMps / BALL_RADIUS_M);
    return {
      speedMps,
      launchDeg: Math.max(1, launchDeg + shift.launchDeg),
      spinRpm: spin * RPM_PER_RAD_PER_S * shift.spin,
    };
  };
}

/** The family of a ball whose launch was measured: angle, spin and axis as they are, at any speed. */
export const measuredFamily =
  (launch: Launch): LaunchFamily =>
  (speedMps) => ({ ...launch, speedMps });
