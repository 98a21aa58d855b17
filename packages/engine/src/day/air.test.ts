import { describe, expect, test } from 'vitest';
import { airDensityKgM3, airViscosityPaS, stationPressure } from './air.ts';

describe('air', () => {
  test.each([
    [15, 0, 0.5, 1.2216],
    [0, 0, 0.5, 1.2916],
    [30, 0, 0.5, 1.1555],
    [30, 0, 1, 1.1464],
    [15, 500, 0.5, 1.1507],
    [15, 1000, 0.5, 1.0831],
    [15, 1600, 0.5, 1.0063],
    [20, 0, 0.5, 1.1993],
    [15, 0, 0, 1.2255],
  ])('weighs at %f °C, %f m, humidity %f: %f', (t, altitudeM, humidity, kgM3) => {
    expect(airDensityKgM3(t, stationPressure(101_325, altitudeM), humidity)).toBeCloseTo(kgM3, 4);
  });

  test('has the pressure and viscosity of the standard atmosphere', () => {
    expect(stationPressure(1013.25, 0)).toBe(1013.25);
    expect(stationPressure(1013.25, 1000)).toBeCloseTo(898.75, 1);
    expect(stationPressure(1013.25, 2000)).toBeCloseTo(794.95, 1);
    expect(airViscosityPaS(15)).toBeCloseTo(1.7894e-5, 9);
  });

  test('moist air is lighter than dry, warm air than cold', () => {
    expect(airDensityKgM3(20, 101_325, 1)).toBeLessThan(airDensityKgM3(20, 101_325, 0));
    expect(airDensityKgM3(21, 101_325, 0.5)).toBeLessThan(airDensityKgM3(20, 101_325, 0.5));
  });
});
