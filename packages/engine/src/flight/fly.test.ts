import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { BALL_MASS_KG, GRAVITY_MPS2 } from './aerodynamics.ts';
import { COARSE_STEP_S, fly, STEP_S } from './fly.ts';
import { flightPath } from './path.ts';
import { type FlightAir, landingSpeedMps, type Launch } from './launch.ts';
import { AIR_15C, launchOf } from './testdata/launches.ts';
import { plainFlight } from './testdata/plainFlight.ts';

const DRIVE = launchOf(171, 10.4, 2550);
const SEVEN_IRON = launchOf(114.7, 17.3, 5749);
const SLOW_SEVEN = launchOf(91.4, 19.5, 4142);
const WEDGE = launchOf(79.9, 27.2, 8140);
const ALL: readonly (readonly [string, Launch])[] = [
  ['drive', DRIVE],
  ['7-iron', SEVEN_IRON],
  ['slow 7-iron', SLOW_SEVEN],
  ['wedge', WEDGE],
];

const inWind = (tailMps: number, rightMps = 0): FlightAir => ({ ...AIR_15C, tailMps, rightMps });
/** 20 mph. */
const STRONG_MPS = 8.9408;

const launches = fc.record({
  speedMps: fc.double({ min: 20, max: 85, noNaN: true }),
  launchDeg: fc.double({ min: 5, max: 45, noNaN: true }),
  spinRpm: fc.double({ min: 1500, max: 11_000, noNaN: true }),
  axisDeg: fc.double({ min: -30, max: 30, noNaN: true }),
  azimuthDeg: fc.double({ min: -20, max: 20, noNaN: true }),
});
const winds = fc.record({
  tailMps: fc.double({ min: -9, max: 9, noNaN: true }),
  rightMps: fc.double({ min: -9, max: 9, noNaN: true }),
});

describe('laws of flight', () => {
  test('without air the range is v^2 sin 2a / g', () => {
    const vacuum = { ...AIR_15C, densityKgM3: 1e-12 };
    for (const [speedMps, launchDeg] of [
      [30, 45],
      [70, 12],
      [50, 60],
    ] as const) {
      const range = (speedMps ** 2 * Math.sin((2 * launchDeg * Math.PI) / 180)) / GRAVITY_MPS2;
      expect(fly({ speedMps, launchDeg, spinRpm: 5000 }, vacuum).carryM).toBeCloseTo(range, 6);
    }
  });

  test('no wind and no tilt: no side', () => {
    for (const [, launch] of ALL) expect(fly(launch, AIR_15C).sideM).toBe(0);
  });

  test('the mirror image of tilt, direction and cross wind is the mirror image of the flight', () => {
    fc.assert(
      fc.property(launches, winds, (launch, wind) => {
        const there = fly(launch, inWind(wind.tailMps, wind.rightMps));
        const mirrored = fly(
          { ...launch, axisDeg: -launch.axisDeg, azimuthDeg: -launch.azimuthDeg },
          inWind(wind.tailMps, -wind.rightMps),
        );
        expect(mirrored.carryM).toBeCloseTo(there.carryM, 9);
        expect(mirrored.sideM).toBeCloseTo(-there.sideM, 9);
      }),
      { numRuns: 50, seed: 4 },
    );
  });

  test('turning launch and wind together turns the flight', () => {
    fc.assert(
      fc.property(launches, winds, fc.double({ min: -170, max: 170, noNaN: true }), (launch, wind, turnDeg) => {
        const [cos, sin] = [Math.cos((turnDeg * Math.PI) / 180), Math.sin((turnDeg * Math.PI) / 180)];
        const there = fly(launch, inWind(wind.tailMps, wind.rightMps));
        const turned = fly(
          { ...launch, azimuthDeg: launch.azimuthDeg + turnDeg },
          inWind(wind.tailMps * cos - wind.rightMps * sin, wind.tailMps * sin + wind.rightMps * cos),
        );
        expect(turned.carryM).toBeCloseTo(there.carryM * cos - there.sideM * sin, 7);
        expect(turned.sideM).toBeCloseTo(there.carryM * sin + there.sideM * cos, 7);
      }),
      { numRuns: 50, seed: 5 },
    );
  });

  test.each(ALL)('%s: a head wind takes more than the same tail wind gives, and ever more', (_, launch) => {
    const calm = fly(launch, AIR_15C).carryM;
    const change = (tailMps: number): number => fly(launch, inWind(tailMps)).carryM - calm;
    for (const mps of [2, 4, 6, 8]) expect(-change(-mps)).toBeGreaterThan(change(mps));
    expect(change(-8)).toBeLessThan(2 * change(-4));
  });

  test('in still air a ball never gains energy', () => {
    fc.assert(
      fc.property(launches, (launch) => {
        const { flight: f, points } = flightPath(launch, AIR_15C);
        const energies = [...energiesOf(points, launch.speedMps), BALL_MASS_KG * 0.5 * landingSpeedMps(f) ** 2];
        expect(energies).toEqual(energies.toSorted((a, b) => b - a));
      }),
      { numRuns: 30, seed: 6 },
    );
  });

  test('carry rises with speed', () => {
    fc.assert(
      fc.property(launches, (launch) => {
        const slower = fly({ ...launch, axisDeg: 0, azimuthDeg: 0 }, AIR_15C).carryM;
        const faster = fly({ ...launch, axisDeg: 0, azimuthDeg: 0, speedMps: launch.speedMps + 0.5 }, AIR_15C).carryM;
        expect(faster).toBeGreaterThan(slower);
      }),
      { numRuns: 100, seed: 7 },
    );
  });

  test.each(ALL)('%s: denser air shortens it, smoothly', (_, launch) => {
    const carries = Array.from(
      { length: 61 },
      (__, i) => fly(launch, { ...AIR_15C, densityKgM3: 1.0 + i * 0.005 }).carryM,
    );
    const steps = carries.slice(1).map((c, i) => c - (carries[i] ?? 0));
    const bends = steps.slice(1).map((s, i) => Math.abs(s - (steps[i] ?? 0)));
    expect(Math.max(...steps)).toBeLessThan(0);
    expect(Math.max(...bends)).toBeLessThan(0.02);
  });
});

