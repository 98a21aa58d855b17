import { describe, expect, test } from 'vitest';
import { fly } from '../flight/fly.ts';
import { descentDeg, type Flight, type FlightAir, type Launch } from '../flight/launch.ts';
import { runOut, touchdownOf } from '../flight/runOut.ts';
import { launchFor, launchOf, MPH_MPS } from '../flight/testdata/launches.ts';
import { THUMB, type ThumbRow } from '../flight/testdata/thumb.ts';
import { YARD_M } from '../quantity/units.ts';
import { CALM, REFERENCE, stationHpa, stillAirOf } from './day.ts';

const airAt = (day: ThumbRow['day'] = {}): FlightAir =>
  stillAirOf({
    ...REFERENCE,
    wind: CALM,
    temperatureC: day.temperatureC ?? 15,
    humidityPercent: day.humidityPercent ?? 50,
    stationHpa: day.stationHpa ?? stationHpa(1013.25, day.altitudeM ?? 0),
  });

const launches: readonly Launch[] = [
  launchOf(171, 10.4, 2550),
  launchOf(134, 12.7, 2950),
  launchFor(175, 27, airAt()),
  launchFor(155, 34, airAt()),
  launchFor(130, 42, airAt()),
  launchFor(90, 54, airAt()),
  launchFor(120, 34, airAt()),
];

const flown = (row: ThumbRow, launch: Launch): Flight =>
  fly(
    {
      ...launch,
      speedMps: launch.speedMps + (row.speedMph ?? 0) * MPH_MPS,
      launchDeg: launch.launchDeg + (row.launchDeg ?? 0),
      spinRpm: launch.spinRpm * (row.spin ?? 1),
    },
    {
      ...airAt(row.day),
      tailMps: (row.tailMph ?? 0) * MPH_MPS,
      rightMps: (row.rightMph ?? 0) * MPH_MPS,
      windHeightM: row.windHeightM ?? 10,
    },
    row.targetHeightM,
  );

function read(row: ThumbRow, launch: Launch): number {
  const before = fly(launch, airAt(row.against));
  const after = flown(row, launch);
  switch (row.read) {
    case 'yards':
      return (after.carryM - before.carryM) / YARD_M;
    case 'percent':
      return 100 * (after.carryM / before.carryM - 1);
    case 'drift':
      return after.sideM / YARD_M;
    case 'apex percent':
      return 100 * (after.apexM / before.apexM - 1);
    case 'descent':
      return descentDeg(after) - descentDeg(before);
  }
}

describe('what a change of the day is worth, as another implementation has it', () => {
  test.each(THUMB)('$what', (row) => {
    const decimals = row.printed.some((p) => Math.abs(p * 10 - Math.round(p * 10)) > 1e-9) ? 2 : 1;
    const half = decimals === 2 ? 0.03 : 0.15;
    launches.forEach((launch, i) => {
      expect(Math.abs(read(row, launch) - (row.printed[i] ?? 0)), `column ${i}`).toBeLessThan(half);
    });
  });

  test('carry, apex, time and descent of the launches themselves', () => {
    const printed = [
      [277.1, 101, 6.77, 38.2],
      [205.8, 72, 5.66, 34.7],
      [175, 82, 5.97, 43.2],
      [155, 88, 5.97, 47.1],
      [130, 89, 5.73, 50.1],
      [90, 63, 4.61, 48.4],
      [120, 52, 4.52, 37.5],
    ] as const;
    launches.forEach((launch, i) => {
      const f = fly(launch, airAt());
      const [carryYd, apexFt, timeS, descent] = printed[i] ?? [0, 0, 0, 0];
      expect(f.carryM / YARD_M).toBeCloseTo(carryYd, 0);
      expect(Math.abs(f.apexM / 0.3048 - apexFt)).toBeLessThan(0.6);
      expect(Math.abs(f.timeS - timeS)).toBeLessThan(0.01);
      expect(Math.abs(descentDeg(f) - descent)).toBeLessThan(0.1);
    });
  });

  /** Side and carry, yards, for 5, 10 and 20 degrees of tilt; the carry lost for 10 and 20. */
  test.each([
    [0, [10.4, 20.6, 38.8], [-2.5, -9.7]],
    [1, [6.9, 13.5, 25.5], [-1.8, -6.9]],
    [3, [7.0, 13.9, 26.7], [-1.0, -4.2]],
    [4, [6.0, 11.9, 23.1], [-0.7, -3]],
    [5, [3.1, 6.2, 12.1], [-0.3, -1.4]],
  ] as const)('a tilted axis bends launch %i', (column, sides, losses) => {
    const launch = launches[column];
    if (launch === undefined) throw new Error('no such launch');
    const straight = fly(launch, airAt());
    const bent = [5, 10, 20].map((axisDeg) => fly({ ...launch, axisDeg }, airAt()));
    bent.forEach((f, i) => expect(Math.abs(f.sideM / YARD_M - (sides[i] ?? 0))).toBeLessThan(0.15));
    bent.slice(1).forEach((f, i) => {
      expect(Math.abs((f.carryM - straight.carryM) / YARD_M - (losses[i] ?? 0))).toBeLessThan(0.15);
    });
  });

  test('the roughness under a forecast hardly matters: a 7-iron’s head wind of 10 mph is 16.5 to 18 yd', () => {
    const [, , , iron] = launches;
    if (iron === undefined) throw new Error('no such launch');
    const lost = (roughnessM: number): number =>
      (fly(iron, airAt()).carryM - fly(iron, { ...airAt(), tailMps: -10 * MPH_MPS, roughnessM }).carryM) / YARD_M;
    expect(lost(0.005)).toBeCloseTo(16.5, 0);
    expect(lost(0.5)).toBeCloseTo(18, 0);
  });

  test('the rules bodies’ limit of distance: 176 mph, 10 degrees, 2520 rpm at 75 °F carries 290 and ends at 316 yd on firm turf', () => {
    const f = fly(launchOf(176, 10, 2520), airAt({ temperatureC: 23.9 }));
    expect(f.carryM / YARD_M).toBeCloseTo(290, -0.3);
    const { runM } = runOut(touchdownOf(f), () => ({ surface: 'fairway' }), { firmness: 'firm' });
    expect((f.carryM + runM) / YARD_M).toBeCloseTo(316.4, -0.5);
  });
});
