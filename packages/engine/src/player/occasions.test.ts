import { describe, expect, it } from 'vitest';
import { randomFrom } from '../math/random.ts';
import type { Ball } from '../stats/ball.ts';
import { fitSwings, type SwingBalls, withBall } from './ability.ts';
import { apartOf } from './apart.ts';

const LEVEL = { handicapIndex: 10 };
const CARRIES_M = { '6i': 150, '8i': 130, PW: 110 };

/** Balls of three clubs, `each` at every age, gone so much of the carry. */
function bag(each: number, groups: readonly (Partial<Ball> & { readonly goes: number })[], seed = 7): SwingBalls[] {
  const random = randomFrom(seed);
  return Object.entries(CARRIES_M).map(([club, carry]) => ({
    club,
    swing: 'full',
    balls: groups.flatMap(({ goes, ...told }) =>
      Array.from({ length: each }, (): Ball => {
        const missed = random.next() < 0.12;
        return { ...told, carryM: goes * carry * (missed ? random.beta(3.2, 2) : 1 + 0.05 * random.normal()) };
      }),
    ),
  }));
}
const fitted = (swings: readonly SwingBalls[]) => fitSwings(LEVEL, swings, []);
const meanError = (swings: readonly SwingBalls[]): number =>
  fitted(swings).reduce((sum, s, i) => sum + s.fit.carryM.value / Object.values(CARRIES_M)[i]! - 1, 0) / 3;

describe('days of balls', () => {
  it('change nothing when no ball tells its day', () => {
    expect(fitted(bag(8, [{ goes: 1 }]))[0]?.occasions).toBeUndefined();
  });

  it('find a player who now carries 6 % less than a year ago, and take old balls less for what they say', () => {
    const groups = [
      { goes: 1.06, ageDays: 365 },
      { goes: 1, ageDays: 0 },
    ];
    const [first] = fitted(bag(15, groups));
    const old = first?.occasions?.occasions.find((o) => o.ageDays === 365);
    expect(Math.abs((old?.offset ?? 0) - 0.058)).toBeLessThan(2.5 * (old?.sd ?? 0));
    const undated = bag(15, groups).map((s) => ({ ...s, balls: s.balls.map(({ carryM }) => ({ carryM })) }));
    expect(meanError(undated)).toBeGreaterThan(0.018);
    expect(meanError(bag(15, groups))).toBeLessThan(0.65 * meanError(undated));
  });

  it('leave more doubt of a club the longer it was not hit', () => {
    const se = (ageDays: number): number => {
      const swings = bag(10, [
        { goes: 1, ageDays },
        { goes: 1, ageDays: 0 },
      ]);
      const [six, ...others] = swings;
      return fitted([{ ...six!, balls: six!.balls.filter((b) => b.ageDays === ageDays).slice(0, 10) }, ...others])[0]!
        .fit.carryM.se;
    };
    expect(se(1500)).toBeGreaterThan(1.1 * se(1));
  });
});

describe('balls of the range', () => {
  it('are taken as the own ball, with 5 % more doubt, until both are hit', () => {
    const [own, range] = [bag(10, [{ goes: 1 }]), bag(10, [{ goes: 1, rangeBall: true }])].map((b) => fitted(b)[0]!);
    expect(range!.fit.carryM.value / own!.fit.carryM.value).toBeCloseTo(1, 1);
    expect(range!.fit.carryM.se).toBeGreaterThan(1.4 * own!.fit.carryM.se);
    expect(range!.occasions?.rangeBall?.sd).toBeGreaterThan(0.03);
  });

  it('get their factor from the course, for clubs that were not hit there too', () => {
    const groups = [
      { goes: 0.92, rangeBall: true },
      { goes: 1, onCourse: true },
    ];
    const swings = bag(20, groups).map((s) =>
      s.club === 'PW' ? { ...s, balls: s.balls.filter((b) => b.rangeBall) } : s,
    );
    const fits = fitted(swings);
    const { mean, sd } = fits[0]!.occasions!.rangeBall!;
    expect(Math.abs(mean - Math.log(0.92))).toBeLessThan(2.5 * sd);
    expect(sd).toBeLessThan(0.025);
    expect(Math.abs(fits[2]!.fit.carryM.value - 110)).toBeLessThan(2.5 * fits[2]!.fit.carryM.se);
    const apart = apartOf(LEVEL, fits);
    expect(apart.map((a) => a.club)).toEqual(['6i', '8i']);
    for (const { courseM, rangeM } of apart) expect(courseM.mean).toBeGreaterThan(rangeM.mean + 5);
  });

  it('move one more ball as they moved the others', () => {
    const groups = [
      { goes: 0.92, rangeBall: true, ageDays: 0 },
      { goes: 1, onCourse: true, ageDays: 0 },
    ];
    const [fit] = fitted(bag(20, groups));
    const more = withBall(LEVEL, fit!, { carryM: 138, rangeBall: true, ageDays: 0 });
    expect(more.now.at(-1)!.carryM).toBeGreaterThan(145);
    expect(Math.abs(more.fit.carryM.value - fit!.fit.carryM.value)).toBeLessThan(1);
  });
});
