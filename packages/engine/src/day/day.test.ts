import { describe, expect, test } from 'vitest';
import { airOf, CALM, type Day, REFERENCE, stillAirOf, windSdMps } from './day.ts';

const blowing = (fromDeg: number): Day => ({ ...REFERENCE, wind: { ...CALM, speedMps: 10, fromDeg } });

describe('the day', () => {
  test.each([
    [0, 0, -10, 0],
    [180, 0, 10, 0],
    [270, 0, 0, 10],
    [90, 0, 0, -10],
    [225, 90, 7.071, -7.071],
    [-90, 360, 0, 10],
  ])(
    'a wind from %f on a line of bearing %f is %f along it and %f to its right',
    (fromDeg, bearingDeg, tail, right) => {
      const air = airOf(blowing(fromDeg), bearingDeg);
      expect(air.tailMps).toBeCloseTo(tail, 3);
      expect(air.rightMps).toBeCloseTo(right, 3);
    },
  );

  test('the reference day weighs 1.1993 kg a cubic metre and is calm', () => {
    expect(stillAirOf(REFERENCE).densityKgM3).toBeCloseTo(1.1993, 4);
    expect(airOf(REFERENCE, 77).tailMps).toBeCloseTo(0, 12);
  });

  test('gusts tell how the wind is spread; without them the ground does', () => {
    const wind = { ...CALM, speedMps: 6 };
    expect(windSdMps({ ...wind, gustMps: 9 })).toBe(1);
    expect(windSdMps(wind)).toBeCloseTo(6 / Math.log(10 / 0.03), 12);
    expect(windSdMps({ ...wind, roughnessM: 0.3 })).toBeGreaterThan(windSdMps(wind));
    expect(windSdMps(CALM)).toBe(0);
  });
});
