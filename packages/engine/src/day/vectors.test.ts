import { describe, expect, test } from 'vitest';
import { fly, STEP_S } from '../flight/fly.ts';
import { descentDeg, landingSpeedMps } from '../flight/launch.ts';
import { VECTORS } from '../flight/testdata/vectors.ts';
import { CALM, REFERENCE, stationHpa, stillAirOf } from './day.ts';

describe.each([STEP_S, 0.01])('exact flights of an independent implementation, at steps of %f s', (stepS) => {
  test.each(VECTORS)('$id', (v) => {
    const [speedMps, launchDeg, spinRpm, azimuthDeg, axisDeg] = v.launch;
    const [temperatureC, altitudeM, humidity] = v.air;
    const still = stillAirOf({
      ...REFERENCE,
      wind: CALM,
      temperatureC,
      humidityPercent: 100 * humidity,
      stationHpa: stationHpa(1013.25, altitudeM),
    });
    const f = fly(
      { speedMps, launchDeg, spinRpm, azimuthDeg, axisDeg },
      { ...still, tailMps: v.wind[0], rightMps: v.wind[1] },
      v.targetHeightM,
      stepS,
    );
    const worstM = Math.max(
      Math.abs(f.carryM - v.carryM),
      Math.abs(f.sideM - v.sideM),
      Math.abs(f.apexM - v.apexM),
      Math.abs(f.apexAtM - v.apexAtM),
    );
    expect(worstM).toBeLessThan(0.02);
    expect(Math.abs(f.timeS - v.timeS)).toBeLessThan(0.001);
    expect(Math.abs(descentDeg(f) - v.descentDeg)).toBeLessThan(0.01);
    expect(Math.abs(landingSpeedMps(f) - v.landingMps)).toBeLessThan(0.01);
    expect(Math.abs(f.landingSpinRpm - v.landingRpm)).toBeLessThan(1);
  });
});
