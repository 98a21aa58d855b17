import { type LaunchFamily, tournamentSpeedMps } from './family.ts';
import { flyInto } from './fly.ts';
import { emptyFlight, type Flight, type FlightAir, type Launch } from './launch.ts';

/** A launch found from where a ball landed, or why there is none. `flights` is how many it took. */
export type Calibrated =
  | { readonly status: 'found'; readonly launch: Launch; readonly flights: number }
  | { readonly status: 'too far'; readonly mostM: number }
  | { readonly status: 'too short'; readonly leastM: number }
  /** No flight comes closer than this: ground that slow balls do not rise to, or a wind that carries them off. */
  | { readonly status: 'unmet'; readonly missM: number };

/** Where a ball flew: the air, and how far above the ball the ground was that it came down on (nought unless said). */
export interface Conditions {
  readonly air: FlightAir;
  readonly heightM?: number;
}

const SLOWEST_MPS = 8;
/** Share of a tournament player's speed that no player's ball goes beyond. */
const FASTEST = 1.35;
const CLOSE_M = 1e-4;
/** What is further off than this was not met. */
const MET_M = 1e-3;
const MOST_FLIGHTS = 60;
/** About how much speed a metre of carry takes; the bracket's other end is sought half as far again. */
const MPS_PER_M = 0.25;
const OVERSHOOT = 1.5;

/** Straight-line distance over the ground from the ball to where it landed; nought for one that never rose to the target. */
export const landedAtM = (f: Flight): number => (f.landed ? Math.hypot(f.carryM, f.sideM) : 0);

/**
 * The launch of a family whose ball carries `carryM` in the conditions that the carry was measured in, to 0.1 mm. Carry rises with speed,
 * so the root is the only one: false position in the Illinois form, between 8 m/s and 1.35 times a tournament player's speed with
 * `loftDeg`. Beyond what that reaches it is refused: the loft is wrong, or a total distance was given as a carry. About 6 flights.
 */
export function calibrate(family: LaunchFamily, carryM: number, loftDeg: number, where: Conditions): Calibrated {
  const out = emptyFlight();
  let flights = 0;
  const miss = (speedMps: number): number => {
    flights++;
    return landedAtM(flyInto(out, family(speedMps), where.air, where.heightM)) - carryM;
  };
  const fastestMps = FASTEST * tournamentSpeedMps(loftDeg);
  const held = (speedMps: number): number => Math.min(fastestMps, Math.max(SLOWEST_MPS, speedMps));
  let [lo, hi] = [SLOWEST_MPS, fastestMps];
  let [missLo, missHi] = [Number.NaN, Number.NaN];
  let speed = held(8 + 0.265 * carryM + 0.0006 * carryM * Math.max(loftDeg - 10, 0));
  let missed = miss(speed);
  while (Math.abs(missed) > CLOSE_M) {
    if (missed > 0) [hi, missHi] = [speed, missed];
    else [lo, missLo] = [speed, missed];
    if (!Number.isNaN(missLo + missHi)) break;
    const next = held(speed - MPS_PER_M * OVERSHOOT * missed);
    if (next === speed && missed > 0) return { status: 'too short', leastM: missed + carryM };
    if (next === speed) return { status: 'too far', mostM: missed + carryM };
    speed = next;
    missed = miss(speed);
  }
  let kept = 0;
  while (Math.abs(missed) > CLOSE_M && flights < MOST_FLIGHTS) {
    speed = (lo * missHi - hi * missLo) / (missHi - missLo);
    missed = miss(speed);
    if (missed > 0) {
      [hi, missHi] = [speed, missed];
      if (kept > 0) missLo /= 2;
      kept = 1;
    } else {
      [lo, missLo] = [speed, missed];
      if (kept < 0) missHi /= 2;
      kept = -1;
    }
  }
  return Math.abs(missed) > MET_M
    ? { status: 'unmet', missM: Math.abs(missed) }
    : { status: 'found', launch: family(speed), flights };
}

/** A place relative to the ball: metres along the target line and to its right. */
export interface Landing {
  readonly alongM: number;
  readonly acrossM: number;
}

const MOST_TURNS = 20;

/**
 * The launch of a family that lands at a place: its speed, and its start direction turned until the flight ends there, wind and tilt
 * included, to 0.1 mm.
 */
export function launchTo(place: Landing, family: LaunchFamily, loftDeg: number, where: Conditions): Calibrated {
  const wantedM = Math.hypot(place.alongM, place.acrossM);
  const wantedRad = Math.atan2(place.acrossM, place.alongM);
  const out = emptyFlight();
  let turnDeg = 0;
  let flights = 0;
  for (let i = 0; ; i++) {
    const azimuthDeg = turnDeg;
    const turned: LaunchFamily = (speedMps) => {
      const launch = family(speedMps);
      return { ...launch, azimuthDeg: (launch.azimuthDeg ?? 0) + azimuthDeg };
    };
    const found = calibrate(turned, wantedM, loftDeg, where);
    if (found.status !== 'found') return found;
    flyInto(out, found.launch, where.air, where.heightM);
    flights += found.flights + 1;
    const offRad = wantedRad - Math.atan2(out.sideM, out.carryM);
    const missM = Math.abs(offRad) * wantedM;
    if (missM <= CLOSE_M) return { ...found, flights };
    if (i === MOST_TURNS) return { status: 'unmet', missM };
    turnDeg += (offRad * 180) / Math.PI;
  }
}
