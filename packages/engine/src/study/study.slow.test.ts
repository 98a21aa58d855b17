import { CALM, REFERENCE } from '../day/day.ts';
import { describe, expect, it } from 'vitest';
import type { PlanePoint } from '../quantity/points.ts';
import type { BallState } from '../value/solution.ts';
import { solveHole } from '../value/solve.ts';
import { referenceHole, referencePlayer, referenceSolution } from '../value/testdata/load.ts';
import { Study } from './study.ts';

const par3 = referenceHole('h1_par3_125');
const player = referencePlayer('player');
const { states } = referenceSolution('h1_par3_125');
const asked: BallState[] = states.map((s) => ({ at: { eastM: s.x, northM: s.y }, lie: s.lie }));
const movedBy = (eastM: number, northM: number): PlanePoint => ({
  eastM: par3.flag.eastM + eastM,
  northM: par3.flag.northM + northM,
});
const tee: BallState = { at: par3.ball, lie: 'tee' };

describe('a study', () => {
  it('shares nothing with another', () => {
    const [one, other] = [new Study(par3, player), new Study(par3, player)];
    const before = asked.map((from) => other.solution.best(from)[0]!.strokes);
    one.moveFlag(movedBy(-5, 6.2), 'settled');
    expect(asked.map((from) => other.solution.best(from)[0]!.strokes)).toEqual(before);
  });

  it('solves from scratch for a flag far from the green', () => {
    const study = new Study(par3, player);
    const flag = movedBy(0, -60);
    study.moveFlag(flag, 'following');
    const fresh = solveHole({ ...par3, flag, flagFrom: 'given' }, player);
    expect(study.solution.best(tee)[0]!.strokes).toBe(fresh.best(tee)[0]!.strokes);
  });

  it('follows a wind that turns by the stroke of the moment, and forgets it when it drops', () => {
    const windy = { ...REFERENCE, wind: { ...CALM, speedMps: 5, fromDeg: 70 } };
    const fresh = solveHole(par3, player, windy);
    const study = new Study(par3, player);
    const [calm] = study.solution.best(tee);
    study.turnWind(windy, 'following');
    expect(study.day).toEqual(windy);
    const [followed] = study.solution.best(tee);
    const [best] = fresh.best(tee);
    expect(Math.abs(followed!.strokes - best!.strokes)).toBeLessThan(0.03);
    expect(fresh.strokesOf(tee, followed!) - best!.strokes).toBeLessThan(0.01);
    study.turnWind(REFERENCE, 'following');
    expect(study.solution.best(tee)[0]).toEqual(calm);
  });
});
