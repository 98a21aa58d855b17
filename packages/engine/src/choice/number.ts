import type { BallState, Priced } from '../value/solution.ts';
import { distanceM } from '../geometry/segment.ts';

/** Today's number: what the shot plays on the reference day from a good lie. The parts add up to `playsM`. */
export interface TodaysNumber {
  readonly toLandingM: number;
  readonly windM: number;
  readonly slopeM: number;
  readonly airM: number;
  readonly lieM: number;
  readonly playsM: number;
}

/** In calm air on level ground only the lie counts: what it takes from the option's length is added. */
export function todaysNumber(from: BallState, priced: Priced): TodaysNumber {
  const toLandingM = distanceM(from.at, priced.lands);
  const { byLie } = priced.option;
  const good = (byLie.tee ?? byLie.fairway)?.parts[0];
  const here = byLie[from.lie]?.parts[0];
  const lieM = good === undefined || here === undefined ? 0 : good.alongM - here.alongM;
  return { toLandingM, windM: 0, slopeM: 0, airM: 0, lieM, playsM: toLandingM + lieM };
}
