import { describe, expect, test } from 'vitest';
import { airOf, CALM, type Day, REFERENCE } from '../day/day.ts';
import { REFERENCE_CONDITIONS } from '../day/normalise.ts';
import { calibrate, landedAtM } from '../flight/calibrate.ts';
import { launchFamily } from '../flight/family.ts';
import { fly } from '../flight/fly.ts';
import type { Pattern } from '../player/option.ts';
import { runM } from '../player/run.ts';
import { RAD_PER_DEG } from '../quantity/units.ts';
import type { PatternToday } from './patternToday.ts';
import { Reach } from './reach.ts';

const part = (weight: number, alongM: number) => ({ weight, alongM, acrossM: 2, sdAlongM: 6, sdAcrossM: 5, corr: 0 });
const PATTERN: Pattern = { parts: [part(0.9, 143), part(0.1, 97)], rest: false };
const IRON = { club: '7-iron', flight: { loftDeg: 34 } };
const windy = (speedMps: number, fromDeg: number): Day => ({ ...REFERENCE, wind: { ...CALM, speedMps, fromDeg } });

function today(day: Day, bearingDeg = 0, pattern = PATTERN): PatternToday {
  const reach = Reach.on(day);
  if (reach === undefined) throw new Error('the reference day');
  const found = reach.of(IRON, pattern);
  found.face(bearingDeg * RAD_PER_DEG);
  found.faceRuns(bearingDeg * RAD_PER_DEG);
  return found;
}

describe('where a stroke goes today', () => {
  test('the reference day changes nothing, and costs nothing', () => {
    expect(Reach.on(REFERENCE)).toBeUndefined();
    expect(Reach.on({ ...REFERENCE, ground: { firmness: 'normal' } })).toBeUndefined();
    expect(Reach.on(REFERENCE, 5)).toBeDefined();
  });

  test.each([0, 33, 90, 151, 222, 300])(
    'each part moves by the flight’s difference for its carry, down %f degrees',
    (bearingDeg) => {
      const day = { ...windy(6, 40), temperatureC: 8 };
      const { alongM, acrossM } = today(day, bearingDeg);
      PATTERN.parts.forEach((p, i) => {
        const found = calibrate(launchFamily(34), p.alongM, 34, REFERENCE_CONDITIONS);
        if (found.status !== 'found') throw new Error(found.status);
        const flight = fly(found.launch, airOf(day, bearingDeg));
        expect(Math.abs((alongM[i] ?? NaN) - (flight.carryM - p.alongM))).toBeLessThan(0.1);
        expect(Math.abs((acrossM[i] ?? NaN) - flight.sideM)).toBeLessThan(0.1);
      });
    },
  );

  test('spreads, weights and the sideways bias stay', () => {
    const { parts } = today(windy(6, 90)).landing();
    expect(parts.map(({ weight, sdAlongM, sdAcrossM, corr }) => ({ weight, sdAlongM, sdAcrossM, corr }))).toEqual(
      PATTERN.parts.map(({ weight, sdAlongM, sdAcrossM, corr }) => ({ weight, sdAlongM, sdAcrossM, corr })),
    );
  });

  test('still air has no side, whatever the direction', () => {
    const cold = { ...REFERENCE, temperatureC: 5 };
    const one = today(cold, 0);
    expect(one.acrossM[0]).toBeCloseTo(0, 12);
    expect(today(cold, 77).alongM[0]).toBeCloseTo(one.alongM[0] ?? NaN, 9);
    expect(one.alongM[0]).toBeLessThan(-2);
  });

  test('a mirrored wind is mirrored', () => {
    for (const bearingDeg of [10, 60, 140]) {
      const left = today(windy(7, 300), bearingDeg);
      const right = today(windy(7, 60), -bearingDeg);
      expect(left.alongM[0]).toBeCloseTo(right.alongM[0] ?? NaN, 9);
      expect(left.acrossM[0]).toBeCloseTo(-(right.acrossM[0] ?? NaN), 9);
      expect(left.runSin[0]).toBeCloseTo(-(right.runSin[0] ?? NaN), 9);
    }
  });

  test('the wind and the line turned together change nothing', () => {
    const one = today(windy(5, 20), 50);
    const other = today(windy(5, 137), 167);
    expect(one.alongM[0]).toBeCloseTo(other.alongM[0] ?? NaN, 9);
    expect(one.acrossM[0]).toBeCloseTo(other.acrossM[0] ?? NaN, 9);
  });

  test('a ball runs as usual in still air on normal ground, longer on firm, shorter on soft, not at all where it plugs', () => {
    const on = (ground: Day['ground'], temperatureC = 20): number =>
      today({ ...REFERENCE, temperatureC, ground }).runsM[1] ?? NaN;
    const usual = runM(143, 'fairway');
    expect(on({}, 20.001)).toBeCloseTo(usual, 3);
    expect(on({ firmness: 'firm' })).toBeGreaterThan(usual + 1);
    expect(on({ firmness: 'soft' })).toBeLessThan(usual - 1);
    expect(on({ wet: true })).toBeCloseTo(on({ firmness: 'soft' }), 9);
    expect(on({ plugging: true })).toBe(0);
  });

  test('a ball runs longer down the wind, and a cross wind turns its run', () => {
    const run = (fromDeg: number): number => today(windy(6, fromDeg)).runsM[1] ?? NaN;
    expect(run(180)).toBeGreaterThan(run(90));
    expect(run(90)).toBeGreaterThan(run(0));
    expect(today(windy(6, 270)).runSin[0]).toBeGreaterThan(0.1);
  });

  test('a pattern of balls at rest is moved by the flight alone', () => {
    const rest = today(windy(6, 0), 0, { ...PATTERN, rest: true });
    expect([...rest.runsM]).toEqual([0, 0, 0, 0, 0, 0]);
    expect(rest.alongM[0]).toBeCloseTo(today(windy(6, 0)).alongM[0] ?? NaN, 9);
  });

  test('ground up a slope is met sooner, by about its height over the tangent of the descent', () => {
    const reach = Reach.on(REFERENCE, 20);
    const found = reach?.of(IRON, PATTERN);
    if (found === undefined) throw new Error('no reach');
    const line = { u: 0, v: 0, sin: 0, cos: 1 };
    found.face(0, line, (_, v) => (v > 50 ? 10 : 0));
    const launch = calibrate(launchFamily(34), 143, 34, REFERENCE_CONDITIONS);
    if (launch.status !== 'found') throw new Error(launch.status);
    const exact = landedAtM(fly(launch.launch, REFERENCE_CONDITIONS.air, 10)) - 143;
    expect(Math.abs((found.alongM[0] ?? NaN) - exact)).toBeLessThan(0.15);
    found.face(0, line, (_, v) => (v > 50 ? -7 : 0));
    const down = landedAtM(fly(launch.launch, REFERENCE_CONDITIONS.air, -7)) - 143;
    expect(Math.abs((found.alongM[0] ?? NaN) - down)).toBeLessThan(0.15);
    found.face(0, line, () => 0);
    expect(Math.abs(found.alongM[0] ?? NaN)).toBeLessThan(0.01);
  });

  test('a carry that no such club has is moved in proportion, one too short to fly not at all', () => {
    const pattern: Pattern = { parts: [part(0.5, 260), part(0.5, 2)], rest: true };
    const { alongM } = today(windy(5, 0), 0, pattern);
    expect(alongM[0]).toBeLessThan(-20);
    expect(Math.abs(alongM[1] ?? NaN)).toBeLessThan(0.1);
  });
});

