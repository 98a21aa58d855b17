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

describe('a flag moved by 8 m', () => {
  const flag = movedBy(-5, 6.2);
  const fresh = solveHole({ ...par3, flag, flagFrom: 'given' }, player);
  const study = new Study(par3, player);
  it.each([
    ['following', 0.012, 0.006],
    ['settled', 0.004, 0.002],
  ] as const)('%s: strokes within %d and regret within %d of a hole solved afresh', (grade, off, regret) => {
    study.moveFlag(flag, grade);
    expect(study.ground.flag).toEqual(flag);
    for (const from of asked) {
      const [ours] = study.solution.best(from);
      const [theirs] = fresh.best(from);
      expect(Math.abs(ours!.strokes - theirs!.strokes)).toBeLessThan(off);
      expect(fresh.strokesOf(from, ours!) - theirs!.strokes).toBeLessThan(regret);
    }
    if (grade === 'settled') expect(study.solution.status.converged).toBe(true);
  });
});

describe('a study', () => {
  it('does not answer for a flag that has gone, but still says where things lie', () => {
    const study = new Study(par3, player);
    const before = study.solution;
    const [best] = before.best(tee);
    study.moveFlag(movedBy(1, 1), 'following');
    const ask = [
      () => before.best(tee),
      () => before.bestOf(tee, best!.option),
      () => before.strokesOf(tee, best!),
      () => before.price(tee, best!),
      () => before.strokesAtRest(par3.flag, tee),
    ];
    for (const question of ask) expect(question).toThrow('flag or wind have been moved since this was solved');
    expect(before.surfaceAt(par3.flag)).toBe('green');
    expect(before.ground.flag).toEqual(par3.flag);
    expect(study.solution.best(tee).length).toBeGreaterThan(0);
  });

  it('comes back to what it was when the flag does', () => {
    const study = new Study(par3, player);
    const before = study.ask(tee)!.answer.strokes;
    study.moveFlag(movedBy(-5, 6.2), 'following');
    study.moveFlag(par3.flag, 'settled');
    expect(Math.abs(study.ask(tee)!.answer.strokes - before)).toBeLessThan(0.002);
  });
});
