import { calibrate, landedAtM } from '../flight/calibrate.ts';
import { type FlightTag, launchFamily, TAG_SHIFT } from '../flight/family.ts';
import { launchesKnown, type SwingKnown } from '../flight/known.ts';
import { flyInto } from '../flight/fly.ts';
import { emptyFlight, type FlightAir, type Launch } from '../flight/launch.ts';
import { type LaunchEffect, withEffect } from '../flight/strike.ts';
import { type Doubted, doubted } from '../flight/variants.ts';
import { airOf, type Day, stillAirOf, windSdMps } from './day.ts';
import { REFERENCE_CONDITIONS } from './normalise.ts';

/** How a stroke is played today: in which direction, to ground how far above the ball, from what lie (clean unless said). */
export interface StrokeToday {
  readonly bearingDeg: number;
  readonly heightM: number;
  readonly lie?: LaunchEffect;
}

/** Where a swing lands today, and what makes it play like its carry on the reference day. The parts add up to `playsM`. */
export interface PlaysLike {
  /** From the ball to where it lands, in a straight line. */
  readonly toLandingM: number;
  readonly windM: number;
  readonly slopeM: number;
  readonly airM: number;
  readonly lieM: number;
  readonly playsM: number;
  /** The same parts with what is not known of the ball's flight; the wind's also with how it varies. */
  readonly doubt: { readonly wind: Doubted; readonly slope: Doubted; readonly air: Doubted };
}

/**
 * Today's number of a swing: its launch is flown in the reference air, then the day's air, the slope, the wind and the lie are brought in, in
 * this order; each part is what the carry loses to it, so that landing and parts add up to the carry that it plays like. `undefined` when
 * no launch has that carry, or the ball does not rise to where it is to land.
 */
export function numberToday(swing: SwingKnown, stroke: StrokeToday, day: Day): PlaysLike | undefined {
  const still = stillAirOf(day);
  const air = airOf(day, stroke.bearingDeg);
  const { heightM, lie } = stroke;
  const carries = launchesKnown(swing, REFERENCE_CONDITIONS).map((launch) => ({
    launch,
    referenceM: carriedM(launch, REFERENCE_CONDITIONS.air, 0),
    inAirM: carriedM(launch, still, 0),
    onSlopeM: carriedM(launch, still, heightM),
    inWindM: carriedM(launch, air, heightM),
  }));
  const [central] = carries;
  if (central === undefined) return undefined;
  const { launch, inAirM, onSlopeM, inWindM } = central;
  const toLandingM = lie === undefined ? inWindM : carriedM(withEffect(launch, lie), air, heightM);
  if (toLandingM === 0 || inWindM === 0 || onSlopeM === 0) return undefined;
  const playsM = ('carryM' in swing ? swing.carryM : undefined) ?? central.referenceM;
  const parts = { windM: onSlopeM - inWindM, slopeM: inAirM - onSlopeM, airM: playsM - inAirM };
  const landed = carries.filter((c) => c.onSlopeM > 0 && c.inWindM > 0);
  const asTheWindVaries = inWindM - carriedM(launch, stronger(air, day), heightM);
  return {
    toLandingM,
    ...parts,
    lieM: inWindM - toLandingM,
    playsM,
    doubt: {
      wind: doubted(
        parts.windM,
        landed.map((c) => c.onSlopeM - c.inWindM),
        asTheWindVaries,
      ),
      slope: doubted(
        parts.slopeM,
        landed.map((c) => c.inAirM - c.onSlopeM),
      ),
      air: doubted(
        parts.airM,
        landed.map((c) => c.referenceM - c.inAirM),
      ),
    },
  };
}

const CLOSE_M = 1e-3;
const MOST_TRIES = 40;
const WIDEN = 1.2;

/**
 * Today's number of a distance: the swing of the ladder that lands there today. `loftOf` gives the loft of the club that a player carries
 * so far with on the reference day, within 8 to 64 degrees; more carry lands further, so the root is the only one. `undefined` when none lands there.
 */
export function numberOfDistance(
  toLandingM: number,
  loftOf: (carryM: number) => number,
  stroke: StrokeToday,
  day: Day,
  tag?: FlightTag,
): PlaysLike | undefined {
  const air = airOf(day, stroke.bearingDeg);
  const landsM = (carryM: number): number => {
    const loftDeg = loftOf(carryM);
    const found = calibrate(launchFamily(loftDeg, TAG_SHIFT[tag ?? 'normal']), carryM, loftDeg, REFERENCE_CONDITIONS);
    if (found.status === 'too far') return Number.NaN;
    if (found.status !== 'found') return 0;
    const launch = stroke.lie === undefined ? found.launch : withEffect(found.launch, stroke.lie);
    return carriedM(launch, air, stroke.heightM);
  };
  let [lo, hi] = [0, toLandingM];
  for (let i = 0; i < MOST_TRIES && landsM(hi) < toLandingM; i++) [lo, hi] = [hi, hi * WIDEN];
  for (let i = 0; i < MOST_TRIES && hi - lo > CLOSE_M; i++) {
    const carryM = (lo + hi) / 2;
    if (landsM(carryM) < toLandingM) lo = carryM;
    else hi = carryM;
  }
  const carryM = (lo + hi) / 2;
  if (!(Math.abs(landsM(carryM) - toLandingM) < 1)) return undefined;
  return numberToday({ carryM, loftDeg: loftOf(carryM), ...(tag === undefined ? {} : { tag }) }, stroke, day);
}

/** How far a launch lands from the ball; nought when it does not rise so high. */
const carriedM = (launch: Launch, air: FlightAir, heightM: number): number =>
  landedAtM(flyInto(emptyFlight(), launch, air, heightM));

/** The wind stronger by its own standard deviation. */
function stronger(air: FlightAir, day: Day): FlightAir {
  const { speedMps } = day.wind;
  const factor = speedMps === 0 ? 1 : 1 + windSdMps(day.wind) / speedMps;
  return { ...air, tailMps: air.tailMps * factor, rightMps: air.rightMps * factor };
}
