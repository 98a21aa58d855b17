import { expect, test } from 'vitest';
import { finishesTold, finishOn } from './finish.ts';
import { predictedScore } from './predicted.ts';

test('two coins of 3 or 4 make 6, 7, 7, 8', () => {
  const coin = [0, 0, 0, 0.5, 0.5];
  expect(predictedScore([coin, coin], 7)).toEqual({ mean: 7, lo80: 6, hi80: 8, chance: 0.5 });
  expect(predictedScore([coin, coin], 6).chance).toBe(0.125);
});

const from = { eastM: 0, northM: 0 };
const part = { weight: 1, alongM: 100, acrossM: 0, sdAlongM: 10, sdAcrossM: 5, corr: 0 };
const priced = {
  bearingRad: 0,
  lands: { eastM: 0, northM: 100 },
  finishes: { eastM: 0, northM: 110 },
  pattern: { parts: [part], rest: false },
} as unknown as Parameters<typeof finishOn>[1];

test('a finish is told from the spot, with the chance of one no farther: a standard deviation short is 16 in 100', () => {
  const finish = finishOn(from, priced, { eastM: 5.5, northM: 99 });
  expect(finish.beyondSpotM).toBeCloseTo(-11, 9);
  expect(finish.rightOfSpotM).toBeCloseTo(5.5, 9);
  expect(finish.alongChance).toBeCloseTo(0.158655, 5);
  expect(finish.acrossChance).toBeCloseTo(0.841345, 5);
  expect(finish.shortChance).toBeCloseTo(0.5, 9);
});

test('finishes over a season are counted beside what was predicted', () => {
  const at = (northM: number) => finishOn(from, priced, { eastM: 0, northM });
  expect(finishesTold([])).toBeUndefined();
  expect(finishesTold([at(90), at(100), at(112), at(112)])).toEqual({
    shots: 4,
    short: { share: 0.5, predicted: expect.closeTo(0.5, 9), meanM: expect.closeTo(15, 9) },
    in80: { along: 0.75, across: 1 },
  });
});
