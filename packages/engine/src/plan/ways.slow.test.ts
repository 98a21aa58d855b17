import { describe, expect, it } from 'vitest';
import type { NormalPart, Option } from '../player/option.ts';
import { LIES } from '../quantity/lies.ts';
import { solveHole } from '../value/solve.ts';
import { playedSo } from '../value/wayPlayed.ts';
import { referenceHole, referencePlayer } from '../value/testdata/load.ts';
import { alwaysAtFlag, choicesOf, coachPlan } from './ways.ts';

const ground = referenceHole('h1_par3_125');
const whole = referencePlayer('player');
const kept = whole.options.filter((o) => o.swing.endsWith('full') || o.swing.startsWith('touch'));
const player = { ...whole, options: kept };
const tee = { at: ground.ball, lie: 'tee' } as const;
const solution = solveHole(ground, player);
const [best] = solution.best(tee);
const free = playedSo(ground, player);

describe('a way of playing', () => {
  it('without any bounds is playing best', () => {
    expect(Math.abs(free.strokes(tee) - best!.strokes)).toBeLessThan(0.002);
  });

  it('always at the flag costs at least what one shot at it does, and its holes average its value', () => {
    const flag = playedSo(ground, player, alwaysAtFlag(ground, player));
    const bearing = Math.atan2(ground.flag.eastM - tee.at.eastM, ground.flag.northM - tee.at.northM);
    const once = Math.min(...kept.map((option) => solution.strokesOf(tee, { option, bearingRad: bearing })));
    expect(flag.status.converged).toBe(true);
    expect(flag.strokes(tee)).toBeGreaterThan(once - 0.001);
    const { mean, se } = flag.simulate(tee, 20_000, 3);
    expect(Math.abs(mean - flag.strokes(tee))).toBeLessThan(3 * se + 0.006);
  });

  it('a coach’s shot once from the tee costs what it is priced at', () => {
    const spot = { eastM: 12, northM: 118 };
    const option = best!.option;
    const way = coachPlan(solution, [{ from: tee.at, option, spot }]);
    const [stroke] = way(tee)!;
    const coached = playedSo(ground, player, way);
    // other states within 40 m of the tee are bound by the plan too; hardly a ball comes there
    expect(Math.abs(coached.strokes(tee) - solution.strokesOf(tee, stroke!))).toBeLessThan(0.004);
    expect(coached.strokes(tee)).toBeGreaterThan(best!.strokes + 0.01);
  });

  it('last year’s choices never beat this year’s', () => {
    const aside = (p: NormalPart): NormalPart => ({ ...p, acrossM: p.acrossM + 0.06 * p.alongM });
    const moved = (o: Option): Option => ({
      ...o,
      byLie: Object.fromEntries(
        LIES.flatMap((l) => (o.byLie[l] ? [[l, { ...o.byLie[l], parts: o.byLie[l].parts.map(aside) }]] : [])),
      ),
    });
    const lastYear = solveHole(ground, { ...player, options: kept.map(moved) });
    const same = playedSo(ground, player, choicesOf(solution, player));
    const old = playedSo(ground, player, choicesOf(lastYear, player));
    expect(Math.abs(same.strokes(tee) - best!.strokes)).toBeLessThan(0.01);
    expect(old.strokes(tee)).toBeGreaterThan(best!.strokes + 0.02);
  });
});
