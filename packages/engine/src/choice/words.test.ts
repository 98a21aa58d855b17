import { expect, test } from 'vitest';
import { ballsIn100, clubWords, hundredBalls, lengthWords, spotWords, strokesWords } from './words.ts';

test.each([
  ['8I', '8-iron'],
  ['7 iron', '7-iron'],
  ['DR', 'driver'],
  ['3W', '3-wood'],
  ['4H', '4-hybrid'],
  ['PW', 'PW'],
  ['54', '54°'],
  ['Old Faithful', 'Old Faithful'],
])('%s is called %s', (club, words) => {
  expect(clubWords(club)).toBe(words);
});

test('chances of all places come to a hundred balls, each named one at least', () => {
  expect(hundredBalls([0.598, 0.356, 0.016, 0.016, 0.008, 0.006])).toEqual([60, 36, 1, 1, 1, 1]);
  expect(hundredBalls([1, 0, 0])).toEqual([100, 0, 0]);
  expect(hundredBalls([1 / 3, 1 / 3, 1 / 3]).reduce((a, b) => a + b, 0)).toBe(100);
  expect(hundredBalls([0.994, 0.002, 0.002, 0.002, 0.0001])).toEqual([97, 1, 1, 1, 0]);
});

test('chances are balls in 100, at least 1 when not nought', () => {
  expect([0, 0.0001, 0.002, 0.014, 0.016, 0.5, 1].map(ballsIn100)).toEqual([0, 0, 1, 1, 2, 50, 100]);
});

test('a spot is told from the flag, sides first', () => {
  expect(spotWords({ beyondFlagM: -2.7, rightOfFlagM: 8.2 }, 'yd')).toBe('9 yd right of the flag and 3 yd short of it');
  expect(spotWords({ beyondFlagM: 5, rightOfFlagM: -0.3 }, 'm')).toBe('5 m past the flag');
  expect(spotWords({ beyondFlagM: 0.1, rightOfFlagM: -6 }, 'm')).toBe('6 m left of the flag');
  expect(spotWords({ beyondFlagM: 0, rightOfFlagM: 0.2 }, 'm')).toBe('at the flag');
});

test('figures carry a true minus and their unit', () => {
  expect(strokesWords(-0.118)).toBe('\u22120.12');
  expect(strokesWords(-0.001)).toBe('0.00');
  expect(lengthWords(100, 'yd')).toBe('109 yd');
});
