import { describe, expect, test } from 'vitest';
import { CALM, type Day, REFERENCE } from '../day/day.ts';
import { printedNumber } from '../day/printedNumber.ts';
import { Reach } from '../reach/reach.ts';
import type { Priced } from '../value/solution.ts';
import { todaysNumber, type TodaysNumber } from './number.ts';
import { groundWith, optionOf, part, pricedWith, solutionOf } from './testdata/madeUp.ts';
import { placeAt } from './view.ts';

const iron = optionOf([part({ alongM: 140 })], { club: '7-iron' });
const fromRough = { parts: [part({ alongM: 126 })], rest: true };
const option = { ...iron, byLie: { ...iron.byLie, rough: fromRough } };

/** The number of a stroke due north from a lie. */
function number(day: Partial<Day> = {}, lie: 'fairway' | 'rough' = 'fairway', upM = 0): TodaysNumber {
  const today = { ...REFERENCE, ...day };
  const pattern = option.byLie[lie];
  if (pattern === undefined) throw new Error('no pattern');
  const reach = Reach.on(today, Math.abs(upM))?.of(option, pattern);
  reach?.face(0, { u: 0, v: 0, sin: 0, cos: 1 }, (_, v) => (v > 60 ? upM : 0));
  const landing = (reach?.landing() ?? pattern).parts[0] ?? part();
  const lands = placeAt({ eastM: 0, northM: 0 }, 0, landing.alongM, landing.acrossM);
  const priced: Priced = { ...pricedWith({ option, bearingRad: 0 }, []), lands };
  const solution = solutionOf(groundWith([]), { day: today, heightAt: (p) => (p.northM > 60 ? upM : 0) });
  return todaysNumber(solution, { at: { eastM: 0, northM: 0 }, lie }, priced);
}
const wind = (fromDeg: number): Pick<Day, 'wind'> => ({ wind: { ...CALM, speedMps: 5, fromDeg } });

describe('today’s number of a shot', () => {
  test('is its own length on the reference day from a clean lie, with nothing in doubt', () => {
    expect(number()).toEqual({ toLandingM: 140, windM: 0, slopeM: 0, airM: 0, lieM: 0, playsM: 140, doubt: {} });
    expect(number({}, 'rough')).toMatchObject({ toLandingM: 126, lieM: 14, playsM: 140 });
  });

  test('adds up, in metres and as printed, whatever the day', () => {
    for (const fromDeg of [0, 45, 120, 180, 300]) {
      const n = number({ ...wind(fromDeg), temperatureC: 6 }, 'rough', 4);
      expect(n.toLandingM + n.windM + n.slopeM + n.airM + n.lieM).toBeCloseTo(n.playsM, 9);
      expect(Math.abs(n.playsM - 140)).toBeLessThan(0.2);
      const p = printedNumber(n, 0.9144);
      expect(p.lands + p.wind + p.slope + p.air + p.lie).toBe(p.plays);
    }
  });

  test('a head wind plays longer by more than a tail wind plays shorter, each with its doubt', () => {
    const head = number(wind(0));
    const tail = number(wind(180));
    expect(head.windM).toBeGreaterThan(10);
    expect(tail.windM).toBeLessThan(-5);
    expect(head.windM + tail.windM).toBeGreaterThan(2);
    expect(head.doubt.wind?.lo80).toBeLessThan(head.windM - 2);
    expect(head.doubt.wind?.hi80).toBeGreaterThan(head.windM + 2);
    expect(head.doubt.slope).toBeUndefined();
  });

  test('cold is in the air’s part, ground above the ball in the slope’s', () => {
    const cold = number({ temperatureC: 5 });
    expect(cold.airM).toBeGreaterThan(2);
    expect([cold.windM, cold.slopeM]).toEqual([0, 0]);
    const up = number({}, 'fairway', 8);
    expect(up.slopeM).toBeGreaterThan(5);
    expect(Math.abs(up.airM)).toBeLessThan(0.2);
  });
});
