import { planSchema } from '@leeway/contract';
import type { Turn } from '@leeway/desk';
import { distanceM, type PlanePoint } from '@leeway/engine';
import { beforeAll, describe, expect, test } from 'vitest';
import type { HoleAnswer } from '../asks.ts';
import { planDesk } from './planDesk.ts';
import { GROUND, INA, sending } from './testdata/tried.ts';

const turn: Turn = { passedOver: false, pause: () => Promise.resolve(), move: () => undefined };
const draw = () => Promise.reject(new Error('nothing is drawn here'));
const fresh = () => planDesk({ fetched: sending(), draw, drawIndex: draw });
const ask = { ground: GROUND, hole: '5', player: INA, units: 'yd' } as const;
const holeSchema = planSchema.shape.holes.element;

const beside = (p: PlanePoint, eastM: number, northM: number): PlanePoint => ({
  eastM: p.eastM + eastM,
  northM: p.northM + northM,
});

describe('an open hole', () => {
  const desk = fresh();
  let opened: HoleAnswer;
  beforeAll(async () => {
    opened = await desk.open(ask, turn);
  }, 60_000);

  test('is planned from the tee to the green, as plan --json gives it', () => {
    expect(holeSchema.parse(opened.plan)).toEqual(opened.plan);
    expect(opened.course).toBe('Tolvane Links');
    expect(opened.shots).toHaveLength(opened.plan.shots.length);
    const [spot, ball] = [opened.shots[0]?.spot, opened.shots[1]?.ball];
    expect(ball?.eastM).toBeCloseTo(spot?.eastM ?? NaN, 9);
    expect(ball?.northM).toBeCloseTo(spot?.northM ?? NaN, 9);
    expect(opened.green).toHaveLength(1);
  });

  test('the choice’s own spot costs nothing more, and another costs no less', async () => {
    for (const [shot, { spot }] of opened.shots.entries()) {
      const own = await desk.spot({ shot, spot }, turn);
      expect(own.costsMore).toBeCloseTo(0, 2);
      expect(distanceM(own.spot, spot)).toBeLessThan(1);
      const wide = await desk.spot({ shot, spot: beside(spot, 25, 25) }, turn);
      expect(wide.costsMore).toBeGreaterThan(own.costsMore - 0.005);
      expect(wide.expectedStrokes - wide.costsMore).toBeCloseTo(own.expectedStrokes - own.costsMore, 9);
    }
  });

  test('the balls behind a club and swing are found by any spelling, and a mishit is told', async () => {
    const { balls } = await desk.behind({ club: '7-iron', swing: 'full' }, turn);
    expect(balls).toEqual([
      { date: '2026-05-01', carryM: 141, sideM: 3, mishit: false },
      { carryM: 95, mishit: true },
    ]);
  });

  test('no such shot is said', async () => {
    await expect(desk.spot({ shot: 9, spot: opened.flag }, turn)).rejects.toThrow('no shot 10');
  });
});

test('nothing can be asked before a hole is open', async () => {
  await expect(fresh().behind({ club: 'driver', swing: 'full' }, turn)).rejects.toThrow('no hole is open');
});
