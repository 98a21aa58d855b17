import { REFERENCE } from '../day/day.ts';
import { describe, expect, it } from 'vitest';
import { plainKernel } from '../kernel/plainKernel.ts';
import { bestKernel, type MakeKernel } from '../kernel/room.ts';
import { Field } from './field.ts';
import { Query } from './query.ts';
import { PATIENCE } from './solve.ts';
import { solveField } from './sweep.ts';
import { referenceHole, referencePlayer, referenceSolution, type HoleName, type PlayerName } from './testdata/load.ts';

const cases: readonly [HoleName, PlayerName][] = [
  ['h1_par3_125', 'player'],
  ['t1_symmetric', 'player_sym'],
];

describe.each(cases)('%s for %s, by vectors and by the plain loops', (name, who) => {
  const states = referenceSolution(name).states.map((s) => ({ at: { eastM: s.x, northM: s.y }, lie: s.lie }));
  const solved = (make: MakeKernel) => {
    const field = new Field(referenceHole(name), referencePlayer(who), REFERENCE, make);
    const query = new Query(field, solveField(field, PATIENCE), new Map());
    return { kind: field.kernel.kind, best: states.map((from) => query.best(from, 0)[0]) };
  };
  const fast = solved(bestKernel);
  const plain = solved(plainKernel);

  it('are two different ways', () => {
    expect(fast.kind).toBe('vector');
    expect(plain.kind).toBe('plain');
  });

  it.each(states.map((s, i) => [`${s.lie} at ${s.at.eastM}, ${s.at.northM}`, i] as const))('%s', (_, i) => {
    expect(Math.abs((fast.best[i]?.strokes ?? NaN) - (plain.best[i]?.strokes ?? NaN))).toBeLessThan(2e-5);
    expect(fast.best[i]?.option.swing).toBe(plain.best[i]?.option.swing);
  });
});
