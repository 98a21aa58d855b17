import { describe, expect, it } from 'vitest';
import { playerModel } from '../player/model.ts';
import type { Option, PlayerModel } from '../player/option.ts';
import { LIES } from '../quantity/lies.ts';
import { solveHole } from './solve.ts';
import { playedSo } from './wayPlayed.ts';
import { randomHole } from './testdata/randomHole.ts';
import { area, box, hole, option, part, player as toyPlayer, round } from './testdata/toy.ts';

/** All of it by `npm run thorough`; a sample otherwise. */
const thorough = process.env['LEEWAY_THOROUGH'] !== undefined;
const HOLES = thorough ? 20 : 7;
const ROUNDS = 10_000;
const clubs = ['driver', '5-wood', '6-iron', '8-iron', 'pitching wedge', 'sand wedge'].map((name) => ({ name }));
const made = (seed: number): PlayerModel =>
  playerModel({ version: 1, name: 'made up', handicapIndex: (seed * 7) % 31, clubs });

/** The same patterns as places of rest: no run, which is solved for by classes. */
const atRest = (player: PlayerModel): PlayerModel => {
  const still = (o: Option): Option => ({
    ...o,
    byLie: Object.fromEntries(LIES.flatMap((l) => (o.byLie[l] ? [[l, { ...o.byLie[l], rest: true }]] : []))),
  });
  return { ...player, options: player.options.map(still) };
};

describe('random holes played ball by ball by the policy', () => {
  const gaps: number[] = [];
  it.each(Array.from({ length: HOLES }, (_, i) => i + 1))('hole %i: the mean score is the value', (seed) => {
    const ground = randomHole(seed);
    const played = playedSo(ground, atRest(made(seed)));
    const tee = { at: ground.ball, lie: 'tee' } as const;
    const value = played.strokes(tee);
    const { mean, se } = played.simulate(tee, ROUNDS, seed);
    gaps.push(mean - value);
    expect(played.status.converged).toBe(true);
    expect(Math.abs(mean - value)).toBeLessThan(3 * se + 0.006);
  });

  it('and nearly without bias', () => {
    expect(gaps).toHaveLength(HOLES);
    expect(Math.abs(gaps.reduce((sum, g) => sum + g, 0) / HOLES)).toBeLessThan(thorough ? 0.003 : 0.015);
  });

  const withRun: number[] = [];
  const runHoles = thorough ? Array.from({ length: 20 }, (_, i) => i + 1) : [5, 12];
  it.each(runHoles)('hole %i: with run', (seed) => {
    const ground = randomHole(seed);
    const played = playedSo(ground, made(seed));
    const tee = { at: ground.ball, lie: 'tee' } as const;
    const { mean, se } = played.simulate(tee, ROUNDS, seed + 1000);
    withRun.push(mean - played.strokes(tee));
    expect(Math.abs(mean - played.strokes(tee))).toBeLessThan(3 * se + 0.006);
  });

  // runs are solved for by classes and from about where a shot was played: they leave two thirds of a hundredth
  it('and nearly without bias, 0.007 on all twenty', () => {
    expect(withRun).toHaveLength(runHoles.length);
    expect(Math.abs(withRun.reduce((sum, g) => sum + g, 0) / runHoles.length)).toBeLessThan(thorough ? 0.01 : 0.03);
  });
});

describe('scores', () => {
  // one putt from the green, two strokes in three reach it, the rest go out of bounds: a geometric score
  const green = area('green', round(0, 100, 12));
  const out = area('out', box(50, -60, 100, 180));
  const wild = option('only', [part(2 / 3, 100, 1), part(1 / 3, 100, 1, 75)]);
  const ground = { ...hole([0, 100], [area('fairway', box(-80, -30, 80, 180)), green, out]), par: 3 };
  const solution = solveHole(ground, toyPlayer([wild], 1));
  const chances = solution.scores({ at: ground.ball, lie: 'tee' }, { option: wild, bearingRad: 0 });

  it('are those of the closed form', () => {
    // 2 with chance 2/3, then two more strokes each time
    [0, 0, 2 / 3, 0, 2 / 9, 0, 2 / 27].forEach((p, score) => expect(Math.abs(chances[score]! - p)).toBeLessThan(0.02));
    expect(chances.reduce((sum, p) => sum + p, 0)).toBeCloseTo(1, 9);
  });
});
