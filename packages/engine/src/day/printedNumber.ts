import type { PlaysLike } from './todaysNumber.ts';

/** A number in whole units, as it is pencilled. */
export interface PrintedNumber {
  readonly lands: number;
  readonly wind: number;
  readonly slope: number;
  readonly air: number;
  readonly lie: number;
  readonly plays: number;
}

/**
 * Rounds a number to whole units of `unitM`: the distance and the total to the nearest, the parts up or down so that the sum comes out,
 * those nearest to the next unit first. No part is off by as much as a unit, and one that is nought stays nought.
 */
export function printedNumber(number: Omit<PlaysLike, 'doubt'>, unitM: number): PrintedNumber {
  const lands = Math.round(number.toLandingM / unitM);
  const plays = Math.round(number.playsM / unitM);
  const exact = [number.windM, number.slopeM, number.airM, number.lieM].map((m) => m / unitM);
  const parts = exact.map((m) => Math.floor(m));
  const spare = plays - lands - parts.reduce((sum, n) => sum + n, 0);
  const order = exact.map((m, i) => ({ i, left: m - Math.floor(m) })).toSorted((a, b) => b.left - a.left);
  for (const { i } of order.slice(0, spare)) parts[i] = (parts[i] ?? 0) + 1;
  const [wind = 0, slope = 0, air = 0, lie = 0] = parts;
  return { lands, wind, slope, air, lie, plays };
}
