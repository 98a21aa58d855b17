import { describe, expect, test } from 'vitest';
import { YARD_M } from '../quantity/units.ts';
import { BALL_RADIUS_M, GRAVITY_MPS2 } from './aerodynamics.ts';
import { bounce } from './bounce.ts';
import { fly } from './fly.ts';
import type { Launch } from './launch.ts';
import { type GroundAlong, rollOut, runOut, touchdownOf } from './runOut.ts';
import { PENNER_GREEN, rollingOfGreen } from './surfaces.ts';
import { AIR_15C, launchOf } from './testdata/launches.ts';

const LAUNCHES: readonly Launch[] = [
  launchOf(171, 10.4, 2550),
  launchOf(134, 12.7, 2950),
  launchOf(151, 10.7, 4333),
  launchOf(137, 14.5, 6400),
  launchOf(125, 18, 7500),
  launchOf(108, 22.3, 9327),
  launchOf(91.4, 19.5, 4900),
];
const [DRIVE = launchOf(171, 10.4, 2550)] = LAUNCHES;
const drive = touchdownOf(fly(DRIVE, AIR_15C));

/** Runs of an independent implementation, yards: rows of the surfaces, columns of the launches. */
const RUNS = [
  ['green', 'normal', [19, 22, 12.8, 3.6, 2.1, 2.4, 13]],
  ['green', 'firm', [28, 31, 19, 6.4, 3.7, 3.6, 18]],
  ['green', 'soft', [5, 9, 4.2, 0.7, 0, -0.3, 5.7]],
  ['fairway', 'normal', [18, 21, 11.7, 3.0, 2.0, 2.2, 12]],
  ['fairway', 'firm', [27, 29, 17.6, 5.1, 3.2, 3.3, 17]],
  ['fairway', 'soft', [7, 11, 4.9, 0.9, 0.1, 0.1, 6]],
  ['rough', 'normal', [4, 7, 2.8, 0.5, 0, -0.5, 4]],
] as const;

