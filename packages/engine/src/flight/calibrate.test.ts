import { describe, expect, test } from 'vitest';
import { YARD_M } from '../quantity/units.ts';
import { calibrate, launchTo } from './calibrate.ts';
import { launchFamily, measuredFamily, TAG_SHIFT } from './family.ts';
import { fly } from './fly.ts';
import { launchesKnown } from './known.ts';
import { AIR_15C, launchFor, MPH_MPS } from './testdata/launches.ts';
import { doubted } from './variants.ts';

describe('a launch from a carry and a loft', () => {
  test.each([
    [175, 27, 122.6, 14.3, 4827],
    [155, 34, 114.7, 17.3, 5749],
    [130, 42, 105.0, 20.8, 7450],
    [90, 54, 79.9, 27.2, 8140],
    [120, 34, 91.4, 19.5, 4142],
  ])('%f yd with %f degrees: %f mph, %f degrees, %f rpm', (carryYd, loftDeg, mph, launchDeg, rpm) => {
    const launch = launchFor(carryYd, loftDeg);
    expect(launch.speedMps / MPH_MPS).toBeCloseTo(mph, 0);
    expect(Math.abs(launch.launchDeg - launchDeg)).toBeLessThan(0.06);
    expect(Math.abs(launch.spinRpm - rpm)).toBeLessThan(4);
  });

  test('flown again it carries what was stated, to a millimetre, for every loft and carry that can be', () => {
    const flights: number[] = [];
    for (let loftDeg = 9; loftDeg <= 60; loftDeg += 3) {
      for (let carryM = 20; carryM <= 300; carryM += 20) {
        const found = calibrate(launchFamily(loftDeg), carryM, loftDeg, { air: AIR_15C });
        if (found.status !== 'found') continue;
        flights.push(found.flights);
        expect(Math.abs(fly(found.launch, AIR_15C).carryM - carryM)).toBeLessThan(1e-3);
      }
    }
    expect(flights.length).toBeGreaterThan(150);
    expect(flights.toSorted((a, b) => a - b)[flights.length >> 1]).toBeLessThanOrEqual(7);
    expect(Math.max(...flights)).toBeLessThanOrEqual(16);
  });

  test.each([
    [10.5, 371],
    [18, 311],
    [24, 270],
    [34, 218],
    [46, 163],
    [58, 127],
  ])('with %f degrees nothing beyond %f yd is believed', (loftDeg, mostYd) => {
    const asked = (yd: number) => calibrate(launchFamily(loftDeg), yd * YARD_M, loftDeg, { air: AIR_15C });
    const refused = asked(mostYd + 2);
    expect(refused.status).toBe('too far');
    expect(refused.status === 'too far' ? refused.mostM / YARD_M : 0).toBeCloseTo(mostYd, -0.2);
    expect(asked(mostYd - 2).status).toBe('found');
    expect(asked(1).status).toBe('too short');
  });

  test('a low ball and a high one of the same carry: the wind moves the high one more', () => {
    const change = (tag: 'low' | 'high'): number => {
      const found = calibrate(launchFamily(34, TAG_SHIFT[tag]), 140, 34, { air: AIR_15C });
      return found.status === 'found' ? fly(found.launch, { ...AIR_15C, tailMps: -4.5 }).carryM - 140 : Number.NaN;
    };
    expect(change('high')).toBeLessThan(change('low') - 5);
  });

  test('a measured launch keeps its angle, spin and axis', () => {
    const measured = { speedMps: 50, launchDeg: 18, spinRpm: 6100, axisDeg: -3 };
    const found = calibrate(measuredFamily(measured), 140, 34, { air: AIR_15C });
    expect(found.status).toBe('found');
    if (found.status !== 'found') return;
    expect(found.launch).toMatchObject({ launchDeg: 18, spinRpm: 6100, axisDeg: -3 });
  });

  test('whatever is asked, a flight is found that meets it to a millimetre, or it is said that none does', () => {
    const statuses = new Set<string>();
    for (const loftDeg of [10, 25, 40, 56]) {
      for (const carryM of [6, 40, 120, 230]) {
        for (const heightM of [-30, 0, 20]) {
          for (const fromDeg of [0, 60, 120, 180]) {
            const rad = (fromDeg * Math.PI) / 180;
            const air = { ...AIR_15C, tailMps: -18 * Math.cos(rad), rightMps: 18 * Math.sin(rad) };
            const found = launchTo({ alongM: carryM, acrossM: carryM / 20 }, launchFamily(loftDeg), loftDeg, {
              air,
              heightM,
            });
            statuses.add(found.status);
            if (found.status !== 'found') continue;
            const f = fly(found.launch, air, heightM);
            expect(Math.hypot(f.carryM - carryM, f.sideM - carryM / 20)).toBeLessThan(2e-3);
          }
        }
      }
    }
    expect(statuses).toContain('found');
    expect(statuses).toContain('unmet');
    expect(statuses).toContain('too far');
  });

  test('a place to the side in a cross wind is met to a millimetre', () => {
    const air = { ...AIR_15C, tailMps: -3, rightMps: 6 };
    const found = launchTo({ alongM: 150, acrossM: -9 }, launchFamily(30), 30, { air, heightM: -6 });
    expect(found.status).toBe('found');
    if (found.status !== 'found') return;
    const f = fly(found.launch, air, -6);
    expect(Math.hypot(f.carryM - 150, f.sideM + 9)).toBeLessThan(1e-3);
  });
});

