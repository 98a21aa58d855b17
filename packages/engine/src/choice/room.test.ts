import { expect, test } from 'vitest';
import { roomOf } from './room.ts';
import { groundWith, solutionOf } from './testdata/madeUp.ts';

const from = { at: { eastM: 0, northM: 0 }, lie: 'tee' } as const;
const spot = { eastM: 0, northM: 100 };

test('where strokes rise evenly with distance, the arms end where the rise says', () => {
  const solution = solutionOf(groundWith([]), {
    strokesAtRest: (p) =>
      2 + 0.01 * Math.max(0, p.eastM) + 0.02 * Math.max(0, -p.eastM) + 0.005 * Math.abs(p.northM - 100),
  });
  const [tenth, quarter] = roomOf(solution, from, spot, 0, 3);
  expect(tenth?.rightM).toBeCloseTo(10, 1);
  expect(tenth?.leftM).toBeCloseTo(5, 1);
  expect(tenth?.longM).toBeCloseTo(20, 1);
  expect(tenth?.shortM).toBeCloseTo(20, 1);
  expect(quarter?.rightM).toBeCloseTo(25, 1);
  expect(quarter?.leftM).toBeCloseTo(12.5, 1);
});

test('an arm beyond 75 m is none, and a spot that already costs more has no room', () => {
  const solution = solutionOf(groundWith([]), { strokesAtRest: (p) => (p.eastM < -76 ? 9 : 2) });
  expect(roomOf(solution, from, spot, 0, 3).map((r) => r.leftM)).toEqual([null, null]);
  expect(roomOf(solution, from, spot, 0, 2.8)[0]).toMatchObject({
    more: 0.1,
    leftM: 0,
    rightM: 0,
    shortM: 0,
    longM: 0,
  });
});

test('the arms turn with the aim line', () => {
  const solution = solutionOf(groundWith([]), { strokesAtRest: (p) => (p.eastM > 8 ? 4 : 2) });
  expect(roomOf(solution, from, spot, Math.PI / 2, 3)[0]?.longM).toBeCloseTo(8, 1);
});
