import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { launchFamily } from '../flight/family.ts';
import { airOf, CALM, type Day, REFERENCE, stationHpa } from './day.ts';
import { moveShot, type PlayedIn, REFERENCE_CONDITIONS } from './normalise.ts';

const shots = fc.record({
  alongM: fc.double({ min: 60, max: 150, noNaN: true }),
  acrossM: fc.double({ min: -15, max: 15, noNaN: true }),
  loftDeg: fc.double({ min: 20, max: 40, noNaN: true }),
});
const days = fc.record({
  temperatureC: fc.double({ min: -5, max: 38, noNaN: true }),
  altitudeM: fc.double({ min: 0, max: 2000, noNaN: true }),
  speedMps: fc.double({ min: 0, max: 8, noNaN: true }),
  fromDeg: fc.double({ min: 0, max: 360, noNaN: true }),
  heightM: fc.double({ min: -15, max: 4, noNaN: true }),
  ballFactor: fc.double({ min: 0.85, max: 1.02, noNaN: true }),
});

function playedIn(d: typeof days extends fc.Arbitrary<infer T> ? T : never): PlayedIn {
  const day: Day = {
    ...REFERENCE,
    temperatureC: d.temperatureC,
    stationHpa: stationHpa(1013.25, d.altitudeM),
    wind: { ...CALM, speedMps: d.speedMps, fromDeg: d.fromDeg },
  };
  return { air: airOf(day, 30), heightM: d.heightM, ballFactor: d.ballFactor };
}

describe('a measured shot on the reference day', () => {
  test('there and back is the identity', () => {
    let checked = 0;
    fc.assert(
      fc.property(shots, days, ({ alongM, acrossM, loftDeg }, day) => {
        const family = launchFamily(loftDeg);
        const then = playedIn(day);
        const stored = moveShot({ alongM, acrossM }, family, loftDeg, then, REFERENCE_CONDITIONS);
        if (stored.status !== 'found') return;
        const again = moveShot(stored, family, loftDeg, REFERENCE_CONDITIONS, then);
        expect(again.status).toBe('found');
        if (again.status !== 'found') return;
        expect(Math.hypot(again.alongM - alongM, again.acrossM - acrossM)).toBeLessThan(2e-3);
        checked++;
      }),
      { numRuns: 60, seed: 8 },
    );
    expect(checked).toBeGreaterThan(40);
  });

  test('on the reference day a shot is itself', () => {
    const stored = moveShot(
      { alongM: 140, acrossM: -6 },
      launchFamily(34),
      34,
      REFERENCE_CONDITIONS,
      REFERENCE_CONDITIONS,
    );
    expect(stored).toMatchObject({ status: 'found' });
    if (stored.status !== 'found') return;
    expect(stored.alongM).toBeCloseTo(140, 3);
    expect(stored.acrossM).toBeCloseTo(-6, 3);
  });

  test('a shot into the wind, uphill or on a cold day was a longer one; the drift of a cross wind is taken out', () => {
    const stored = (day: Partial<Day>, heightM = 0): { readonly alongM: number; readonly acrossM: number } => {
      const found = moveShot(
        { alongM: 130, acrossM: 5 },
        launchFamily(34),
        34,
        { air: airOf({ ...REFERENCE, ...day }, 0), heightM },
        REFERENCE_CONDITIONS,
      );
      return found.status === 'found' ? found : { alongM: Number.NaN, acrossM: Number.NaN };
    };
    expect(stored({ wind: { ...CALM, speedMps: 5, fromDeg: 0 } }).alongM).toBeGreaterThan(140);
    expect(stored({}, 8).alongM).toBeGreaterThan(135);
    expect(stored({ temperatureC: 5 }).alongM).toBeGreaterThan(131);
    expect(stored({ wind: { ...CALM, speedMps: 5, fromDeg: 270 } }).acrossM).toBeLessThan(-5);
  });
});

describe('range balls', () => {
  test('a carry with them is the player’s own ball’s, shorter by the factor', () => {
    const range: PlayedIn = { ...REFERENCE_CONDITIONS, ballFactor: 0.93 };
    const stored = moveShot({ alongM: 130.2, acrossM: 0 }, launchFamily(34), 34, range, REFERENCE_CONDITIONS);
    expect(stored.status === 'found' ? stored.alongM : 0).toBeCloseTo(140, 2);
  });
});
