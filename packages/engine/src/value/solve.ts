import type { HoleGround } from '../ground/hole.ts';
import type { PlayerModel } from '../player/option.ts';
import { SURFACES } from '../quantity/lies.ts';
import type { PlanePoint } from '../quantity/points.ts';
import { Field } from './field.ts';
import { price, strokesAtRest } from './price.ts';
import { Query } from './query.ts';
import { cellAt, UNMAPPED } from './raster.ts';
import type { BallState, HoleSolution, Priced, Stroke } from './solution.ts';
import { solveField, type Patience } from './sweep.ts';

/** Sweeps go on until no state moves by 0.005 strokes, eight at the most; the status says which came first. */
export const PATIENCE: Patience = { tolerance: 0.005, most: 8 };

/**
 * Expected strokes to hole out from everywhere on a hole, for one player, playing best. Formulation and errors: docs/models/strokes.md.
 * A player without any option from the tee or fairway cannot be solved for; callers check `canPlay` first.
 */
export function solveHole(ground: HoleGround, player: PlayerModel, patience: Patience = PATIENCE): HoleSolution {
  const field = new Field(ground, player);
  const solved = solveField(field, patience);
  const query = new Query(field, solved);
  const { frame, raster } = field;
  const cell = (p: PlanePoint): number => cellAt(raster, frame.u(p), frame.v(p));
  return {
    ground,
    status: solved.status,
    surfaceAt: (p) => SURFACES[raster.surface[cell(p)]!]!,
    areaAt: (p) => raster.area[cell(p)]!,
    isUnmapped: (p) => raster.area[cell(p)] === UNMAPPED,
    strokesAtRest: (p, from) => strokesAtRest(field, solved, query.here(from), frame.u(p), frame.v(p)),
    best: (from, withinStrokes = 0.5) => query.best(from, withinStrokes),
    bestOf: (from, option) => query.bestOf(from, option),
    strokesOf: (from, stroke) => query.strokesOf(from, stroke.option, stroke.bearingRad),
    price: (from: BallState, stroke: Stroke): Priced => {
      const here = query.here(from);
      const weapon = query.weapon(stroke.option, here.lie);
      if (weapon === undefined)
        throw new RangeError(`${stroke.option.club} ${stroke.option.swing} has no pattern from ${from.lie}`);
      return price(field, solved, here, weapon, stroke);
    },
  };
}

/** Whether a player has anything to play from the tee, and from grass after it. */
export const canPlay = (player: PlayerModel): boolean =>
  player.options.some((o) => o.byLie.tee) && player.options.some((o) => o.byLie.fairway ?? o.byLie.rough);
