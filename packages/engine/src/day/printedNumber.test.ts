import fc from 'fast-check';
import { expect, test } from 'vitest';
import { YARD_M } from '../quantity/units.ts';
import { printedNumber } from './printedNumber.ts';

test('as printed the parts add up, and none is off by a unit', () => {
  const part = fc.double({ min: -30, max: 30, noNaN: true });
  fc.assert(
    fc.property(
      fc.double({ min: 20, max: 250, noNaN: true }),
      part,
      part,
      part,
      part,
      (toLandingM, windM, slopeM, airM, lieM) => {
        const playsM = toLandingM + windM + slopeM + airM + lieM;
        const p = printedNumber({ toLandingM, windM, slopeM, airM, lieM, playsM }, YARD_M);
        expect(p.lands + p.wind + p.slope + p.air + p.lie).toBe(p.plays);
        expect(Math.abs(p.plays - playsM / YARD_M)).toBeLessThanOrEqual(0.5);
        expect(Math.abs(p.wind - windM / YARD_M)).toBeLessThan(1);
        expect(Math.abs(p.slope - slopeM / YARD_M)).toBeLessThan(1);
        expect(Math.abs(p.air - airM / YARD_M)).toBeLessThan(1);
        expect(Math.abs(p.lie - lieM / YARD_M)).toBeLessThan(1);
      },
    ),
    { numRuns: 300, seed: 9 },
  );
});

test('a part that is nought is printed as nought', () => {
  const calm = { toLandingM: 134.6 * YARD_M, windM: 0, slopeM: 0, airM: 0.4 * YARD_M, lieM: 0, playsM: 135 * YARD_M };
  expect(printedNumber(calm, YARD_M)).toMatchObject({
    wind: 0,
    slope: 0,
    lie: 0,
  });
});
