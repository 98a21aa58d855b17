import { calibrate, landedAtM } from '../flight/calibrate.ts';
import { type FlightTag, launchFamily, measuredFamily, TAG_SHIFT } from '../flight/family.ts';
import { flyInto } from '../flight/fly.ts';
import { emptyFlight, type FlightAir, type Launch } from '../flight/launch.ts';
import { type LaunchEffect, withEffect } from '../flight/strike.ts';
import { type Doubted, doubted, familiesOf, launchesOf } from '../flight/variants.ts';
import { airOf, type Day, stillAirOf, windSdMps } from './day.ts';
import { REFERENCE_CONDITIONS } from './normalise.ts';

/** A club and swing as far as its flight is known: its carry on the reference day and loft, and a tag or a measured launch besides. */
export interface SwingKnown {
  readonly carryM: number;
  readonly loftDeg: number;
  readonly tag?: FlightTag;
  readonly launch?: Launch;
}

/** How a stroke is played today: in which direction, to ground how far above the ball, from what lie (clean unless said). */
export interface StrokeToday {
  readonly bearingDeg: number;
  readonly heightM: number;
  readonly lie?: LaunchEffect;
}

/** Where a swing lands today, and what makes it play like its carry on the reference day. The parts add up to `playsM`. */
export interface PlaysLike {
  readonly toLandingM: number;
  readonly windM: number;
  readonly slopeM: number;
  readonly airM: number;
  readonly lieM: number;
  readonly playsM: number;
  /** The wind's part with its doubt: how high the ball flies, and how the wind varies. */
  readonly wind: Doubted;
}

/**
 * Today's number of a swing: its launch is flown in the reference air, then with the day's air, the slope, the wind and the lie brought in in this
 * order; each part is what the carry loses to it, so that landing and parts add up to the carry that it plays like. `undefined` when
 * no launch has that carry, or the ball does not rise to where it is to land.
 */
export function numberToday(swing: SwingKnown, stroke: StrokeToday, day: Day): PlaysLike | undefined {
  const { carryM, loftDeg } = swing;
  const families = swing.launch === undefined ? familiesOf(loftDeg, swing.tag) : [measuredFamily(swing.launch)];
  const launches = launchesOf(families, carryM, loftDeg, REFERENCE_CONDITIONS);
  const [central] = launches;
  if (central === undefined) return undefined;
  const still = stillAirOf(day);
  const air = airOf(day, stroke.bearingDeg);
  const { heightM, lie } = stroke;

  const inAirM = carriedM(central, still, 0);
  const onSlopeM = carriedM(central, still, heightM);
  const inWindM = carriedM(central, air, heightM);
  const toLandingM = lie === undefined ? inWindM : carriedM(withEffect(central, lie), air, heightM);
  if (toLandingM === 0 || onSlopeM === 0) return undefined;
  const windM = onSlopeM - inWindM;
  const winds = launches.map((launch) => carriedM(launch, still, heightM) - carriedM(launch, air, heightM));
  return {
    toLandingM,
    windM,
    slopeM: inAirM - onSlopeM,
    airM: carryM - inAirM,
    lieM: inWindM - toLandingM,
    playsM: carryM,
    wind: doubted(windM, winds, inWindM - carriedM(central, stronger(air, day), heightM)),
  };
}

const CLOSE_M = 1e-3;
const MOST_TRIES = 40;

/**
 * Today's number of a distance: the swing of the ladder that lands there today. `loftOf` gives the loft of the club that a player carries
 * so far with on the reference day; more carry lands further, so the root is the only one. `undefined` when none lands there.
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
    if (found.status === 'too short') return 0;
    const launch = stroke.lie === undefined ? found.launch : withEffect(found.launch, stroke.lie);
    return carriedM(launch, air, stroke.heightM);
  };
  let [lo, hi] = [0, toLandingM];
  while (landsM(hi) < toLandingM) [lo, hi] = [hi, hi * 1.2];
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
