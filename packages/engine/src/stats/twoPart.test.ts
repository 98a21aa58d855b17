import { describe, expect, it } from 'vitest';
import { randomFrom, type Random } from '../math/random.ts';
import type { Ball } from './ball.ts';
import { fitTwoPart, type TwoPartFit, type TwoPartPrior } from './twoPart.ts';

const PRIOR: TwoPartPrior = {
  carryM: 140,
  seCarryM: 6,
  sdCarryM: 9,
  directionSdDeg: 4,
  mishitShare: 0.15,
};

const fitOn = (balls: readonly Ball[]): TwoPartFit => fitTwoPart({ balls, full: true }, PRIOR);

const ballsOf = (random: Random, n: number, mu: number, mishit: number): Ball[] =>
  Array.from({ length: n }, () => {
    const missed = random.next() < mishit;
    const carryM = missed ? mu * random.beta(3.2, 2) : mu + 9 * random.normal();
    return { carryM, directionDeg: 1 + 4 * (missed ? 1.6 : 1) * random.normal() };
  });

describe('the two-part fit', () => {
  it('gives the prior back when there are no balls', () => {
    const fit = fitOn([]);
    // A lognormal of median 140 and a logit normal of median .15 have their means a little above.
    expect(fit.carryM.value).toBeCloseTo(140 * Math.exp((6 / 140) ** 2 / 2), 0);
    expect(fit.carryM.se).toBeCloseTo(6, 0);
    expect(fit.sdCarryM.value).toBeCloseTo(9, 1);
    expect(fit.directionSdDeg.value).toBeCloseTo(4, 1);
    expect(Math.abs(fit.mishitShare.value - 0.161)).toBeLessThan(0.003);
    expect(Math.abs(fit.sdCarryM.se - 0.25)).toBeLessThan(0.01);
    expect(Math.abs(fit.carryM.cuts[1]! - 140 * Math.exp((-1.2816 * 6) / 140))).toBeLessThan(0.5);
  });

  it('comes to the truth with many balls', () => {
    const fit = fitOn(ballsOf(randomFrom(5), 600, 128, 0.25));
    expect(Math.abs(fit.carryM.value - 128)).toBeLessThan(4 * fit.carryM.se);
    expect(fit.carryM.se).toBeLessThan(0.6);
    expect(Math.abs(fit.sdCarryM.value - 9)).toBeLessThan(1);
    expect(fit.directionDeg.value).toBeCloseTo(1, 0);
    expect(fit.mishitShare.value).toBeCloseTo(0.25, 1);
    expect(fit.mishitChances).toHaveLength(600);
  });

  it('keeps topped balls as mishits, and does not let them shorten the carry', () => {
    const good = [138, 141, 144, 139, 142, 136, 145, 140].map((carryM) => ({ carryM }));
    const topped = [{ carryM: 12 }, { carryM: 0 }];
    const without = fitOn(good);
    const fit = fitOn([...good, ...topped]);
    expect(fit.n).toBe(10);
    expect(Math.abs(fit.carryM.value - without.carryM.value)).toBeLessThan(0.3);
    expect(fit.mishitChances.slice(8).every((m) => m > 0.999)).toBe(true);
    expect(fit.mishitShare.value).toBeGreaterThan(without.mishitShare.value);
  });

  it('leans on the prior with six balls, and says so in its error', () => {
    const six = [151, 156, 149, 153, 158, 150].map((carryM) => ({ carryM }));
    const fit = fitOn(six);
    expect(fit.carryM.value).toBeGreaterThan(145);
    expect(fit.carryM.value).toBeLessThan(152.8);
    expect(fit.carryM.se).toBeGreaterThan(2);
    const twelve = fitOn([...six, ...six]);
    expect(twelve.carryM.se).toBeLessThan(fit.carryM.se);
  });

  it('does not depend on the order of the balls', () => {
    const balls = ballsOf(randomFrom(9), 25, 145, 0.2);
    const there = fitOn(balls);
    const back = fitOn(balls.toReversed());
    expect(back.carryM.value).toBeCloseTo(there.carryM.value, 1);
    expect(back.mishitShare.value).toBeCloseTo(there.mishitShare.value, 3);
  });

  it('stays finite on balls that no swing hits', () => {
    for (const balls of [
      [{ carryM: 0 }],
      [{ carryM: 400, directionDeg: 89 }],
      Array.from({ length: 30 }, () => ({ carryM: 140, directionDeg: 0 })),
      [{ carryM: 1e-6, directionDeg: -90 }, { carryM: 360 }],
    ]) {
      const fit = fitOn(balls);
      for (const e of [fit.carryM, fit.sdCarryM, fit.directionDeg, fit.directionSdDeg, fit.mishitShare]) {
        expect(Number.isFinite(e.value)).toBe(true);
        expect(e.se).toBeGreaterThan(0);
        expect(Number.isFinite(e.se)).toBe(true);
      }
      expect(fit.carryM.value).toBeGreaterThan(0);
    }
  });
});
