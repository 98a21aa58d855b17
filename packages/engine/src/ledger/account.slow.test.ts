import { describe, expect, test } from 'vitest';
import { bearingRad } from '../choice/view.ts';
import { randomFrom } from '../math/random.ts';
import type { PlayerModel } from '../player/option.ts';
import type { BallState, Stroke } from '../value/solution.ts';
import { solveHole } from '../value/solve.ts';
import { referenceHole, referencePlayer } from '../value/testdata/load.ts';
import { accountHole, type ShotAccount } from './account.ts';
import { baselineOf } from './baseline.ts';
import { gainedOnHole } from './gained.ts';
import { StrokesLeft } from './left.ts';
import { virtualHole } from './virtualHole.ts';

const reference = referencePlayer('player');
const player: PlayerModel = {
  ...reference,
  options: reference.options.map((o) => ({ ...o, swing: o.full ? 'full' : 'part' })),
};
const ground = referenceHole('h1_par3_125');
const solution = solveHole(ground, player);
const left = new StrokesLeft(solution, player);
const tee: BallState = { at: ground.ball, lie: 'tee' };

const best = (from: BallState): Stroke => left.bests(from)!.best;
const atFlag = (from: BallState): Stroke => ({
  option: best(from).option,
  bearingRad: bearingRad(from.at, ground.flag),
});

const ROUNDS = 60;
const sum = (parts: object | undefined): number =>
  Object.values(parts ?? {}).reduce<number>((s, x) => s + Number(x), 0);

describe.each([
  ['the best player', best],
  ['one who fires at the flag from the tee', (from: BallState) => (from.lie === 'tee' ? atFlag(from) : best(from))],
])('%s', (name, choose) => {
  const random = randomFrom(11);
  const rounds = Array.from({ length: ROUNDS }, () => virtualHole(left, choose, random));
  const accounts = rounds.map((shots) => accountHole(left, shots)!);
  const first = accounts.map(({ shots }) => shots[0]!);

  test('the losses are the score less what was expected', () => {
    for (const { shots, score, expected } of accounts) {
      expect(shots.reduce((s, a) => s + a.loss, 0)).toBeCloseTo(score - expected, 9);
    }
  });

  test('spot, number, swing or risk, and the parts of the execution, add up to the loss', () => {
    const long = accounts.flatMap(({ shots }) => shots.filter((s) => s.choice !== undefined));
    expect(long.length).toBeGreaterThanOrEqual(ROUNDS);
    for (const { choice, execution, loss } of long) expect(sum(choice) + sum(execution)).toBeCloseTo(loss, 9);
  });

  test('strokes gained and the baseline add up to the score', () => {
    const baseline = baselineOf(10);
    rounds.forEach((shots, i) => {
      const gained = gainedOnHole(shots, ground.flag, baseline);
      expect(gained.baseline - gained.total).toBeCloseTo(accounts[i]!.score, 9);
    });
  });

  test('its choice from the tee costs what the stroke is priced at, and its execution nothing on average', () => {
    const truth = solution.price(tee, choose(tee)).strokes - left.bests(tee)!.best.strokes;
    for (const { choice } of first) expect(sum(choice)).toBeCloseTo(truth, 9);
    if (name === 'the best player') expect(truth).toBe(0);
    else expect(truth).toBeGreaterThan(0.01);
    const parts: readonly [string, (s: ShotAccount) => number][] = [
      ['all', (s) => sum(s.execution)],
      ['strike', (s) => s.execution!.strike],
      ['direction', (s) => s.execution!.direction],
      ['length', (s) => s.execution!.length],
      ['luck', (s) => s.execution!.luck],
    ];
    for (const [part, of] of parts) {
      const each = first.map(of);
      const mean = each.reduce((s, x) => s + x, 0) / ROUNDS;
      const se = Math.sqrt(each.reduce((s, x) => s + (x - mean) ** 2, 0) / (ROUNDS - 1) / ROUNDS);
      expect({ part, off: Math.abs(mean) < 3 * se + 0.01 }).toEqual({ part, off: true });
    }
  });
});

test('a stroke with a club that the file does not hold has a loss, and no account of its choice', () => {
  const [drive, ...rest] = virtualHole(left, best, randomFrom(3));
  const account = accountHole(left, [{ ...drive!, club: 'a borrowed club' }, ...rest])!;
  expect(account.shots[0]!.choice).toBeUndefined();
  expect(account.untold).toEqual([{ shot: 1, why: 'club not known' }]);
});

test('an aim that was not noted is judged by what it may have been, not by where the ball went', () => {
  const shots = virtualHole(left, best, randomFrom(3));
  const [drive, ...rest] = shots;
  const { aim, ...untold } = drive!;
  expect(aim).toBeDefined();
  const wide = { eastM: ground.flag.eastM + 30, northM: ground.flag.northM };
  const [a, b] = [untold, { ...untold, finish: wide }].map((d) => accountHole(left, [d, ...rest])!.shots[0]!);
  expect(a!.aimNoted).toBe(false);
  expect(sum(a!.choice)).toBeGreaterThan(0);
  expect(b!.choice).toEqual(a!.choice);
});
