import { describe, expect, it } from 'vitest';
import { randomFrom } from '../math/random.ts';
import type { Window } from './ball.ts';
import { logitOf, SkewNormal, TwoPart } from './twoPartModel.ts';

const COURSE = { distanceShare: 0.06, mishitShare: 0.08 };
const FIGURES = [Math.log(130), Math.log(0.07), 1.5, Math.log(4), 0, logitOf(0.2), 0.2];
const SWING = new TwoPart(FIGURES, true, COURSE);
const GREEN: Window = { shortM: 118, longM: 140, leftDeg: -5, rightDeg: 4 };

describe('a good strike with a longer short side', () => {
  it.each([0, 0.06, 0.4, -0.3])(
    'has mean 0, deviation 1 and a distribution that its density sums to: skew %d',
    (skew) => {
      const strike = new SkewNormal(skew);
      let [mass, mean, square] = [0, 0, 0];
      const step = 0.002;
      for (let z = -9 + step / 2; z < 9; z += step) {
        const m = strike.pdf(z) * step;
        mass += m;
        mean += m * z;
        square += m * z * z;
        if (Math.abs(z - 0.701) < step / 2) expect(mass - m / 2).toBeCloseTo(strike.cdf(z), 4);
      }
      expect([mass, mean, square].map((x) => Number(x.toFixed(5)))).toEqual([1, expect.closeTo(0, 4), 1]);
    },
  );
});

describe('the chance of a window', () => {
  it('and of its five misses are all there is', () => {
    const sum = (['inside', 'short', 'long', 'left', 'right'] as const).reduce(
      (s, side) => s + SWING.chanceOf(GREEN, side, 0),
      0,
    );
    // The stray balls beyond twice the carry are counted once more.
    expect(Math.abs(sum - 1)).toBeLessThan(1e-3);
    expect(SWING.chanceOf(GREEN, 'away', 0)).toBeCloseTo(1 - SWING.chanceOf(GREEN, 'inside', 0), 12);
  });

  it('is the mean of the density over it', () => {
    const random = randomFrom(4);
    const [n, deep, wide] = [60_000, GREEN.longM - GREEN.shortM, GREEN.rightDeg - GREEN.leftDeg];
    let sum = 0;
    for (let i = 0; i < n; i++) {
      const carryM = GREEN.shortM + deep * random.next();
      const directionDeg = GREEN.leftDeg + wide * random.next();
      const { good, mishit } = SWING.partsAt({ carryM, directionDeg, onCourse: true });
      sum += good + mishit;
    }
    expect((sum / n) * deep * wide).toBeCloseTo(SWING.chanceOf(GREEN, 'inside', 0), 2);
  });

  it('goes on far beyond the carry, so that no far mark is explained by a ball that cannot get there', () => {
    const far: Window = { shortM: 300, longM: 320, leftDeg: -5, rightDeg: 5 };
    const { good, mishit } = SWING.partsAt({ carryM: 310, directionDeg: 0, onCourse: true });
    const density = (good + mishit) * 20 * 10;
    expect(density / SWING.chanceOf(far, 'inside', 0)).toBeGreaterThan(0.5);
    expect(density / SWING.chanceOf(far, 'inside', 0)).toBeLessThan(3);
  });
});