/** Yards: base, least, most, standard deviation of the nine variants; head, tail and cross of 10 mph, 5 °C, 25 °C, 1000 m, 10 m up and down. */
const SENSITIVITY = [
  [
    'driver 205',
    205,
    10.5,
    [-8.8, -14.7, -3.6, 3.2],
    [4.8, 0.5, 9.9, 2.7],
    [10.2, 7.4, 13.7, 1.8],
    [-20.5, -34, -14, 5.9],
  ],
  ['5-wood 185', 185, 18, [-7.2, -13.3, -2, 3.3], [3.1, -1.2, 8.3, 2.7], [9.4, 6.8, 12.8, 1.8], [-21.9, -40, -14, 7]],
  ['7-iron 155', 155, 34, [-16.8, -27.6, -8, 6.2], [11.2, 3.7, 21.5, 5.5], [14.2, 9.5, 20, 3.3], [-11.1, -18, -8, 3]],
  [
    '7-iron 120',
    120,
    34,
    [-5.5, -10.4, -1.8, 2.6],
    [2.3, -0.4, 6.1, 1.9],
    [7.2, 5.1, 9.7, 1.4],
    [-17.9, -29, -13, 4.6],
  ],
  [
    '9-iron 130',
    130,
    42,
    [-17.6, -25.2, -9.3, 4.9],
    [12.1, 4.9, 19.5, 4.4],
    [13.6, 9.5, 17.4, 2.4],
    [-9.9, -15, -8, 2],
  ],
  ['wedge 90', 90, 54, [-10.7, -14.3, -6.2, 2.4], [6.8, 3.1, 9.9, 2], [8.4, 6.6, 9.9, 1], [-11.2, -15, -9, 1.6]],
] as const;

describe('what a carry leaves open', () => {
  test.each(SENSITIVITY)('%s', (_, carryYd, loftDeg, head, tail, cross, up) => {
    const launches = launchesKnown({ carryM: carryYd * YARD_M, loftDeg }, { air: AIR_15C });
    expect(launches).toHaveLength(9);
    const mps = 10 * MPH_MPS;
    const seen = (
      of: (l: (typeof launches)[number]) => number,
      [base, least, most, sd]: readonly number[],
      wide: number,
    ): void => {
      const all = launches.map(of);
      const { mean, hi80 } = doubted(all[0] ?? Number.NaN, all);
      expect(Math.abs(mean - (base ?? 0))).toBeLessThan(0.11);
      expect(Math.abs(Math.min(...all) - (least ?? 0))).toBeLessThan(wide);
      expect(Math.abs(Math.max(...all) - (most ?? 0))).toBeLessThan(wide);
      expect(Math.abs((hi80 - mean) / 1.28155 - (sd ?? 0))).toBeLessThan(Math.max(0.11, wide / 2));
    };
    const carried = (l: (typeof launches)[number], air: Partial<typeof AIR_15C>, heightM = 0): number =>
      fly(l, { ...AIR_15C, ...air }, heightM).carryM / YARD_M - carryYd;
    seen((l) => carried(l, { tailMps: -mps }), head, 0.11);
    seen((l) => carried(l, { tailMps: mps }), tail, 0.11);
    seen((l) => fly(l, { ...AIR_15C, rightMps: mps }).sideM / YARD_M, cross, 0.11);
    seen((l) => carried(l, {}, 10), up, 0.9);
  });

  test('a measured launch leaves nothing open; its speed is set to a carry when there is one', () => {
    const launch = { speedMps: 50, launchDeg: 18, spinRpm: 6100 };
    expect(launchesKnown({ launch, loftDeg: 34 }, { air: AIR_15C })).toEqual([launch]);
    const [set, ...more] = launchesKnown({ launch, loftDeg: 34, carryM: 150 }, { air: AIR_15C });
    expect(more).toEqual([]);
    expect(set).toMatchObject({ launchDeg: 18, spinRpm: 6100 });
    expect(set?.speedMps).toBeGreaterThan(50);
  });

  test('a ball speed and a loft leave launch and spin open about the family’s own', () => {
    const launches = launchesKnown({ speedMps: 50, loftDeg: 34 }, { air: AIR_15C });
    expect(launches).toHaveLength(9);
    expect(new Set(launches.map((l) => l.speedMps))).toEqual(new Set([50]));
    expect(launches[0]).toEqual(launchFamily(34)(50));
    expect(launchesKnown({ carryM: 400, loftDeg: 34 }, { air: AIR_15C })).toEqual([]);
  });

  test('a word on how high the ball flies takes most of the doubt away', () => {
    const spread = (tag?: 'normal'): number => {
      const known = { carryM: 140, loftDeg: 34, ...(tag === undefined ? {} : { tag }) };
      const all = launchesKnown(known, { air: AIR_15C }).map((l) => fly(l, { ...AIR_15C, tailMps: -4.5 }).carryM);
      const { lo80, hi80 } = doubted(0, all);
      return hi80 - lo80;
    };
    expect(spread('normal')).toBeLessThan(0.45 * spread());
  });
});
