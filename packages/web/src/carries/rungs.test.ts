import type { LadderData } from '@leeway/contract';
import { expect, test } from 'vitest';
import { rungsOf } from './rungs.ts';

const ball = (club: string, carryM: number, swing = 'full') => ({ id: 'b', session: 's', club, swing, carryM });
const entry = (club: string, mean: number, n: number) => ({
  club,
  swing: 'full',
  n,
  carryM: { mean, se: 2, lo50: 0, hi50: 0, lo80: 0, hi80: 0, lo95: 0, hi95: 0 },
  sideM: { mean: 0, se: 1 },
  sdAlongM: { mean: 5, lo80: 4, hi80: 6 },
  directionSdDeg: { mean: 3, lo80: 2, hi80: 4 },
  mishitShare: { mean: 0.1, lo80: 0.05, hi80: 0.2 },
  allBallsMeanM: mean - 5,
  eightInTenCarryM: mean - 8,
  ballsNeeded: { withinM: 2, balls: 14 },
});

test('a ladder has fitted, believed, unfitted and claimed carries, the longest first', () => {
  const ladder: LadderData = {
    fitted: {
      id: 'f',
      seq: 1,
      upToDate: false,
      ladder: { entries: [entry('7-iron', 140, 30), entry('6-iron', 150, 0)], gaps: [] },
    },
    balls: [ball('7-iron', 139), ball('PW', 98), ball('pw', 102), ball('PW', 108)],
  };
  const clubs = [
    { name: 'driver', claimedCarryM: 210 },
    { name: '7-Iron', claimedCarryM: 150 },
  ];
  const rungs = rungsOf(ladder, clubs);
  expect(rungs.map(({ club, from, carryM, balls }) => [club, from, carryM, balls])).toEqual([
    ['driver', 'claim', 210, 0],
    ['6-iron', 'belief', 150, 0],
    ['7-iron', 'fit', 140, 30],
    ['PW', 'balls', 102, 3],
  ]);
  expect(rungs[2]?.claimedM).toBe(150);
  expect(rungs[2]?.needed).toEqual({ withinM: 2, balls: 14 });
});

test('nothing known is no ladder', () => {
  expect(rungsOf({ fitted: null, balls: [] }, undefined)).toEqual([]);
});
