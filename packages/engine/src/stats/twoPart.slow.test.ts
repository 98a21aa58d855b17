import { describe, expect, it } from 'vitest';
import { normalQuantile } from '../math/normal.ts';
import { randomFrom } from '../math/random.ts';
import { fitTwoPart, type Ball } from './twoPart.ts';

const PLAYERS = 700;

interface Case {
  readonly sdShare: number;
  readonly mishit: number;
  /** Error of the carry that an earlier experiment with this estimator's recipe had, yards, at 5, 10 and 20 balls. */
  readonly rms: readonly [number, number, number];
}
const CASES: readonly Case[] = [
  { sdShare: 0.05, mishit: 0.08, rms: [3.3, 2.5, 1.9] },
  { sdShare: 0.065, mishit: 0.15, rms: [4.1, 3.4, 2.6] },
  { sdShare: 0.08, mishit: 0.25, rms: [4.7, 4.1, 3.4] },
];
const COUNTS = [5, 10, 20] as const;

interface Tally {
  readonly rms: number;
  /** Share of players whose truth lies in the 80-in-100 interval: of carry, log spread, logit of mishits, direction. */
  readonly covered: readonly number[];
}

/** Players whose carry is 150 yd give or take 6, fitted on the prior they were drawn from; a mishit goes Beta(3.2, 2) of the carry. */
function tally(c: Case, n: number, spreadsVary: boolean): Tally {
  const random = randomFrom(31 * n + Math.round(1000 * c.sdShare) + (spreadsVary ? 7 : 0));
  const z80 = normalQuantile(0.9);
  const covered = [0, 0, 0, 0];
  let sq = 0;
  for (let i = 0; i < PLAYERS; i++) {
    const mu = 150 + 6 * random.normal();
    const sd = 150 * c.sdShare * (spreadsVary ? Math.exp(0.25 * random.normal()) : 1);
    const mishit = spreadsVary ? random.beta(26 * c.mishit, 26 * (1 - c.mishit)) : c.mishit;
    const bias = spreadsVary ? 2 * random.normal() : 0;
    const balls = Array.from({ length: n }, (): Ball => {
      const missed = random.next() < mishit;
      const tail = Math.sqrt(3 / random.gamma(4));
      const carryM = missed ? mu * random.beta(3.2, 2) : mu + sd * random.normal();
      return { carryM, directionDeg: bias + 4 * (missed ? 1.6 : 1) * tail * random.normal() };
    });
    const prior = { carryM: 150, seCarryM: 6, sdCarryM: 150 * c.sdShare, directionSdDeg: 4, mishitShare: c.mishit };
    const fit = fitTwoPart(balls, { ...prior, full: true });
    sq += (fit.carryM.value - mu) ** 2;
    const logit = (p: number): number => Math.log(p / (1 - p));
    const errors = [
      (fit.carryM.value - mu) / fit.carryM.se,
      Math.log(fit.sdCarryM.value / sd) / fit.sdCarryM.se,
      (logit(fit.mishitShare.value) - logit(mishit)) / fit.mishitShare.se,
      (fit.directionDeg.value - bias) / fit.directionDeg.se,
    ];
    errors.forEach((e, k) => (covered[k] = (covered[k] ?? 0) + (Math.abs(e) < z80 ? 1 : 0)));
  }
  return { rms: Math.sqrt(sq / PLAYERS), covered: covered.map((x) => x / PLAYERS) };
}

describe('the fit on players whose truth is known', () => {
  it.each(CASES)('errs no more than the published recipe: sd $sdShare, mishits $mishit', (c) => {
    COUNTS.forEach((n, i) => expect(tally(c, n, false).rms).toBeLessThan(1.1 * (c.rms[i] ?? 0)));
  });

  it.each(CASES)('has intervals that hold the truth as often as they say: sd $sdShare, mishits $mishit', (c) => {
    // 700 players: one standard error is .015; the normal approximation itself costs up to .05 at five balls and many mishits.
    for (const n of COUNTS)
      for (const share of tally(c, n, true).covered) {
        expect(share).toBeGreaterThan(0.71);
        expect(share).toBeLessThan(0.87);
      }
  });
});
