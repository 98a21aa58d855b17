import { describe, expect, it } from 'vitest';
import type { Heights } from '../ground/heights.ts';
import { playerModel } from '../player/model.ts';
import type { HoleSolution } from './solution.ts';
import { solveHole } from './solve.ts';
import { area, box, hole, round } from './testdata/toy.ts';

const player = playerModel({
  version: 1,
  name: 'made up',
  handicapIndex: 12,
  clubs: ['7-iron', 'sand wedge'].map((name) => ({ name })),
});
const ground = hole([0, 120], [area('rough', box(-60, -20, 60, 170)), area('green', round(0, 120, 14))]);
/** Ground that rises by a share of the way on, known every so many metres. */
const plane = (rise: number, stepM: number): Heights => {
  const [columns, rows] = [Math.ceil(300 / stepM), Math.ceil(400 / stepM)];
  const heightM = Float32Array.from({ length: columns * rows }, (_, k) => rise * Math.floor(k / columns) * stepM);
  return { westM: -150, southM: -100, stepM, columns, rows, heightM, from: 'raster' };
};
const tee = { at: ground.ball, lie: 'tee' } as const;
const putts = (s: HoleSolution, northM: number): number => s.strokesAtRest({ eastM: 0, northM }, tee);

describe('a green whose heights are known', () => {
  const tilted = solveHole({ ...ground, heights: plane(0.025, 2) }, player);

  it('costs more above the hole than below it, in the field too', () => {
    expect(tilted.greenTakenAsFlat).toBe(false);
    expect(putts(tilted, 126)).toBeGreaterThan(putts(tilted, 114) + 0.02);
    const [best] = tilted.best(tee);
    expect(Math.abs(tilted.price(tee, best!).strokes - best!.strokes)).toBeLessThan(0.007);
  });

  it('is the flat model where it is level, and taken as flat where heights are too far apart', () => {
    const [flat, level, coarse] = [undefined, plane(0, 2), plane(0.025, 10)].map((heights) =>
      solveHole(heights === undefined ? ground : { ...ground, heights }, player),
    );
    for (const northM of [108, 114, 119, 127]) {
      expect(putts(level!, northM)).toBe(putts(flat!, northM));
      expect(putts(coarse!, northM)).toBe(putts(flat!, northM));
    }
    expect(coarse!.greenTakenAsFlat).toBe(true);
  });
});
