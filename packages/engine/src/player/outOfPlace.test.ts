import { expect, test } from 'vitest';
import { randomFrom } from '../math/random.ts';
import { fitSwings, type SwingBalls } from './ability.ts';
import { outOfPlace } from './outOfPlace.ts';

const CARRIES_M = { Driver: 205, '5i': 158, '7i': 140, '8i': 130, '9i': 121, PW: 110 };

function swings(seed: number, moved: { readonly [club: string]: number } = {}): readonly SwingBalls[] {
  const random = randomFrom(seed);
  return Object.entries(CARRIES_M).map(([club, carryM]) => ({
    club,
    swing: 'full',
    balls: Array.from({ length: 10 }, () => {
      const mu = moved[club] ?? carryM;
      return { carryM: random.next() < 0.15 ? mu * random.beta(3.2, 2) : mu * (1 + 0.06 * random.normal()) };
    }),
  }));
}
const LEVEL = { handicapIndex: 14 };
const clubsOf = (s: readonly SwingBalls[]): readonly string[] =>
  outOfPlace(LEVEL, fitSwings(LEVEL, s, [])).map((o) => o.club);

test('a sound ladder has no club out of place', () => {
  for (const seed of [1, 2, 3, 4]) expect(clubsOf(swings(seed))).toEqual([]);
});

test('balls under another club’s name are told, and no other club', () => {
  expect(clubsOf(swings(5, { '8i': 175 }))).toEqual(['8i']);
  expect(clubsOf(swings(6, { PW: 158 }))).toEqual(['PW']);
});
