import { describe, expect, it } from 'vitest';
import type { PlayerModel } from '../player/option.ts';
import { solveHole } from './solve.ts';
import {
  referenceHole,
  referencePlayer,
  referenceSolution,
  type HoleName,
  type PlayerName,
  type ReferenceState,
} from './testdata/load.ts';
import type { Candidate, HoleSolution } from './solution.ts';

/** What the reference says a stroke costs: its table over options and aims, linear between half degrees. */
function referenceCost(state: ReferenceState, solution: HoleSolution, c: Candidate): number {
  const { flag } = solution.ground;
  const atFlag = Math.atan2(flag.eastM - state.x, flag.northM - state.y);
  const turn = ((((c.bearingRad - atFlag) * 180) / Math.PI + 540) % 360) - 180;
  const k = (turn + 60) * 2;
  const row = state.Q[c.option.swing];
  const low = row?.[Math.floor(k)];
  const high = row?.[Math.floor(k) + 1];
  if (low === undefined || high === undefined) throw new RangeError(`no reference for ${c.option.swing} at ${turn}`);
  return low + (k - Math.floor(k)) * (high - low);
}

const cases: readonly [HoleName, PlayerName][] = [
  ['h1_par3_125', 'player'],
  ['t1_symmetric', 'player_sym'],
];

describe.each(cases)('%s for %s, against the independent reference solution', (name, who) => {
  const model: PlayerModel = referencePlayer(who);
  const solution = solveHole(referenceHole(name), model);
  const { states } = referenceSolution(name);

  it('converges, and says so', () => {
    expect(solution.status.converged).toBe(true);
    expect(solution.status.residual).toBeLessThan(0.005);
  });

  it.each(states.map((s) => [`${s.lie} at ${s.x}, ${s.y}`, s] as const))('%s', (_, state) => {
    const from = { at: { eastM: state.x, northM: state.y }, lie: state.lie };
    const [best] = solution.best(from);
    expect(best).toBeDefined();
    const tolerance = state.lie === 'tee' ? 0.006 : 0.01;
    expect(Math.abs(best!.strokes - state.V)).toBeLessThan(tolerance);
    expect(referenceCost(state, solution, best!) - state.V).toBeLessThan(0.003);
    // the price, ball by ball on the painted ground, agrees with the fast rule
    expect(Math.abs(solution.price(from, best!).strokes - best!.strokes)).toBeLessThan(0.004);
  });
});

describe('prices', () => {
  const solution = solveHole(referenceHole('h1_par3_125'), referencePlayer('player'));
  const from = { at: solution.ground.ball, lie: 'tee' as const };
  const [best] = solution.best(from);
  const priced = solution.price(from, best!);

  it('have chances that sum to one, and costs that sum to the strokes', () => {
    const sum = (xs: Iterable<number>): number => [...xs].reduce((a, b) => a + b, 0);
    expect(sum(Object.values(priced.chances))).toBeCloseTo(1, 9);
    expect(sum(priced.areaChances.values())).toBeCloseTo(1, 9);
    expect(sum(priced.areaCosts.values())).toBeCloseTo(priced.strokes, 9);
  });

  it('agree with strokes at rest, at the place where the good strike finishes', () => {
    const onGreen = solution.strokesAtRest(priced.finishes, from);
    expect(solution.surfaceAt(priced.finishes)).toBe('green');
    expect(onGreen).toBeGreaterThan(1);
    expect(onGreen).toBeLessThan(2);
  });
});
