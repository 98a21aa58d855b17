import { describe, expect, test } from 'vitest';
import type { Launch } from '../flight/launch.ts';
import { LIE_EFFECTS } from '../flight/strike.ts';
import { YARD_M } from '../quantity/units.ts';
import { CALM, type Day, REFERENCE, stationHpa } from './day.ts';
import type { SwingKnown } from '../flight/known.ts';
import { numberOfDistance, numberToday, type PlaysLike, type StrokeToday } from './todaysNumber.ts';

const SEVEN = { carryM: 155 * YARD_M, loftDeg: 34 };
const LEVEL: StrokeToday = { bearingDeg: 0, heightM: 0 };
const MPH_10 = 4.4704;

function number(
  day: Partial<Day> = {},
  swing: { readonly tag?: 'low' | 'normal' | 'high'; readonly launch?: Launch } = {},
  stroke: Partial<StrokeToday> = {},
): PlaysLike {
  const found = numberToday(
    { ...SEVEN, ...swing } satisfies SwingKnown,
    { ...LEVEL, ...stroke },
    { ...REFERENCE, ...day },
  );
  if (found === undefined) throw new Error('no number');
  return found;
}

const from = (fromDeg: number, speedMps = MPH_10, heightM = 10): Pick<Day, 'wind'> => ({
  wind: { ...CALM, speedMps, fromDeg, heightM },
});
const half = (n: PlaysLike): number => (n.doubt.wind.hi80 - n.doubt.wind.lo80) / 2;

describe('today’s number of a swing', () => {
  test('on the reference day it lands as far as it plays, with nothing to add and nothing in doubt', () => {
    const n = number();
    expect(n.toLandingM).toBeCloseTo(SEVEN.carryM, 3);
    for (const part of [n.windM, n.slopeM, n.airM, n.lieM]) expect(Math.abs(part)).toBeLessThan(1e-3);
    expect(half(n)).toBeLessThan(1e-2);
  });

  test('the parts add up', () => {
    const n = number(
      { ...from(20), temperatureC: 8, stationHpa: stationHpa(1005, 400) },
      {},
      { heightM: 6, lie: LIE_EFFECTS['heavy rough'] },
    );
    expect(n.toLandingM + n.windM + n.slopeM + n.airM + n.lieM).toBeCloseTo(n.playsM, 9);
    for (const part of [n.windM, n.slopeM, n.lieM]) expect(part).toBeGreaterThan(3);
  });

  test('a head wind adds more than the same tail wind takes; a felt wind counts for more than a forecast one', () => {
    const head = number(from(0));
    expect(head.windM / YARD_M).toBeCloseTo(15.7, 1);
    expect(number(from(180)).windM / YARD_M).toBeCloseTo(-10.6, -0.2);
    expect(number(from(0, MPH_10, 2)).windM / YARD_M).toBeCloseTo(23.3, -0.3);
    expect(Math.abs(number(from(90)).windM)).toBeLessThan(1.5);
  });

  test('the wind’s part carries its doubt: less with a word on the flight, more with gusts, none when all is measured', () => {
    const head = number(from(0));
    expect(head.doubt.wind.mean).toBe(head.windM);
    expect(half(head) / head.windM).toBeGreaterThan(0.35);
    expect(half(head) / head.windM).toBeLessThan(0.65);
    const told = number(from(0), { tag: 'normal' });
    expect(half(told)).toBeLessThan(half(head));
    const gusty = number({ wind: { ...from(0).wind, gustMps: 12 } }, { tag: 'normal' });
    expect(half(gusty)).toBeGreaterThan(half(told));
    const measured = { launch: { speedMps: 50, launchDeg: 18, spinRpm: 6000 } };
    expect(half(number({ wind: { ...from(0).wind, gustMps: MPH_10 } }, measured))).toBeLessThan(1e-9);
    const low = number(from(0), { tag: 'low' });
    const high = number(from(0), { tag: 'high' });
    expect(low.windM).toBeLessThan(told.windM);
    expect(told.windM).toBeLessThan(high.windM);
  });

  test('thin air takes and cold air adds, as the rules of thumb have it', () => {
    expect((-100 * number({ stationHpa: stationHpa(1013.25, 1000) }).airM) / SEVEN.carryM).toBeCloseTo(5.9, 0);
    expect((100 * number({ temperatureC: 10 }).airM) / SEVEN.carryM).toBeCloseTo(1.9, 0);
  });

  test('without a measured launch the altitude’s part is known to about a third, ten degrees to under a yard', () => {
    const sdM = (d: { readonly mean: number; readonly hi80: number }): number => (d.hi80 - d.mean) / 1.28155;
    const high = number({ stationHpa: stationHpa(1013.25, 1000) });
    expect(sdM(high.doubt.air) / Math.abs(high.airM)).toBeGreaterThan(0.25);
    expect(sdM(high.doubt.air) / Math.abs(high.airM)).toBeLessThan(0.37);
    expect(sdM(number({ temperatureC: 10 }).doubt.air)).toBeLessThan(YARD_M);
    expect(sdM(number({}, {}, { heightM: 10 }).doubt.slope) / YARD_M).toBeCloseTo(3, 0);
  });

  test('ground 10 m up is about 11 yd, 10 m down about 10', () => {
    expect(number({}, {}, { heightM: 10 }).slopeM / YARD_M).toBeCloseTo(11.1, -0.2);
    expect(number({}, {}, { heightM: -10 }).slopeM / YARD_M).toBeCloseTo(-9.6, -0.2);
  });

  test('from a ball speed alone it plays the carry that the model gives', () => {
    const n = numberToday({ speedMps: 51.3, loftDeg: 34 }, LEVEL, { ...REFERENCE, ...from(0) });
    expect(n?.playsM ?? 0).toBeGreaterThan(0.97 * SEVEN.carryM);
    expect(n?.playsM ?? 0).toBeLessThan(1.03 * SEVEN.carryM);
    expect(n === undefined ? 0 : half(n)).toBeGreaterThan(0.3 * (n?.windM ?? 0));
  });

  test('a carry that the loft cannot have has no number, and neither has ground that the ball does not rise to', () => {
    expect(numberToday({ carryM: 260, loftDeg: 34 }, LEVEL, REFERENCE)).toBeUndefined();
    expect(numberToday(SEVEN, { ...LEVEL, heightM: 60 }, REFERENCE)).toBeUndefined();
  });
});

describe('today’s number of a distance', () => {
  /** A ladder: a degree of loft for every 2.6 m. */
  const loftOf = (carryM: number): number => 34 - (carryM - 141.7) / 2.6;

  test('is the number of the swing that lands there', () => {
    const day = { ...REFERENCE, ...from(30), temperatureC: 9 };
    const n = numberOfDistance(130, loftOf, { bearingDeg: 0, heightM: 4 }, day);
    expect(n).toBeDefined();
    if (n === undefined) return;
    expect(n.toLandingM).toBeCloseTo(130, 2);
    const again = numberToday({ carryM: n.playsM, loftDeg: loftOf(n.playsM) }, { bearingDeg: 0, heightM: 4 }, day);
    expect(again).toEqual(n);
  });

  test('on the reference day is the distance; beyond every club there is none', () => {
    expect(numberOfDistance(130, loftOf, LEVEL, REFERENCE)?.playsM).toBeCloseTo(130, 2);
    expect(numberOfDistance(500, loftOf, LEVEL, REFERENCE)).toBeUndefined();
  });
});
