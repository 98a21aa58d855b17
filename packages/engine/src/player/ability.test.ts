import { describe, expect, it } from 'vitest';
import { randomFrom } from '../math/random.ts';
import { fitSwings, storedPattern, withBall, type SwingBalls } from './ability.ts';
import { carryEntry, carryGaps } from './carryTable.ts';
import { playerModel } from './model.ts';

const LEVEL = { handicapIndex: 14 };
const TRUE_CARRY_M = { Driver: 205, '5i': 158, '7i': 140, '9i': 121, PW: 110 };

function session(seed: number, each: number): SwingBalls[] {
  const random = randomFrom(seed);
  return Object.entries(TRUE_CARRY_M).map(([club, mu]) => ({
    club,
    swing: 'full',
    balls: Array.from({ length: each }, () => {
      const carryM = random.next() < 0.15 ? mu * random.beta(3.2, 2) : mu * (1 + 0.06 * random.normal());
      return { carryM, directionDeg: 4 * random.normal() };
    }),
  }));
}

describe('a session fitted', () => {
  it('finds every carry within its interval of 99 in 100, with the count of its balls', () => {
    for (const s of fitSwings(LEVEL, session(3, 12), [])) {
      const truth = TRUE_CARRY_M[s.club as keyof typeof TRUE_CARRY_M];
      expect(Math.abs(s.fit.carryM.value - truth)).toBeLessThan(2.6 * s.fit.carryM.se);
      expect(s.fit.n).toBe(12);
    }
  });

  it('lets the other clubs sharpen a club with two balls', () => {
    const swings = session(4, 15);
    const two = swings.map((s) => (s.club === '7i' ? { ...s, balls: s.balls.slice(0, 2) } : s));
    const [alone] = fitSwings(
      LEVEL,
      two.filter((s) => s.club === '7i'),
      [],
    );
    const among = fitSwings(LEVEL, two, []).find((s) => s.club === '7i');
    expect(among?.fit.carryM.se ?? 99).toBeLessThan(0.8 * (alone?.fit.carryM.se ?? 0));
  });

  it('takes in one more ball of a club as the whole bag does, but for what the others learn of it', () => {
    const swings = session(8, 12);
    const ball = { carryM: 143, directionDeg: 1 };
    const one = fitSwings(LEVEL, swings, []).find((s) => s.club === '7i');
    const more = swings.map((s) => (s.club === '7i' ? { ...s, balls: [...s.balls, ball] } : s));
    const whole = fitSwings(LEVEL, more, []).find((s) => s.club === '7i');
    if (one === undefined || whole === undefined) throw new Error('no 7i');
    const quick = withBall(LEVEL, one, ball);
    expect(quick.fit.n).toBe(13);
    expect(Math.abs(quick.fit.carryM.value - whole.fit.carryM.value)).toBeLessThan(0.25 * whole.fit.carryM.se);
    expect(quick.fit.carryM.se).toBeLessThan(1.02 * one.fit.carryM.se);
  });

  it('comes back through a Player file as options with the same carries', () => {
    const fits = fitSwings(LEVEL, session(5, 20), []);
    const model = playerModel({ version: 1, name: 'A player', ...LEVEL, patterns: fits.map(storedPattern) });
    for (const s of fits) {
      const option = model.options.find((o) => o.club === s.club && o.full);
      expect(option?.evidence).toBe('fitted');
      expect(option?.doubt.balls).toBe(20);
      expect(option?.byLie.tee?.parts[0]?.alongM ?? 0).toBeGreaterThan(0.98 * s.fit.carryM.value);
      expect(option?.byLie.tee?.parts[0]?.weight ?? 1).toBeLessThan(1 - s.fit.mishitShare.value);
    }
  });
});

describe('the table of carries', () => {
  const entries = fitSwings(LEVEL, session(6, 14), []).map((s) => carryEntry(s));

  it('orders its figures', () => {
    for (const e of entries) {
      const { lo95, lo80, lo50, mean, hi50, hi80, hi95 } = e.carryM;
      const rising = [lo95, lo80, lo50, mean, hi50, hi80, hi95];
      expect(rising.toSorted((a, b) => a - b)).toEqual(rising);
      expect(e.allBallsMeanM).toBeLessThan(mean);
      expect(e.eightInTenCarryM).toBeLessThan(mean);
      expect(e.mishitShare.lo80).toBeLessThan(e.mishitShare.mean);
    }
  });

  it('asks for the balls that bring the error under two yards in 95 of 100', () => {
    const [first] = entries;
    if (first?.ballsNeeded === null || first === undefined) throw new Error('fourteen balls cannot be enough');
    const { balls } = first.ballsNeeded;
    expect(balls).toBeGreaterThan(20);
    const random = randomFrom(1);
    const more = Array.from({ length: balls + 14 }, () => ({
      carryM: random.next() < 0.15 ? 205 * random.beta(3.2, 2) : 205 * (1 + 0.06 * random.normal()),
    }));
    const [later] = fitSwings(LEVEL, [{ club: 'Driver', swing: 'full', balls: more }], []);
    expect(1.96 * (later?.fit.carryM.se ?? 9)).toBeLessThan(1.25 * 1.8288);
  });

  it('finds the holes between neighbours and says what would fill them', () => {
    const gaps = carryGaps(entries);
    expect(gaps.map((g) => Math.round(g.missingM / 10))).toEqual(expect.arrayContaining([2, 5]));
    for (const gap of gaps) {
      expect(gap.toM - gap.fromM).toBeCloseTo(gap.missingM, 9);
      expect(gap.ways.length).toBeGreaterThan(0);
    }
  });
});
