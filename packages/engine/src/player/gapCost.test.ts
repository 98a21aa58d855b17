import { describe, expect, it } from 'vitest';
import { carryGaps, type CarryEntry } from './carryTable.ts';
import { gapCosts, leftBy } from './gapCost.ts';
import { ladderFaults } from './ladderCheck.ts';

const entry = (club: string, mean: number, swing = 'full', se = 1, n = 20): CarryEntry => ({
  club,
  swing,
  n,
  carryM: { mean, se, lo50: mean, hi50: mean, lo80: mean, hi80: mean, lo95: mean, hi95: mean },
  sideM: { mean: 0, se: 0 },
  sdAlongM: { mean: 0.07 * mean, lo80: 0, hi80: 0 },
  directionSdDeg: { mean: 4, lo80: 0, hi80: 0 },
  mishitShare: { mean: 0.15, lo80: 0, hi80: 0 },
  allBallsMeanM: 0.95 * mean,
  eightInTenCarryM: 0.9 * mean,
  ballsNeeded: null,
});
const LADDER = [
  entry('driver', 200),
  entry('5-iron', 150),
  entry('8-iron', 125),
  entry('9-iron', 114),
  entry('PW', 104),
  entry('54°', 78),
];
const COURSE = { distanceSdPct: 6.5, mishitShare: 0.1 };
const costs = (left: readonly { toFlagM: number; times: number }[], ladder = LADDER) =>
  gapCosts(carryGaps(ladder), ladder, left, COURSE);

describe('what a gap costs', () => {
  it('is nothing where no hole asks for it, and grows with how often one does', () => {
    expect(costs([]).map((c) => c.strokesARound)).toEqual([0, 0, 0]);
    const [once] = costs([{ toFlagM: 93, times: 1 }]);
    const [twice] = costs([{ toFlagM: 93, times: 2 }]);
    expect([once?.fromM, once?.toM]).toEqual([78, 104]);
    expect(once?.strokesARound ?? 0).toBeGreaterThan(0.1);
    expect(twice?.strokesARound ?? 0).toBeCloseTo(2 * (once?.strokesARound ?? 0), 12);
  });

  it('puts the dearest first, not the widest', () => {
    const [first] = costs([
      { toFlagM: 93, times: 3 },
      { toFlagM: 176, times: 0.5 },
    ]);
    expect(first?.toM).toBe(104);
    expect(carryGaps(LADDER).toSorted((a, b) => b.missingM - a.missingM)[0]?.toM).toBe(200);
  });

  it('offers ways inside the gap, a soft longer club among them, and no forced one that does not reach', () => {
    const [gap] = costs([{ toFlagM: 94, times: 1 }]);
    for (const w of gap?.ways ?? []) {
      expect(w.carryM).toBeGreaterThan(78);
      expect(w.carryM).toBeLessThan(104);
    }
    const kinds = gap?.ways.map((w) => w.kind) ?? [];
    expect(kinds[0]).toBe('new club');
    expect(kinds).toContain('soft');
    const of = (kind: string): number => gap?.ways.find((w) => w.kind === kind)?.strokesARound ?? 0;
    expect(of('soft')).toBeGreaterThan(of('forced'));
    expect(of('soft')).toBeLessThan(of('new club'));
  });

  it('reads what holes leave: short ones whole, others after the drive', () => {
    const left = leftBy([140, 330], LADDER);
    expect(left[0]).toEqual({ toFlagM: 140, times: 1 });
    expect(left.slice(1).reduce((sum, l) => sum + l.times, 0)).toBeCloseTo(1, 12);
    for (const { toFlagM } of left.slice(1)) expect(Math.abs(toFlagM - 130)).toBeLessThan(30);
    expect(leftBy([300], [])).toEqual([]);
  });
});

describe('a ladder against its lofts', () => {
  it('stands when every club carries less than the stronger one', () => {
    expect(ladderFaults(LADDER, [])).toEqual([]);
  });

  it('tells clubs the wrong way round, by the lofts of the bag, and two of one carry', () => {
    const swapped = [entry('7-iron', 128), entry('8-iron', 134), entry('9-iron', 115)];
    expect(ladderFaults(swapped, [])).toMatchObject([{ kind: 'order', stronger: '7-iron', weaker: '8-iron' }]);
    expect(ladderFaults(swapped, [{ name: '8i', loftDeg: 30 }])).toEqual([]);
    expect(ladderFaults([entry('7-iron', 131), entry('8-iron', 130)], [])).toMatchObject([{ kind: 'same carry' }]);
    expect(ladderFaults([entry('7-iron', 128, 'full', 8), entry('8-iron', 131, 'full', 8)], [])).toEqual([]);
  });
});
