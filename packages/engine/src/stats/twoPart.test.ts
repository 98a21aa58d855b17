import { describe, expect, it } from 'vitest';
import { randomFrom, type Random } from '../math/random.ts';
import { fitTwoPart, type Ball, type TwoPartPrior } from './twoPart.ts';

const PRIOR: TwoPartPrior = {
  carryM: 140,
  seCarryM: 6,
  sdCarryM: 9,
  directionSdDeg: 4,
  mishitShare: 0.15,
  full: true,
};

const ballsOf = (random: Random, n: number, mu: number, mishit: number): Ball[] =>
  Array.from({ length: n }, () => {
    const missed = random.next() < mishit;
    const carryM = missed ? mu * random.beta(3.2, 2) : mu + 9 * random.normal();
    return { carryM, directionDeg: 1 + 4 * (missed ? 1.6 : 1) * random.normal() };
  });

describe('the two-part fit', () => {
  it('gives the prior back when there are no balls', () => {
    const fit = fitTwoPart([], PRIOR);
    expect(fit.carryM.value).toBeCloseTo(140, 3);
    expect(fit.carryM.se).toBeCloseTo(6, 2);
    expect(fit.sdCarryM.value).toBeCloseTo(9, 3);
    expect(fit.directionSdDeg.value).toBeCloseTo(4, 3);
    expect(fit.mishitShare.value).toBeCloseTo(0.15, 4);
    expect(fit.sdCarryM.se).toBeCloseTo(0.25, 2);
  });

  it('comes to the truth with many balls', () => {
    const fit = fitTwoPart(ballsOf(randomFrom(5), 2000, 128, 0.25), PRIOR);
    expect(Math.abs(fit.carryM.value - 128)).toBeLessThan(4 * fit.carryM.se);
    expect(fit.carryM.se).toBeLessThan(0.35);
    expect(fit.sdCarryM.value).toBeCloseTo(9, 0);
    expect(fit.directionDeg.value).toBeCloseTo(1, 0);
    expect(fit.mishitShare.value).toBeCloseTo(0.25, 1);
    expect(fit.mishitChances).toHaveLength(2000);
  });

  it('keeps topped balls as mishits, and does not let them shorten the carry', () => {
    const good = [138, 141, 144, 139, 142, 136, 145, 140].map((carryM) => ({ carryM }));
    const topped = [{ carryM: 12 }, { carryM: 0 }];
    const without = fitTwoPart(good, PRIOR);
    const fit = fitTwoPart([...good, ...topped], PRIOR);
    expect(fit.n).toBe(10);
    expect(Math.abs(fit.carryM.value - without.carryM.value)).toBeLessThan(0.3);
    expect(fit.mishitChances.slice(8).every((m) => m > 0.999)).toBe(true);
    expect(fit.mishitShare.value).toBeGreaterThan(without.mishitShare.value);
  });

  it('leans on the prior with six balls, and says so in its error', () => {
    const six = [151, 156, 149, 153, 158, 150].map((carryM) => ({ carryM }));
    const fit = fitTwoPart(six, PRIOR);
    expect(fit.carryM.value).toBeGreaterThan(145);
    expect(fit.carryM.value).toBeLessThan(152.8);
    expect(fit.carryM.se).toBeGreaterThan(2);
    const twelve = fitTwoPart([...six, ...six], PRIOR);
    expect(twelve.carryM.se).toBeLessThan(fit.carryM.se);
  });

  it('does not depend on the order of the balls', () => {
    const balls = ballsOf(randomFrom(9), 25, 145, 0.2);
    const there = fitTwoPart(balls, PRIOR);
    const back = fitTwoPart(balls.toReversed(), PRIOR);
    expect(back.carryM.value).toBeCloseTo(there.carryM.value, 2);
    expect(back.mishitShare.value).toBeCloseTo(there.mishitShare.value, 4);
  });

  it('stays finite on balls that no swing hits', () => {
    for (const balls of [
      [{ carryM: 0 }],
      [{ carryM: 400, directionDeg: 89 }],
      Array.from({ length: 30 }, () => ({ carryM: 140, directionDeg: 0 })),
      [{ carryM: 1e-6, directionDeg: -90 }, { carryM: 360 }],
    ]) {
      const fit = fitTwoPart(balls, PRIOR);
      for (const e of [fit.carryM, fit.sdCarryM, fit.directionDeg, fit.directionSdDeg, fit.mishitShare]) {
        expect(Number.isFinite(e.value)).toBe(true);
        expect(e.se).toBeGreaterThan(0);
        expect(Number.isFinite(e.se)).toBe(true);
      }
      expect(fit.carryM.value).toBeGreaterThan(0);
    }
  });
});
