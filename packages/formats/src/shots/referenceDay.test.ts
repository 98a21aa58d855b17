import { describe, expect, it } from 'vitest';
import { airOf, CALM, launchFamily, moveShot, REFERENCE, REFERENCE_CONDITIONS, stationHpa } from '@leeway/engine';
import { groupShots } from './groupShots.ts';
import { readShots } from './readShots.ts';

const LOFT_DEG = 34;
const DAY = {
  ...REFERENCE,
  temperatureC: 8,
  altitudeM: 300,
  stationHpa: stationHpa(1013.25, 300),
  wind: { ...CALM, speedMps: 6, fromDeg: 30 },
};

function ballsOf(text: string) {
  const { value = [], faults } = readShots(text, 'a.csv', { units: 'm' });
  return { balls: groupShots(value, []).swings[0]?.balls ?? [], faults };
}

describe('a shot measured on another day', () => {
  it('comes back to the carry and side that it has on the reference day', () => {
    const truth = { alongM: 140, acrossM: -4 };
    const where = { air: airOf(DAY, 0), heightM: 7 };
    const seen = moveShot(truth, launchFamily(LOFT_DEG), LOFT_DEG, REFERENCE_CONDITIONS, where);
    if (seen.status !== 'found') throw new Error(seen.status);
    const carryM = Math.hypot(seen.alongM, seen.acrossM);
    expect(carryM).toBeLessThan(130);
    const { balls, faults } = ballsOf(
      'club,carry [m],side [m],temperature [C],altitude [m],wind speed [m/s],wind from,bearing,slope [m]\n' +
        `7i,${carryM.toFixed(4)},${seen.acrossM.toFixed(4)},8,300,6,30,0,7\n`,
    );
    expect(faults.map((f) => f.code)).toEqual(['moved-to-reference-day']);
    expect(balls[0]?.carryM).toBeCloseTo(Math.hypot(140, -4), 2);
    expect(balls[0]?.directionDeg).toBeCloseTo((Math.atan2(-4, 140) * 180) / Math.PI, 2);
    // The day took over 10 m, and is known to 15 % of that.
    expect(balls[0]?.seCarryM).toBeCloseTo(0.15 * (Math.hypot(140, -4) - carryM), 1);
  });

  it('stays as measured when no launch explains it, or when the wind comes from nowhere, which is told', () => {
    const topped = ballsOf('club,carry [m],side [m],temperature [C]\n7i,3,0,8\n');
    expect(topped.balls[0]?.carryM).toBe(3);
    const windy = ballsOf('club,carry [m],side [m],wind speed [m/s]\n7i,140,0,6\n');
    expect(windy.balls[0]).toEqual({ carryM: 140, directionDeg: 0 });
    expect(windy.faults.map((f) => f.code)).toEqual(['wind-without-bearing']);
  });
});
