import { RAD_PER_DEG, randomFrom } from '@leeway/engine';
import { expect, test } from 'vitest';
import { hit } from './virtualPlayer.ts';

const swing = {
  club: '7-iron',
  swing: 'full',
  carryM: 130,
  sdCarryM: 8,
  directionDeg: 2,
  sdDirectionDeg: 4,
  mishitShare: 0.2,
};
const BALLS = 20_000;
const random = randomFrom(11);
const balls = Array.from({ length: BALLS }, () => hit(swing, random));
const good = balls.filter((ball) => !ball.mishit);
const mean = (xs: readonly number[]): number => xs.reduce((sum, x) => sum + x, 0) / xs.length;
/** Four standard errors of a mean. */
const within = (sd: number, n: number): number => (4 * sd) / Math.sqrt(n);

test('good strikes have the stated carry, spread and direction', () => {
  const carries = good.map((ball) => ball.carryM);
  const directionsDeg = good.map((ball) => Math.asin(ball.sideM / ball.carryM) / RAD_PER_DEG);
  expect(Math.abs(mean(carries) - 130)).toBeLessThan(within(8, good.length));
  expect(Math.abs(mean(carries.map((c) => (c - 130) ** 2)) - 64)).toBeLessThan(within(64 * Math.SQRT2, good.length));
  expect(Math.abs(mean(directionsDeg) - 2)).toBeLessThan(within(4, good.length));
});

test('mishits come at their share and carry what a beta and a few thin ones make: 0.92 · 0.615 + 0.08 · 1.175 of the good strike', () => {
  const mishits = balls.filter((ball) => ball.mishit).map((ball) => ball.carryM / 130);
  expect(Math.abs(mishits.length / BALLS - 0.2)).toBeLessThan(within(0.4, BALLS));
  expect(Math.abs(mean(mishits) - (0.92 * (3.2 / 5.2) + 0.08 * 1.175))).toBeLessThan(within(0.25, mishits.length));
});

test('the same seed hits the same balls', () => {
  expect(hit(swing, randomFrom(3))).toEqual(hit(swing, randomFrom(3)));
});
