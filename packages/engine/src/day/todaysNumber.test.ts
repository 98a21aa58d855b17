import { describe, expect, test } from 'vitest';
import { LIE_EFFECTS } from '../flight/strike.ts';
import { YARD_M } from '../quantity/units.ts';
import { CALM, type Day, REFERENCE, stationHpa } from './day.ts';
import { numberOfDistance, numberToday, type PlaysLike, type StrokeToday, type SwingKnown } from './todaysNumber.ts';

const SEVEN: SwingKnown = { carryM: 155 * YARD_M, loftDeg: 34 };
const LEVEL: StrokeToday = { bearingDeg: 0, heightM: 0 };
const MPH_10 = 4.4704;

function number(day: Partial<Day> = {}, swing: Partial<SwingKnown> = {}, stroke: Partial<StrokeToday> = {}): PlaysLike {
  const found = numberToday({ ...SEVEN, ...swing }, { ...LEVEL, ...stroke }, { ...REFERENCE, ...day });
  if (found === undefined) throw new Error('no number');
  return found;
}

const from = (fromDeg: number, speedMps = MPH_10, heightM = 10): Pick<Day, 'wind'> => ({
  wind: { ...CALM, speedMps, fromDeg, heightM },
});
const half = (n: PlaysLike): number => (n.wind.hi80 - n.wind.lo80) / 2;

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
    expect(head.wind.mean).toBe(head.windM);
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

  test('ground 10 m up is about 11 yd, 10 m down about 10', () => {
    expect(number({}, {}, { heightM: 10 }).slopeM / YARD_M).toBeCloseTo(11.1, -0.2);
    expect(number({}, {}, { heightM: -10 }).slopeM / YARD_M).toBeCloseTo(-9.6, -0.2);
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
