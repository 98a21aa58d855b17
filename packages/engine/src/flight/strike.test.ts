import { describe, expect, test } from 'vitest';
import { YARD_M } from '../quantity/units.ts';
import { fly } from './fly.ts';
import { descentDeg } from './launch.ts';
import { runOut, touchdownOf } from './runOut.ts';
import {
  attackDeg,
  DRIVER_HEAD,
  driverStrike,
  effectToday,
  HARD_LIES,
  ironStrike,
  LIE_EFFECTS,
  slopeEffect,
  strikeSpeedRatio,
  withEffect,
} from './strike.ts';
import { AIR_15C, launchFor, launchOf } from './testdata/launches.ts';

const SEVEN_IRON = launchFor(155, 34);

describe('a lie', () => {
  test('a flyer carries 12 yd further, comes down at 41 degrees, not 47, and runs about 17 yd, not 6', () => {
    const clean = fly(SEVEN_IRON, AIR_15C);
    const flyer = fly(withEffect(SEVEN_IRON, LIE_EFFECTS.flyer), AIR_15C);
    expect((flyer.carryM - clean.carryM) / YARD_M).toBeCloseTo(12, 0);
    expect(descentDeg(clean)).toBeCloseTo(47, 0);
    expect(descentDeg(flyer)).toBeCloseTo(41, -0.1);
    const run = (f: typeof clean): number =>
      runOut(touchdownOf(f), () => ({ surface: 'green' }), { firmness: 'firm' }).runM;
    expect(run(flyer)).toBeGreaterThan(2 * run(clean));
  });

  test('heavy rough takes about 9 yd for 8 % of speed, and says that it is assumed', () => {
    const carry = (speed: number): number =>
      fly(withEffect(SEVEN_IRON, { ...LIE_EFFECTS['heavy rough'], speed }), AIR_15C).carryM / YARD_M;
    expect(155 - carry(0.92)).toBeCloseTo(9, -0.3);
    for (const lie of HARD_LIES) {
      expect(LIE_EFFECTS[lie].assumed).toBe(true);
      expect(LIE_EFFECTS[lie].source).toMatch(/assumed|taken as|found/);
    }
  });

  test('is lifted and placed under preferred lies, on short grass alone', () => {
    expect(effectToday('bare', 'fairway', { preferredLies: true })).toBeUndefined();
    expect(effectToday('bare', 'fairway', {})).toBe(LIE_EFFECTS.bare);
    expect(effectToday('flyer', 'rough', { preferredLies: true })).toBe(LIE_EFFECTS.flyer);
  });

  test('uphill launches higher; a ball above the feet starts to the near side', () => {
    const up = withEffect(SEVEN_IRON, slopeEffect(5, 0, 34, -1));
    expect(up.launchDeg).toBeCloseTo(SEVEN_IRON.launchDeg + 5, 12);
    expect(up.azimuthDeg).toBeCloseTo(0, 12);
    expect(slopeEffect(0, 5, 34, -1).azimuthDeg).toBeCloseTo(-3.37, 1);
    expect(slopeEffect(0, 5, 34, 1).azimuthDeg).toBeCloseTo(3.37, 1);
    expect(Math.abs(slopeEffect(0, 5, 10, -1).azimuthDeg)).toBeLessThan(1);
  });
});

describe('an off-centre strike', () => {
  test.each([
    [0.01, 0, 0.7],
    [0.015, 0, 1.5],
    [0.02, 0, 2.6],
    [0, 0.01, 0.9],
    [0, 0.015, 2.0],
    [0, 0.02, 3.5],
  ])('driver, %f m to the toe, %f m high: %f %% of the speed', (toeM, highM, lostPercent) => {
    expect(Math.abs(100 * (1 - strikeSpeedRatio(DRIVER_HEAD, toeM, highM)) - lostPercent)).toBeLessThan(0.1);
  });

  test.each([
    [0.01, 0, 1.5],
    [0.015, 0, 3.3],
    [0.02, 0, 5.7],
    [0, 0.01, 5.3],
    [0, 0.008, 3.5],
  ])('iron, %f m to the toe, %f m low: %f %% of the speed', (toeM, lowM, lostPercent) => {
    expect(Math.abs(100 * (1 - ironStrike(toeM, -lowM).speed) - lostPercent)).toBeLessThan(0.12);
  });

  test('high on a driver spins less, low more, by about 1,100 rpm at 20 mm', () => {
    const drive = launchOf(156.6, 11, 2700);
    const spun = (highM: number): number => withEffect(drive, driverStrike(drive, 0, highM)).spinRpm;
    expect(spun(0.02)).toBeCloseTo(1600, -1);
    expect(spun(-0.02)).toBeCloseTo(3800, -1);
  });

  test('a low point 25 mm ahead is an attack of -.9 deg', () => {
    expect(attackDeg(0.025)).toBeCloseTo(-0.9, 1);
  });
});
