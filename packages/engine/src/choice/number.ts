import { numberToday } from '../day/todaysNumber.ts';
import type { Doubted } from '../flight/variants.ts';
import { distanceM } from '../geometry/segment.ts';
import { isReference } from '../reach/clubToday.ts';
import { flightOf } from '../reach/reach.ts';
import { RAD_PER_DEG } from '../quantity/units.ts';
import type { BallState, HoleSolution, Priced } from '../value/solution.ts';

/** Today's number: what the shot plays on the reference day from a good lie. The parts add up to `playsM`. */
export interface TodaysNumber {
  readonly toLandingM: number;
  readonly windM: number;
  readonly slopeM: number;
  readonly airM: number;
  readonly lieM: number;
  readonly playsM: number;
  /** What is not known of the ball's flight, and how the wind varies: parts that are nought are left out. */
  readonly doubt: { readonly [P in 'wind' | 'slope' | 'air']?: Doubted };
}

/**
 * What the day takes from the good strike, told as metres that are added: air, slope and wind by the flight that has the carry, the lie by what it takes from the
 * option's length. Landing and parts add up; centimetres that the solver's table differs by go to the last part that there is, wind, slope or air.
 */
export function todaysNumber(solution: HoleSolution, from: BallState, priced: Priced): TodaysNumber {
  const { day } = solution;
  const toLandingM = distanceM(from.at, priced.lands);
  const { byLie } = priced.option;
  const clean = (byLie.tee ?? byLie.fairway)?.parts[0];
  const pattern = byLie[from.lie];
  const here = pattern?.parts[0];
  const lieM = clean === undefined || here === undefined ? 0 : clean.alongM - here.alongM;
  const still = { toLandingM, windM: 0, slopeM: 0, airM: 0, lieM, playsM: toLandingM + lieM, doubt: {} };
  if (pattern === undefined || here === undefined) return still;
  const heightM = solution.heightAt(priced.lands) - solution.heightAt(from.at);
  if (isReference(day) && heightM === 0) return still;
  const swing = { ...flightOf(priced.option, pattern), carryM: here.alongM };
  const bearingDeg = priced.bearingRad / RAD_PER_DEG;
  const found = numberToday(swing, { bearingDeg, heightM }, day);
  const takenM = Math.hypot(here.alongM, here.acrossM) - toLandingM;
  const windy = day.wind.speedMps > 0;
  const level = heightM === 0;
  const airM = windy || !level ? (found?.airM ?? 0) : takenM;
  const slopeM = level ? 0 : windy ? (found?.slopeM ?? 0) : takenM - airM;
  const windM = windy ? takenM - slopeM - airM : 0;
  return {
    toLandingM,
    windM,
    slopeM,
    airM,
    lieM,
    playsM: toLandingM + windM + slopeM + airM + lieM,
    doubt: {
      ...(found === undefined || windM === 0 ? {} : { wind: about(windM, found.doubt.wind) }),
      ...(found === undefined || slopeM === 0 ? {} : { slope: about(slopeM, found.doubt.slope) }),
      ...(found === undefined || Math.abs(airM) < 0.005 ? {} : { air: about(airM, found.doubt.air) }),
    },
  };
}

/** The same doubt about a figure of its own. */
const about = (m: number, { mean, lo80, hi80 }: Doubted): Doubted => ({
  mean: m,
  lo80: m + lo80 - mean,
  hi80: m + hi80 - mean,
});
