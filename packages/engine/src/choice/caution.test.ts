import { expect, test } from 'vitest';
import type { Caution } from '../ground/hole.ts';
import { reachOf } from './caution.ts';
import { part } from './testdata/madeUp.ts';

const from = { at: { eastM: 0, northM: 0 }, lie: 'tee' } as const;
const across = (northM: number): Caution => ({
  id: `road at ${northM}`,
  kind: 'road',
  points: [
    { eastM: -200, northM },
    { eastM: 200, northM },
  ],
  closed: false,
});

test('of one normal, 95 balls in 100 lie within the root of the chi-square quantile, 2.448 standard deviations', () => {
  const reach = reachOf({ parts: [part({ sdAlongM: 10, sdAcrossM: 5 })], rest: true }, 0, from, [
    across(100 + 10 * 2.4),
    across(100 + 10 * 2.5),
    across(100 - 10 * 2.4),
    across(100 - 10 * 2.5),
  ]);
  expect(reach(0).map((c) => c.id)).toEqual(['road at 124', 'road at 76']);
});

test('mishits that are common enough reach a path that an ellipse of the good strikes would not', () => {
  const good = part({ weight: 0.8 });
  const mishit = part({ weight: 0.2, alongM: 60, sdAlongM: 10, sdAcrossM: 10 });
  const path = [across(50)];
  expect(reachOf({ parts: [good], rest: true }, 0, from, path)(0)).toHaveLength(0);
  expect(reachOf({ parts: [good, mishit], rest: true }, 0, from, path)(0)).toHaveLength(1);
});

test('a closed outline that holds the middle of the pattern is reached though its edge is far off', () => {
  const wide: Caution = {
    id: 'other green',
    kind: 'green',
    points: [
      { eastM: -90, northM: 20 },
      { eastM: 90, northM: 20 },
      { eastM: 90, northM: 200 },
      { eastM: -90, northM: 200 },
    ],
    closed: true,
  };
  const reach = reachOf({ parts: [part()], rest: true }, 0, from, [wide]);
  expect(reach(0)).toHaveLength(1);
  expect(reach(Math.PI)).toHaveLength(0);
});
