import { readFileSync } from 'node:fs';
import {
  playerModel,
  solveHole,
  Study,
  type BallState,
  type HoleGround,
  type HoleSolution,
  type Lie,
} from '@leeway/engine';
import { readPlayer } from '@leeway/contract';
import { readGround } from '@leeway/formats';
import { describe, expect, it } from 'vitest';
import { DEMO } from './demoPath.ts';

const course = readGround(readFileSync(DEMO.ground, 'utf8'), 'tolvane.geojson').value!;
const player = playerModel(readPlayer(readFileSync(DEMO.player, 'utf8'), 'odile-varga.json').value!);

/** A place on the green as far from the flag. */
function onGreen(solution: HoleSolution, byM: number): HoleGround['flag'] {
  const { ground } = solution;
  for (let turn = 0.4; turn < 2 * Math.PI; turn += 0.3) {
    const at = {
      eastM: ground.flag.eastM + byM * Math.sin(turn),
      northM: ground.flag.northM + byM * Math.cos(turn),
    };
    if (solution.surfaceAt(at) === 'green') return at;
  }
  throw new Error(`the green of the ${ground.hole} does not reach ${byM} m from its flag`);
}

const LIES: readonly string[] = ['fairway', 'rough', 'bunker', 'recovery'] satisfies Lie[];

/** The tee, and places round the green and along the line that can be played from. */
function asked(solution: HoleSolution): BallState[] {
  const { ball, flag } = solution.ground;
  const lengthM = Math.hypot(ball.eastM - flag.eastM, ball.northM - flag.northM);
  const back = Math.atan2(ball.eastM - flag.eastM, ball.northM - flag.northM);
  const places = [
    ...[0, 1.5, 3, 4.5].map((turn) => [24, turn] as const),
    ...[40, 60, 90, 120, 160, 200, 250, 300].map((d, i) => [d, i % 2 === 0 ? 0.1 : -0.15] as const),
  ].filter(([d]) => d < lengthM - 10);
  const states = places.map(([d, turn]) => {
    const at = { eastM: flag.eastM + d * Math.sin(back + turn), northM: flag.northM + d * Math.cos(back + turn) };
    return { at, lie: solution.surfaceAt(at) };
  });
  return [{ at: ball, lie: 'tee' }, ...states.filter((s): s is BallState => LIES.includes(s.lie))];
}

/** All of it by `npm run thorough`; a sample otherwise. */
const thorough = process.env['LEEWAY_THOROUGH'] !== undefined;

// little water, water by the green, much water
describe.each(thorough ? ['4', '7', '9'] : ['9'])('hole %s', (name) => {
  const ground = course.holes.find((h) => h.hole === name)!;
  // after a long move both solutions err by up to half a hundredth close to the flag, where their cells and meshes lie differently
  it.each([
    [3, 0.004],
    [8, 0.004],
    [15, 0.012],
  ])('a flag moved by %d m costs what the hole solved afresh says', (byM, settledOff) => {
    const study = new Study(ground, player);
    const flag = onGreen(study.solution, byM);
    const fresh = solveHole({ ...ground, flag, flagFrom: 'given' }, player);
    const states = asked(fresh);
    expect(states.length).toBeGreaterThan(5);
    for (const [grade, off, regret] of [
      ['following', 0.012, 0.006],
      ['settled', settledOff, 0.002],
    ] as const) {
      study.moveFlag(flag, grade);
      const errors = states.map((from) => {
        const [ours] = study.solution.best(from, 0.05);
        const [theirs] = fresh.best(from, 0.05);
        const offBy = Math.abs(ours!.strokes - theirs!.strokes);
        const loses = fresh.strokesOf(from, ours!) - theirs!.strokes;
        return { grade, from, offBy, loses, allowed: grade === 'settled' && from.lie === 'tee' ? 0.004 : off };
      });
      expect(errors.filter((e) => e.offBy >= e.allowed || e.loses >= regret)).toEqual([]);
    }
    expect(study.solution.status.converged).toBe(true);
  });

  it('a flag dragged in short moves is followed from the ball that is shown', () => {
    const fresh = new Study(ground, player);
    const flag = onGreen(fresh.solution, 8);
    const by = { eastM: (flag.eastM - ground.flag.eastM) / 7, northM: (flag.northM - ground.flag.northM) / 7 };
    fresh.moveFlag(flag);
    for (const from of asked(fresh.solution).slice(0, thorough ? 6 : 3)) {
      const study = new Study(ground, player);
      for (let k = 1; k <= 7; k++) {
        const at = { eastM: ground.flag.eastM + k * by.eastM, northM: ground.flag.northM + k * by.northM };
        study.moveFlag(at, 'following', from.at);
      }
      const [ours] = study.solution.best(from, 0.05);
      const [best] = fresh.solution.best(from, 0.05);
      expect(Math.abs(ours!.strokes - best!.strokes)).toBeLessThan(0.012);
      expect(fresh.solution.strokesOf(from, ours!) - best!.strokes).toBeLessThan(0.006);
    }
  });
});
