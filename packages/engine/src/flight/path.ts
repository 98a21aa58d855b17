import { flyInto } from './fly.ts';
import { emptyFlight, type Flight, type FlightAir, type Launch } from './launch.ts';

/** The step for drawing a flight. */
const DRAWN_STEP_S = 0.05;
const NUMBERS_A_POINT = 4;
/** No ball rises for longer. */
const LONGEST_RISE_S = 15;

/** A flight and the points it passes: time, along, height and right of each, from the ball to the landing. */
export interface FlightPath {
  readonly flight: Flight;
  readonly points: Float64Array;
}

/** A flight to be drawn. One that never comes down through the target's height ends where it turns. */
export function flightPath(launch: Launch, air: FlightAir, targetHeightM = 0, stepS = DRAWN_STEP_S): FlightPath {
  const flight = flyInto(emptyFlight(), launch, air, targetHeightM, stepS);
  const steps = flight.landed ? Math.ceil(flight.timeS / stepS - 1e-9) : Math.ceil(LONGEST_RISE_S / stepS);
  const points = new Float64Array(NUMBERS_A_POINT * (steps + 1));
  flyInto(flight, launch, air, targetHeightM, stepS, points);
  return { flight, points: flight.landed ? points : points.subarray(0, endOf(points)) };
}

/** Where the points end: a point later than the first has a time. */
function endOf(points: Float64Array): number {
  let at = NUMBERS_A_POINT;
  while (at < points.length && (points[at] ?? 0) > 0) at += NUMBERS_A_POINT;
  return at;
}