describe('gusts', () => {
  const gusty: Day = { ...windy(8, 0), wind: { ...CALM, speedMps: 8, fromDeg: 0, gustMps: 14 } };
  const steady = today(windy(8, 0)).landing().parts[0]!;

  test('spread the part that they meet along the wind, and leave its mean about where it was', () => {
    const found = today(gusty);
    expect(found.pattern.parts).toHaveLength(3 * PATTERN.parts.length);
    expect(found.pattern.parts.reduce((sum, p) => sum + p.weight, 0)).toBeCloseTo(1, 12);
    const whole = found.landingWhole().parts[0]!;
    const slower = today(windy(6, 0)).landing().parts[0]!;
    const faster = today(windy(10, 0)).landing().parts[0]!;
    // two deviations of the wind lie between the two
    const sdM = (slower.alongM - faster.alongM) / 2;
    expect(whole.weight).toBeCloseTo(steady.weight, 12);
    // a gust into the ball costs more than the lull gives
    expect(whole.alongM).toBeLessThan(steady.alongM);
    expect(whole.alongM).toBeGreaterThan(steady.alongM - 1);
    expect(whole.sdAlongM).toBeCloseTo(Math.hypot(steady.sdAlongM, sdM), 1);
    expect(whole.sdAcrossM).toBeCloseTo(steady.sdAcrossM, 6);
  });

  test('of a cross wind spread it across, together with the length that the wind costs', () => {
    const whole = today(gusty, 90).landingWhole().parts[0]!;
    const cross = today(windy(8, 0), 90).landing().parts[0]!;
    expect(whole.sdAcrossM).toBeGreaterThan(cross.sdAcrossM + 1);
    expect(whole.sdAlongM - cross.sdAlongM).toBeLessThan(0.5);
  });

  test('of no more than the wind, or not told, change nothing', () => {
    const told = { ...gusty, wind: { ...gusty.wind, gustMps: 8 } };
    expect(today(told).landing()).toEqual(today(windy(8, 0)).landing());
    expect(today(told).landingWhole()).toEqual(today(told).landing());
  });

  test('without a wind blow from either side', () => {
    const found = today({ ...REFERENCE, wind: { ...CALM, gustMps: 6 } });
    const [mean, up, down] = [0, 1, 2].map((k) => found.landing().parts[k * PATTERN.parts.length]!.alongM);
    expect(up!).toBeLessThan(mean! - 3);
    expect(down!).toBeGreaterThan(mean! + 2);
  });
});
