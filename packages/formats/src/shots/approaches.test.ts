import type { Approach } from '@leeway/contract';
import { fitSession, randomFrom, type SwingBalls } from '@leeway/engine';
import { describe, expect, it } from 'vitest';
import { evidenceOf, withApproaches } from './approaches.ts';

const GREEN = { frontM: 120, backM: 144, leftM: 10, rightM: 14 };
const approach = (found: Approach['found'], club = '7-iron'): Approach => ({
  date: '2026-05-14',
  club,
  swing: 'full',
  toFlagM: 130,
  green: GREEN,
  found,
});

describe('an approach to a green', () => {
  it('is a ball at its mark, known because it came down in the green', () => {
    const told = evidenceOf(approach({ beyondFlagM: -10, rightOfFlagM: 12 }), false);
    if (!('ball' in told)) throw new Error('no ball');
    expect(told.ball.carryM).toBeCloseTo(Math.hypot(120, 12), 12);
    expect(told.ball.directionDeg).toBeCloseTo((Math.atan(0.1) * 180) / Math.PI, 12);
    expect(told.ball.onCourse).toBe(true);
    expect(told.ball.seenIn?.shortM).toBe(120);
    expect(told.ball.seenIn?.leftDeg).toBeCloseTo((-Math.atan(10 / 130) * 180) / Math.PI, 12);
  });

  it('is the side it missed on when there is no mark', () => {
    expect(evidenceOf(approach({ missed: 'short' }), false)).toMatchObject({ unseen: { side: 'short' } });
  });

  it('joins the balls of its club however that is spelled, and clubs that have none', () => {
    const swings: SwingBalls[] = [{ club: '7i', swing: 'full', balls: [{ carryM: 128 }] }];
    const joined = withApproaches(
      swings,
      [
        approach({ missed: 'left' }),
        approach({ beyondFlagM: 0, rightOfFlagM: 0 }),
        approach({ missed: 'short' }, 'PW'),
      ],
      [{ name: 'PW', loftDeg: 46 }],
    );
    expect(joined.map((s) => [s.club, s.balls.length, s.unseen?.length ?? 0])).toEqual([
      ['7i', 2, 1],
      ['PW', 0, 1],
    ]);
  });

  it('counts a mark for itself, not as one that greens show, where misses of its swing are told', () => {
    const mark = approach({ beyondFlagM: 0, rightOfFlagM: 0 });
    const seenIn = (of: readonly Approach[]) => withApproaches([], of, [])[0]?.balls[0]?.seenIn;
    expect(seenIn([mark])).toBeDefined();
    expect(seenIn([mark, approach({ missed: 'short' }, 'PW')])).toBeDefined();
    expect(seenIn([mark, approach({ missed: 'short' })])).toBeUndefined();
  });

  it('tells more with its misses: marks with twelve balls short beside them mean a shorter club than the marks’ mean', () => {
    const random = randomFrom(5);
    const marks = Array.from({ length: 12 }, () =>
      approach({ beyondFlagM: 4 * random.normal() - 3, rightOfFlagM: 3 * random.normal() }),
    );
    const short = Array.from({ length: 12 }, () => approach({ missed: 'short' }));
    const carry = (of: readonly Approach[]): number =>
      fitSession({ version: 1, name: 'Kim Aster', handicapIndex: 14 }, withApproaches([], of, []))[0]?.fit.carryM
        .value ?? NaN;
    expect(carry([...marks, ...short])).toBeLessThan(130 - 3 - 2);
  });
});
