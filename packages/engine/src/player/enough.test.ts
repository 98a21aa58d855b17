import { describe, expect, it } from 'vitest';
import { randomFrom } from '../math/random.ts';
import { fitSwings } from './ability.ts';
import { ballsUntil } from './ballsUntil.ts';
import { enough, type KnownSoFar, SESSION_CAP } from './enough.ts';
import { sessionOrder } from './sessionOrder.ts';
import { isTiring } from './tiring.ts';

const at = (mean: number, se: number): KnownSoFar['carryM'] => ({
  mean,
  se,
  lo50: mean,
  hi50: mean,
  lo80: mean,
  hi80: mean,
  lo95: mean,
  hi95: mean,
});
const known = (club: string, mean: number, se: number, swing = 'full'): KnownSoFar => ({
  club,
  swing,
  n: 10,
  carryM: at(mean, se),
  sdAlongM: { mean: 0.07 * mean, lo80: 0.06 * mean, hi80: 0.08 * mean },
  mishitShare: { mean: 0.15, lo80: 0.1, hi80: 0.2 },
});
const ASKED = { onCourse: { distanceSdPct: 6.5, mishitShare: 0.1 } };

describe('what is known of carries', () => {
  it('is enough when a carry is off by less than its choice of club feels, 19 times in 20', () => {
    const { carries, next } = enough([known('7-iron', 140, 8), known('PW', 110, 1)], ASKED);
    // .378 of the spread on the course: 7 % of swing and 6.5 % of the course make 9.55 %.
    expect(carries[0]!.neededM).toBeCloseTo(Math.sqrt(1 / 7) * Math.hypot(9.8, 9.1), 9);
    expect(carries[0]!.more).toBeGreaterThan(0);
    expect(carries[1]!.more).toBe(0);
    expect(next?.club).toBe('7-iron');
  });

  it('says plainly that more balls will not help', () => {
    expect(enough([known('7-iron', 140, 1), known('PW', 110, 1)], ASKED).next).toBeUndefined();
  });

  it('takes a wanted width in place of what the decision needs', () => {
    const [{ neededM, more } = { neededM: 0, more: 0 }] = enough([known('7-iron', 140, 1.5)], {
      ...ASKED,
      withinM: 2,
    }).carries;
    expect([neededM, more > 0]).toEqual([2, true]);
    expect(ballsUntil(2, 1.5, 0.01)).toBe(Math.ceil(((1.95996398 / 2) ** 2 - 1 / 2.25) / 0.01));
  });

  it('asks first for the club that saves most, not for the one known worst', () => {
    const { next } = enough([known('driver', 210, 9), known('7-iron', 140, 6)], ASKED);
    expect(next?.club).toBe('7-iron');
    expect(next?.afterM ?? 99).toBeLessThan(next?.nowM ?? 0);
  });

  it('promises what ten more balls then bring', () => {
    const random = randomFrom(4);
    const ball = (): { carryM: number } => ({
      carryM: random.next() < 0.15 ? 140 * random.beta(3.2, 2) : 140 * (1 + 0.07 * random.normal()),
    });
    let [promised, brought] = [0, 0];
    for (let player = 0; player < 5; player++) {
      const balls = Array.from({ length: 20 }, ball);
      const [before, after] = [10, 20].map(
        (n) => fitSwings({ handicapIndex: 14 }, [{ club: '7i', swing: 'full', balls: balls.slice(0, n) }], [])[0]!.fit,
      );
      const { next } = enough(
        [{ ...known('7i', 140, before!.carryM.se), sdAlongM: { mean: before!.sdCarryM.value, lo80: 0, hi80: 0 } }],
        { ...ASKED, withinM: 0.5 },
      );
      promised += next?.afterM ?? 0;
      brought += 1.96 * after!.carryM.se;
    }
    expect(promised / brought).toBeGreaterThan(0.8);
    expect(promised / brought).toBeLessThan(1.2);
  });
});

describe('a session', () => {
  const bag = [known('7-iron', 140, 6), known('9-iron', 118, 6), known('PW', 106, 6), known('driver', 210, 9)];

  it('is capped, lower for juniors and seniors, and ends when the carries are known', () => {
    for (const who of ['junior', 'adult', 'senior'] as const) {
      const calls = sessionOrder(bag, { ...ASKED, who, withinM: 1 }, randomFrom(1));
      expect(calls.reduce((sum, c) => sum + c.balls, 0)).toBe(SESSION_CAP[who]);
    }
    expect(SESSION_CAP.junior).toBeLessThan(SESSION_CAP.adult);
    expect(sessionOrder(bag, { ...ASKED, hit: 100 }, randomFrom(1))).toEqual([]);
    const few = sessionOrder(bag, ASKED, randomFrom(1));
    expect(few.reduce((sum, c) => sum + c.balls, 0)).toBeLessThan(100);
    expect(sessionOrder([known('PW', 106, 1)], ASKED, randomFrom(1))).toEqual([]);
  });

  it('goes in blocks from the shortest club, then by calls that change the club', () => {
    const calls = sessionOrder(bag, { ...ASKED, withinM: 1 }, randomFrom(2));
    const blocks = calls.filter((c) => c.balls > 1).map((c) => c.club);
    expect(blocks).toEqual(['PW', '9-iron', '7-iron', 'driver']);
    const single = calls.slice(blocks.length);
    expect(single.every((c) => c.balls === 1)).toBe(true);
    expect(single.filter((c, i) => c.club === single[i - 1]?.club).length).toBeLessThan(3);
    expect(sessionOrder(bag, { ...ASKED, withinM: 1 }, randomFrom(2))).toEqual(calls);
  });
});

describe('tiring', () => {
  const balls = (fall: number, seed: number, n = 60): { carryM: number; goodCarryM: number }[] => {
    const random = randomFrom(seed);
    return Array.from({ length: n }, (_, i) => {
      const goodCarryM = i % 2 === 0 ? 140 : 110;
      const good = 1 - (fall * i) / n + 0.06 * random.normal();
      return { goodCarryM, carryM: goodCarryM * (random.next() < 0.15 ? random.beta(3.2, 2) : good) };
    });
  };
  const found = (fall: number, n?: number): number =>
    Array.from({ length: 100 }, (_, i) => isTiring(balls(fall, i + 1, n))).filter(Boolean).length;

  it('is told of a player who loses a tenth, and of few who do not', () => {
    expect(found(0.1)).toBeGreaterThan(60);
    expect(found(0)).toBeLessThan(12);
    expect(found(0.3, 15)).toBe(0);
  });
});
