import { describe, expect, it } from 'vitest';
import { playerModel } from '../player/model.ts';
import type { Lie } from '../quantity/lies.ts';
import { referenceHole, referencePlayer } from './testdata/load.ts';
import { solveHole } from './solve.ts';
import { area, box, hole, round } from './testdata/toy.ts';

// a flag 4 m from the right edge of a green of 14 m, in the middle of rough
const ground = hole([0, 150], [area('rough', box(-120, -20, 120, 260)), area('green', round(-10, 150, 14))]);

describe('a miss on the short side', () => {
  const clubs = ['driver', '7-iron', 'sand wedge'].map((name) => ({ name }));
  it.each([0, 15, 28])('never costs less than one with green to work with: index %i', (handicapIndex) => {
    const solution = solveHole(ground, playerModel({ version: 1, name: 'made up', handicapIndex, clubs }));
    for (const lie of ['rough', 'bunker'] as readonly Lie[]) {
      // 26 m from the flag both: beyond the near edge, and beyond the far one
      const cost = (eastM: number): number => solution.best({ at: { eastM, northM: 150 }, lie })[0]!.strokes;
      expect(cost(26)).toBeGreaterThan(cost(-26) + 0.01);
    }
    const state = { at: { eastM: 12, northM: 150 }, lie: 'rough' } as const;
    const [best] = solution.best(state);
    expect(Math.abs(solution.price(state, best!).strokes - best!.strokes)).toBeLessThan(0.006);
  });

  it('is not known for stated patterns: they are the whole truth', () => {
    const player = referencePlayer('player_sym');
    const solution = solveHole(referenceHole('h1_par3_125'), player);
    const state = { at: { eastM: 20, northM: 125 }, lie: 'rough' } as const;
    const [best] = solution.best(state);
    expect(solution.placesOf(state, best!)?.pattern).toBe(best!.option.byLie.rough);
  });
});
