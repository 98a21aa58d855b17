import { expect, test } from 'vitest';
import { middleOfFairway, plainLine } from './plainLine.ts';
import type { BallState, Stroke } from '../value/solution.ts';
import { box, groundWith, optionOf, part, pricedWith, solutionOf } from './testdata/madeUp.ts';

const tee = { at: { eastM: 0, northM: 0 }, lie: 'tee' } as const;
const far = groundWith([box('own', 'fairway', [-10, 60, 30, 300]), box('other', 'fairway', [-90, 60, -50, 300])], {
  flag: { eastM: 0, northM: 400 },
  line: [tee.at, { eastM: 0, northM: 400 }],
});
const surfaceAt = (p: { eastM: number; northM: number }) => {
  const on = p.northM >= 60 && p.northM <= 300;
  if (on && p.eastM >= -10 && p.eastM <= 30) return 'fairway';
  return on && p.eastM >= -90 && p.eastM <= -50 ? 'fairway' : 'rough';
};
const short = optionOf([part({ alongM: 70 })], { club: '9-iron' });
const long = optionOf([part({ alongM: 95 })], { club: '8-iron' });
/** Cheaper the shorter, so that only being barred keeps the short one out. */
const pricing = {
  surfaceAt,
  strokesOf: (_: unknown, s: { option: typeof short }) => s.option.byLie.tee?.parts[0]?.alongM ?? 0,
  price: (_: unknown, s: { option: typeof short; bearingRad: number }) => pricedWith(s, [[-1, 1, 3]]),
};

test('the middle of the fairway is this hole’s, at the option’s own distance', () => {
  const middle = middleOfFairway(solutionOf(far, { surfaceAt }), tee.at, 200);
  expect(middle?.eastM).toBeCloseTo(10, 0);
  expect(Math.hypot(middle?.eastM ?? 0, middle?.northM ?? 0)).toBeCloseTo(200, 6);
  expect(middleOfFairway(solutionOf(far, { surfaceAt }), tee.at, 40)).toBeUndefined();
});

test('out of reach the plain line is the fairway, and the flag is not priced', () => {
  expect(plainLine(solutionOf(far, pricing), tee, [short, long], 95)?.kind).toBe('fairway');
});

test('a lay-up on the line of the flag is no attack on it', () => {
  const near = groundWith([]);
  expect(plainLine(solutionOf(near, pricing), tee, [short, long], 95)?.shown.priced.option.club).toBe('8-iron');
});

test('with no better club, the one nearest the flag is played at it', () => {
  const wedge = optionOf([part({ alongM: 88 })], { club: 'wedge' });
  const wood = optionOf([part({ alongM: 115 })], { club: 'wood' });
  const found = plainLine(solutionOf(groundWith([]), pricing), tee, [wedge, wood], 88);
  expect(found?.shown.priced.option.club).toBe('wedge');
});

test('fairway that only a much shorter club finds is not the plain line', () => {
  expect(plainLine(solutionOf(far, pricing), tee, [short], 70)?.kind).toBe('fairway');
  expect(plainLine(solutionOf(far, pricing), tee, [short], 95)).toBeUndefined();
});

test('the wind’s drift is allowed for, the player’s own bias is not', () => {
  const biased = optionOf([part({ alongM: 95, acrossM: 3 })]);
  const blown = solutionOf(groundWith([]), pricing);
  const drifted = part({ alongM: 95, acrossM: 11 });
  const windy = {
    ...blown,
    placesOf: (from: BallState, stroke: Stroke) => ({
      ...blown.placesOf(from, stroke)!,
      pattern: { parts: [drifted], rest: true },
    }),
  };
  const pointed = (solution: typeof blown) => plainLine(solution, tee, [biased], 95)?.shown.priced.bearingRad;
  expect(pointed(blown)).toBe(0);
  expect(pointed(windy)).toBeCloseTo(Math.atan2(3, 95) - Math.atan2(11, 95), 9);
});
