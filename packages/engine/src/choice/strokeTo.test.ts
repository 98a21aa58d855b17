import { expect, test } from 'vitest';
import { aimedAt } from './strokeTo.ts';
import { groundWith, optionOf, part, solutionOf } from './testdata/madeUp.ts';
import { placeAt } from './view.ts';

const option = optionOf([part({ alongM: 150, acrossM: 4 })]);
const ground = groundWith([]);
const from = { at: ground.ball, lie: 'tee' } as const;
const place = { eastM: 20, northM: 120 };

test('the good strike is sent at the place, its sideways bias allowed for', () => {
  const stroke = aimedAt(solutionOf(ground, {}), from, option, place);
  expect((stroke?.bearingRad ?? NaN) + Math.atan2(4, 150)).toBeCloseTo(Math.atan2(20, 120), 9);
});

test('a drift that changes with the line is met', () => {
  const drifting = solutionOf(ground, {
    placesOf: (state, { bearingRad }) => {
      const good = part({ alongM: 150, acrossM: 30 * Math.cos(bearingRad) });
      const lands = placeAt(state.at, bearingRad, good.alongM, good.acrossM);
      return { lands, finishes: lands, pattern: { parts: [good], rest: true } };
    },
  });
  const stroke = aimedAt(drifting, from, option, place);
  const lands = stroke && drifting.placesOf(from, stroke)?.lands;
  expect(Math.atan2(lands?.eastM ?? NaN, lands?.northM ?? NaN)).toBeCloseTo(Math.atan2(20, 120), 5);
});

test('what is not played from the lie is not aimed', () => {
  expect(aimedAt(solutionOf(ground, {}), { ...from, lie: 'penalty' }, option, place)).toBeUndefined();
});
