import { describe, expect, test } from 'vitest';
import { distanceM } from '../geometry/segment.ts';
import type { BallState, Candidate } from '../value/solution.ts';
import { solveHole } from '../value/solve.ts';
import { referenceHole, referencePlayer } from '../value/testdata/load.ts';
import {
  area,
  box as corners,
  hole,
  option,
  part as toyPart,
  player as toyPlayer,
  round,
} from '../value/testdata/toy.ts';
import { planFrom, planHole } from './planHole.ts';
import { nextBall } from './relief.ts';

describe('the plan of the reference par 4', () => {
  const player = referencePlayer('player_sym');
  const ground = referenceHole('t1_symmetric');
  const solution = solveHole(ground, player);
  const plan = planHole(solution, player);

  test('starts at the tee, each next shot where the spot of the one before lies, and ends on the green', () => {
    expect(plan.shots[0]?.choice.from).toEqual({ at: ground.ball, lie: 'tee' });
    plan.shots.forEach((shot, i) => {
      const next = plan.shots[i + 1];
      if (next === undefined) expect(solution.surfaceAt(shot.choice.answer.spot)).toBe('green');
      else {
        expect(next.choice.from.at).toEqual(shot.choice.answer.spot);
        expect(next.choice.from.lie).toBe(solution.surfaceAt(shot.choice.answer.spot));
      }
    });
    expect(plan.stuck).toBeUndefined();
  });

  test('expected strokes fall from shot to shot', () => {
    const strokes = plan.shots.map((shot) => shot.choice.answer.strokes);
    expect(strokes.length).toBeGreaterThan(1);
    strokes.slice(1).forEach((s, i) => expect(s).toBeLessThan(strokes[i] ?? 0));
  });

  test('stated patterns leave no doubt', () => {
    const [first] = plan.shots;
    expect(first?.doubtOf(first.choice.answer).se).toBe(0);
  });

  test('doubt of the second shot is in the first as well', () => {
    const doubt = {
      balls: 12,
      seAlongM: 0.3,
      seAcrossM: 0.2,
      seLogSdAlong: 0.02,
      seLogSdAcross: 0.02,
      seMishitShare: 0,
    };
    const second = plan.shots[1]?.choice.answer.priced.option;
    const unsure = { ...player, options: player.options.map((o) => (o === second ? { ...o, doubt } : o)) };
    const swap = (c: Candidate): Candidate => (c.option === second ? { ...c, option: { ...second, doubt } } : c);
    const best = (from: BallState, within?: number) => solution.best(from, within).map(swap);
    const shots = planHole({ ...solution, best }, unsure).shots;
    const se = shots.map((shot) => shot.doubtOf(shot.choice.answer).se);
    expect(se[1]).toBeGreaterThan(0);
    expect(se[0]).toBeCloseTo(se[1] ?? 0, 9);
    expect(shots[1]?.doubtOf(shots[1].choice.answer).balls).toBe(12);
  });

  test('an option whose pattern is hardly known gives way to one as cheap that is', () => {
    const doubt = { balls: 3, seAlongM: 12, seAcrossM: 8, seLogSdAlong: 0.3, seLogSdAcross: 0.3, seMishitShare: 0.05 };
    const from = plan.shots[1]?.choice.from;
    const known = plan.shots[1]?.choice.answer.priced.option;
    const unsure = { ...player, options: player.options.map((o) => (o === known ? { ...o, doubt } : o)) };
    const swap = (c: Candidate): Candidate => (c.option === known ? { ...c, option: { ...known, doubt } } : c);
    const best = (at: BallState, within?: number) => solution.best(at, within).map(swap);
    const [shot] = planFrom({ ...solution, best }, unsure, from ?? { at: ground.ball, lie: 'tee' }).shots;
    expect(shot?.choice.answer.priced.option).not.toBe(known);
    expect(shot?.choice.answer.priced.option.club + (shot?.choice.answer.priced.option.swing ?? '')).not.toBe(
      (known?.club ?? '') + (known?.swing ?? ''),
    );
  });

  test('a lie that no option is played from ends the plan there', () => {
    const stuck = planFrom(solution, player, { at: ground.ball, lie: 'penalty' });
    expect(stuck.shots).toHaveLength(0);
    expect(stuck.stuck?.lie).toBe('penalty');
  });
});

describe('the next ball', () => {
  const fairway = area('fairway', corners(-60, -20, 60, 190));
  const green = area('green', round(0, 160, 12));
  const pond = area('penalty', corners(-20, 40, 20, 60), { id: 'pond', red: true });
  const out = area('out', corners(-200, 200, 200, 400), { id: 'out' });
  const one = toyPlayer([option('one', [toyPart(1, 60, 6)]), option('short', [toyPart(1, 20, 3)])], 2);
  const solution = solveHole(hole([0, 160], [fairway, green, pond, out]), one);
  const from = { at: { eastM: 0, northM: 0 }, lie: 'tee' } as const;

  test('is dropped at the near edge of the water, no nearer the flag than where it went in', () => {
    const next = nextBall(solution, from, { eastM: 0, northM: 55 });
    expect(next?.dropped).toBe(true);
    expect(next?.state.lie).toBe('fairway');
    expect(next?.state.at.northM).toBeLessThan(40);
    expect(next?.state.at.northM).toBeGreaterThan(20);
  });

  test('out of bounds is played again from where it was', () => {
    expect(nextBall(solution, from, { eastM: 0, northM: 210 })).toMatchObject({ state: from, dropped: true });
  });

  test('plays as it lies on dry ground, and there is none on the green', () => {
    const dry = nextBall(solution, from, { eastM: 3, northM: 70 });
    expect(dry?.dropped).toBe(false);
    expect(dry?.state.lie).toBe('fairway');
    expect(distanceM(dry?.state.at ?? from.at, { eastM: 3, northM: 70 })).toBeLessThan(1e-9);
    expect(nextBall(solution, from, { eastM: 3, northM: 160 })).toBeUndefined();
  });
});