describe('the integrator', () => {
  test('halving the step divides the error by about sixteen', () => {
    for (const [, launch] of ALL) {
      const exact = fly(launch, AIR_15C, 0, 0.01).carryM;
      const coarse = Math.abs(fly(launch, AIR_15C, 0, 0.4).carryM - exact);
      const fine = Math.abs(fly(launch, AIR_15C, 0, 0.2).carryM - exact);
      expect(fine).toBeLessThan(Math.max(coarse / 8, 1e-4));
    }
  });

  test('is within .02 m at the usual step and within .1 m at the coarse one, in 20 mph from anywhere', () => {
    let [usual, coarse] = [0, 0];
    for (const [, launch] of ALL) {
      for (let deg = 0; deg < 360; deg += 30) {
        const air = inWind(STRONG_MPS * Math.cos((deg * Math.PI) / 180), STRONG_MPS * Math.sin((deg * Math.PI) / 180));
        const exact = fly(launch, air, 0, 0.01);
        const off = (stepS: number): number => {
          const f = fly(launch, air, 0, stepS);
          return Math.hypot(f.carryM - exact.carryM, f.sideM - exact.sideM);
        };
        usual = Math.max(usual, off(STEP_S));
        coarse = Math.max(coarse, off(COARSE_STEP_S));
      }
    }
    expect(usual).toBeLessThan(0.02);
    expect(coarse).toBeLessThan(0.1);
  });

  test('agrees with a plain integration of the formulas as they are written', () => {
    for (const [, launch] of ALL) {
      const air = inWind(-3, 2);
      const plain = plainFlight({ ...launch, axisDeg: 7, azimuthDeg: -3 }, air, 0, 0.01);
      const ours = fly({ ...launch, axisDeg: 7, azimuthDeg: -3 }, air, 0, 0.01);
      expect(Math.abs(ours.carryM - plain.carryM)).toBeLessThan(1e-3);
      expect(Math.abs(ours.sideM - plain.sideM)).toBeLessThan(1e-3);
      expect(Math.abs(ours.landingSpinRpm - plain.spinRpm)).toBeLessThan(0.1);
    }
  });
});

describe('a target above or below', () => {
  test('a ball that never rises so high does not land; one that does lands on the way down', () => {
    const low = fly(WEDGE, AIR_15C, 40);
    expect(low.landed).toBe(false);
    expect(low.carryM).toBeNaN();
    expect(low.apexM).toBeGreaterThan(15);
    const high = fly(WEDGE, AIR_15C, 15);
    expect(high.landed).toBe(true);
    expect(high.upMps).toBeLessThan(0);
    expect(high.carryM).toBeGreaterThan(high.apexAtM);
  });

  test('the higher the target, the shorter; the apex is the same', () => {
    const heights = [-20, -10, 0, 10, 15];
    const flights = heights.map((heightM) => fly(WEDGE, AIR_15C, heightM));
    const carries = flights.map((f) => f.carryM);
    expect(carries).toEqual(carries.toSorted((a, b) => b - a));
    for (const f of flights) expect(f.apexM).toBe(flights[0]?.apexM);
  });
});

/** Energy of a ball between the points of its path, by central differences, from the launch on. */
function energiesOf(points: Float64Array, launchMps: number): number[] {
  const energies = [0.5 * BALL_MASS_KG * launchMps ** 2];
  for (let i = 4; i + 8 < points.length - 4; i += 4) {
    const [t0 = 0, x0 = 0, y0 = 0, z0 = 0] = points.slice(i - 4, i);
    const [, , y = 0] = points.slice(i, i + 4);
    const [t1 = 0, x1 = 0, y1 = 0, z1 = 0] = points.slice(i + 4, i + 8);
    const speed = Math.hypot(x1 - x0, y1 - y0, z1 - z0) / (t1 - t0);
    energies.push(BALL_MASS_KG * (0.5 * speed ** 2 + GRAVITY_MPS2 * y));
  }
  return energies;
}
