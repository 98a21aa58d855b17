import { expect, it } from 'vitest';
import { playerModel } from '../player/model.ts';
import { greenSlopeOf } from './greenSlope.ts';

const player = playerModel({ version: 1, name: 'made up', handicapIndex: 10 });
const planeOf = (up: number) => greenSlopeOf((_, v) => up * v, player)!;

it('level ground is the flat model exactly', () => {
  for (const [u, v] of [
    [3, 0],
    [0, -6],
    [-4, 9],
  ] as const)
    expect(planeOf(0).more(u, v, 0, 0)).toBe(0);
});

it('on a plane that rises, the ball below the hole costs no more than the one above it, as far off', () => {
  const plane = planeOf(0.025);
  for (const d of [1, 3, 6, 12]) expect(plane.more(0, -d, 0, 0)).toBeLessThan(plane.more(0, d, 0, 0));
  // level with it on either side is alike
  expect(plane.more(5, 0, 0, 0)).toBeCloseTo(plane.more(-5, 0, 0, 0), 12);
});

it('a ball on a false front runs off it, and one on a gentle slope stays', () => {
  // the front third falls away at one in eight
  const front = greenSlopeOf((_, v) => (v < 0 ? v / 8 : 0), player)!;
  const onGreen = (_: number, v: number): boolean => v > -6;
  expect(front.rest(0, 2, onGreen)).toEqual([0, 2]);
  const [u, v] = front.rest(1, -3, onGreen);
  expect(u).toBeCloseTo(1, 9);
  expect(v).toBeLessThanOrEqual(-6);
  expect(planeOf(0.03).rest(0, -3, onGreen)).toEqual([0, -3]);
});

it('there is none without heights, and none for putts stated as a table', () => {
  expect(greenSlopeOf(undefined, player)).toBeUndefined();
  const stated = { name: 'stated', options: [], learnable: [], putting: [{ distanceM: 1, strokes: 1.3 }] };
  expect(greenSlopeOf(() => 0, stated)).toBeUndefined();
});