describe('run', () => {
  test.each(RUNS)('%s, %s, as another implementation has it', (surface, firmness, printed) => {
    LAUNCHES.forEach((launch, i) => {
      const run = runOut(touchdownOf(fly(launch, AIR_15C)), () => ({ surface }), { firmness });
      expect(Math.abs(run.runM / YARD_M - (printed[i] ?? 0)), `column ${i}`).toBeLessThan(0.71);
      expect(run).toMatchObject({ surface, end: 'stopped', firmnessAssumed: false });
    });
  });

  test('firmer ground runs further; wet plays soft; frozen runs furthest', () => {
    const run = (today: Parameters<typeof runOut>[2]): number =>
      runOut(drive, () => ({ surface: 'fairway' }), today).runM;
    expect(run({ firmness: 'soft' })).toBeLessThan(run({ firmness: 'normal' }));
    expect(run({ firmness: 'normal' })).toBeLessThan(run({ firmness: 'firm' }));
    expect(run({ firmness: 'firm', wet: true })).toBe(run({ firmness: 'soft' }));
    expect(run({ frozen: true })).toBeGreaterThan(run({ firmness: 'firm' }));
    expect(run({})).toBe(run({ firmness: 'normal' }));
  });

  test('says when nobody told how firm the ground is', () => {
    expect(runOut(drive, () => ({ surface: 'fairway' })).firmnessAssumed).toBe(true);
    expect(runOut(drive, () => ({ surface: 'fairway' }), { firmness: 'normal' }).firmnessAssumed).toBe(false);
  });

  test('a ball stays in sand and in water, and plugs where the ground does that', () => {
    for (const surface of ['bunker', 'penalty'] as const) {
      expect(runOut(drive, () => ({ surface }))).toMatchObject({ runM: 0, hops: 0, end: 'stayed', surface });
    }
    expect(runOut(drive, () => ({ surface: 'fairway' }), { plugging: true })).toMatchObject({
      runM: 0,
      end: 'plugged',
    });
  });

  test('a ball that runs into sand stays there; one that runs into rough is slowed', () => {
    const whole = runOut(drive, () => ({ surface: 'fairway' })).runM;
    const until =
      (beyondM: number, surface: 'bunker' | 'rough'): GroundAlong =>
      (m) => ({
        surface: m < beyondM ? 'fairway' : surface,
      });
    const sand = runOut(drive, until(whole - 1, 'bunker'));
    expect(sand).toMatchObject({ end: 'stayed', surface: 'bunker' });
    expect(sand.runM).toBeGreaterThanOrEqual(whole - 1);
    expect(sand.runM).toBeLessThan(whole - 0.5);
    const rough = runOut(drive, until(whole - 1, 'rough'));
    expect(rough).toMatchObject({ end: 'stopped', surface: 'rough' });
    expect(rough.runM).toBeGreaterThan(whole - 1);
    expect(rough.runM).toBeLessThan(whole);
  });

  test('a roll alone is v^2 / 2 a, uphill and downhill', () => {
    const a = (slope: number): number => {
      const angle = Math.atan(slope);
      return (5 / 7) * GRAVITY_MPS2 * (0.131 * Math.cos(angle) + Math.sin(angle));
    };
    for (const slope of [0, 0.03, -0.03]) {
      const { runM } = rollOut(3, () => ({ surface: 'green', slope }));
      expect(runM).toBeCloseTo(9 / (2 * a(slope)) / Math.hypot(1, slope), 9);
      expect(rollOut(-3, () => ({ surface: 'green', slope: -slope })).runM).toBeCloseTo(-runM, 9);
    }
  });

  test('downhill runs further than level, and level further than uphill', () => {
    const run = (slope: number): number => runOut(drive, () => ({ surface: 'fairway', slope })).runM;
    const runs = [-0.1, -0.05, 0, 0.05, 0.1].map(run);
    expect(runs).toEqual(runs.toSorted((a, b) => b - a));
  });

  test('a slope that a ball cannot stop on runs away, and says so', () => {
    expect(runOut(drive, () => ({ surface: 'green', slope: -0.5 })).end).toBe('ran away');
  });

  test('a green of 10 ft slows a ball as the measuring device has it', () => {
    const greenSpeedM = 3.048;
    expect((5 / 7) * GRAVITY_MPS2 * rollingOfGreen(greenSpeedM) * 2 * greenSpeedM).toBeCloseTo(1.83 ** 2, 10);
    expect(rollingOfGreen(6 * 0.3048)).toBeCloseTo(0.131, 2);
    const run = (speedM: number): number => runOut(drive, () => ({ surface: 'green' }), { greenSpeedM: speedM }).runM;
    expect(run(3.6)).toBeGreaterThan(run(2.4));
  });
});

describe('a bounce', () => {
  test('loses energy, whatever the turf', () => {
    const energy = (b: { forwardMps: number; normalMps: number; backspin: number }): number =>
      b.forwardMps ** 2 + b.normalMps ** 2 + 0.4 * (BALL_RADIUS_M * b.backspin) ** 2;
    for (const backspin of [-400, 0, 300, 900]) {
      for (const forwardMps of [-8, 2, 12, 25]) {
        for (const normalMps of [0.3, 5, 15, 25]) {
          const ball = { forwardMps, normalMps, backspin };
          const before = energy(ball);
          bounce(ball, PENNER_GREEN);
          expect(energy(ball)).toBeLessThan(before);
        }
      }
    }
  });

  test('backwards is the mirror image of forwards', () => {
    const forwards = { forwardMps: 6, normalMps: 9, backspin: 250 };
    const backwards = { forwardMps: -6, normalMps: 9, backspin: -250 };
    bounce(forwards, PENNER_GREEN);
    bounce(backwards, PENNER_GREEN);
    expect(backwards.forwardMps).toBe(-forwards.forwardMps);
    expect(backwards.normalMps).toBe(forwards.normalMps);
    expect(backwards.backspin).toBe(-forwards.backspin);
  });
});
