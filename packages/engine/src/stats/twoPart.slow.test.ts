import { describe, expect, it } from 'vitest';
import { randomFrom } from '../math/random.ts';
import type { Ball } from './ball.ts';
import { fitTwoPart } from './twoPart.ts';

const PLAYERS = 600;

interface Case {
  readonly sdShare: number;
  readonly mishit: number;
  /** Error of the carry that an earlier experiment with another estimator had, yards, at 5, 10 and 20 balls. */
  readonly rms: readonly [number, number, number];
}
const CASES: readonly Case[] = [
  { sdShare: 0.05, mishit: 0.08, rms: [3.3, 2.5, 1.9] },
  { sdShare: 0.065, mishit: 0.15, rms: [4.1, 3.4, 2.6] },
  { sdShare: 0.08, mishit: 0.25, rms: [4.7, 4.1, 3.4] },
];
const COUNTS = [5, 10, 20] as const;

/** Players whose carry is 150 yd give or take 6, fitted on the prior they were drawn from; a mishit goes Beta(3.2, 2) of the carry. */
function rmsOf({ sdShare, mishit }: Case, n: number): number {
  const random = randomFrom(31 * n + Math.round(1000 * sdShare));
  let sq = 0;
  for (let i = 0; i < PLAYERS; i++) {
    const mu = 150 + 6 * random.normal();
    const balls = Array.from({ length: n }, (): Ball => {
      const missed = random.next() < mishit;
      return { carryM: missed ? mu * random.beta(3.2, 2) : mu + 150 * sdShare * random.normal() };
    });
    const prior = { carryM: 150, seCarryM: 6, sdCarryM: 150 * sdShare, directionSdDeg: 4, mishitShare: mishit };
    sq += (fitTwoPart({ balls, full: true }, prior).carryM.value - mu) ** 2;
  }
  return Math.sqrt(sq / PLAYERS);
}

describe('the fit on players whose truth is known', () => {
  // 600 players: one standard error is 3 in 100 of the error itself.
  it.each(CASES)('errs by at most a twentieth more than the earlier recipe: sd $sdShare, mishits $mishit', (c) => {
    COUNTS.forEach((n, i) => expect(rmsOf(c, n)).toBeLessThan(1.05 * (c.rms[i] ?? 0)));
  });
});
