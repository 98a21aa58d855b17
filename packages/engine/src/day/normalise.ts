import { type Calibrated, type Conditions, type Landing, launchTo } from '../flight/calibrate.ts';
import type { LaunchFamily } from '../flight/family.ts';
import { fly } from '../flight/fly.ts';
import { REFERENCE, stillAirOf } from './day.ts';

/** Where a shot was hit: its air, the height of the landing above the ball, and the ball's carry as a share of the player's own. */
export interface PlayedIn extends Conditions {
  readonly ballFactor?: number;
}

/** Calm, level, the reference air, the player's own ball. */
export const REFERENCE_CONDITIONS: PlayedIn = { air: stillAirOf(REFERENCE) };

/** A landing moved to other conditions, or why it cannot be. */
export type Moved =
  | (Landing & { readonly status: 'found' })
  | { readonly status: 'never there'; readonly apexM: number }
  | Exclude<Calibrated, { readonly status: 'found' }>;

/**
 * Where the same swing lands in other conditions: the launch of the family that explains the landing where it was measured is flown again.
 * From a day to the reference day this is a measured shot's stored carry and side; the other way it is today's. There and back is the
 * identity to 2 mm.
 */
export function moveShot(shot: Landing, family: LaunchFamily, loftDeg: number, from: PlayedIn, to: PlayedIn): Moved {
  const ownM = 1 / (from.ballFactor ?? 1);
  const found = launchTo({ alongM: shot.alongM * ownM, acrossM: shot.acrossM * ownM }, family, loftDeg, from);
  if (found.status !== 'found') return found;
  const flight = fly(found.launch, to.air, to.heightM);
  if (!flight.landed) return { status: 'never there', apexM: flight.apexM };
  const ball = to.ballFactor ?? 1;
  return { status: 'found', alongM: flight.carryM * ball, acrossM: flight.sideM * ball };
}
