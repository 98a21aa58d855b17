import { describe, expect, it } from 'vitest';
import { YARD_M } from '../quantity/units.ts';
import { carryBelief, claimedCarry } from './ladder.ts';
import { carryRatio, handicapIndexOf, onCoursePrior, sevenIronPriorM, shortGamePrior, spreadPrior } from './prior.ts';

/** Index: driver and 7-iron direction (degrees), distance spread of a mid-iron in swing and on the course (per cent), mishits in both. */
const BY_INDEX = [
  [0, 4.8, 3.2, 4.8, 6.8, 0.05, 0.085],
  [5, 5.4, 3.6, 5.5, 7.7, 0.09, 0.15],
  [10, 6.0, 3.9, 6.3, 8.6, 0.13, 0.22],
  [15, 6.6, 4.3, 7.0, 9.6, 0.17, 0.29],
  [20, 7.2, 4.7, 7.7, 10.5, 0.21, 0.36],
  [25, 7.8, 5.1, 8.4, 11.4, 0.26, 0.43],
  [30, 8.4, 5.5, 9.2, 12.3, 0.3, 0.5],
] as const;

describe('the prior by index', () => {
  it.each(BY_INDEX)(
    'meets its table at %d',
    (handicapIndex, driver, seven, swing, course, mishitSwing, mishitCourse) => {
      const level = { handicapIndex };
      const iron = spreadPrior(level, '7-iron', 'full');
      const added = onCoursePrior(level);
      const close = (x: number, y: number, within: number): void => expect(Math.abs(x - y)).toBeLessThanOrEqual(within);
      close(spreadPrior(level, 'Driver', 'full').directionSdDeg, driver, 0.06);
      close(iron.directionSdDeg, seven, 0.06);
      close(100 * iron.sdCarryShare, swing, 0.06);
      close(Math.hypot(100 * iron.sdCarryShare, added.distanceSdPct), course, 0.12);
      close(iron.mishitShare, mishitSwing, 0.006);
      close(iron.mishitShare + added.mishitShare, mishitCourse, 0.006);
    },
  );

  it('meets the two published spreads of drives: 5.5 degrees at index 6, 7.9 at 26', () => {
    expect(spreadPrior({ handicapIndex: 6 }, 'driver', 'full').directionSdDeg).toBeCloseTo(5.5, 1);
    expect(spreadPrior({ handicapIndex: 26 }, 'driver', 'full').directionSdDeg).toBeCloseTo(7.9, 1);
  });

  it('is 15 when no index is known, and holds at the ends', () => {
    expect(handicapIndexOf({})).toBe(15);
    expect(spreadPrior({}, '7i', 'full')).toEqual(spreadPrior({ handicapIndex: 15 }, '7i', 'full'));
    expect(shortGamePrior({ handicapIndex: 54 })).toEqual(shortGamePrior({ handicapIndex: 30 }));
    for (const club of ['driver', '7i', 'SW', 'chipper']) {
      const { sdCarryShare, directionSdDeg, mishitShare } = spreadPrior({ handicapIndex: -9 }, club, 'half');
      expect(Math.min(sdCarryShare, directionSdDeg, mishitShare)).toBeGreaterThan(0);
    }
  });
});

describe('carries expected of a level', () => {
  it('fall with the index, and differ between men and women', () => {
    expect(sevenIronPriorM({ handicapIndex: 10 }) / YARD_M).toBeCloseTo(149 - 9.2, 9);
    expect(sevenIronPriorM({ handicapIndex: 10, sex: 'woman' }) / YARD_M).toBeCloseTo(126.5 - 12.7, 9);
  });

  it('have the tabled ratios to the 7-iron, and follow a loft', () => {
    const seven = 140 * YARD_M;
    const ratio = (club: string, loftDeg?: number): number => carryRatio(club, 'full', seven, loftDeg);
    const table = {
      driver: 1.538,
      '3-wood': 1.382,
      '5i': 1.1144,
      '6i': 1.058,
      '7i': 1,
      '8i': 0.93,
      '9i': 0.86,
      PW: 0.79,
      '60': 0.52,
    };
    for (const [club, expected] of Object.entries(table)) expect(ratio(club)).toBeCloseTo(expected, 9);
    expect(ratio('PW', 44)).toBeCloseTo(0.825, 9);
    expect((ratio('7i', 30) - ratio('7i')) / 4).toBeGreaterThan(0.01);
    expect(carryRatio('7i', 'three-quarter', seven)).toBeCloseTo(0.88, 9);
  });

  it('are the level\u2019s without other knowledge, and lean on what other clubs do', () => {
    const level = { handicapIndex: 12 };
    const alone = carryBelief(level, { club: '8i', swing: 'full' }, []);
    expect(alone.carryM).toBeCloseTo(0.93 * sevenIronPriorM(level), 6);
    expect(alone.sdLog).toBeCloseTo(Math.hypot(0.08, 0.04), 9);
    const longer = [
      claimedCarry('7i', 'full', 1.1 * sevenIronPriorM(level)),
      claimedCarry('9i', 'full', 1.1 * 0.86 * sevenIronPriorM(level)),
    ];
    const among = carryBelief(level, { club: '8i', swing: 'full' }, longer);
    expect(among.carryM / alone.carryM).toBeGreaterThan(1.05);
    expect(among.carryM / alone.carryM).toBeLessThan(1.1);
    expect(among.sdLog).toBeLessThan(alone.sdLog);
    const own = carryBelief(level, { club: '8i', swing: 'full' }, [
      ...longer,
      { club: '8 iron', swing: 'full', carryM: 111, seLog: 0.001 },
    ]);
    expect(own.carryM).toBeCloseTo(111, 0);
  });
});
