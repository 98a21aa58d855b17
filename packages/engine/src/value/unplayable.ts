import { BACK_M, besides, lieAt, strokesFromDrop } from './crossing.ts';
import type { Field } from './field.ts';
import { BUNKER, cellAt, FAIRWAY, PENALTY, TEE } from './raster.ts';
import type { Dropped } from './relief.ts';

/** A drop is not looked for where a ball that is played costs less than this more than the baseline from the fairway: none would pay. */
const LEAST_STROKES = 0.7;

/** Whether a ball that can be played is so ill placed that Rule 19 may be cheaper. */
export const mayBeUnplayable = (field: Field, lie: number, u: number, v: number, strokes: number): boolean =>
  lie !== PENALTY &&
  lie !== TEE &&
  lie !== FAIRWAY &&
  field.arsenal.has(FAIRWAY) &&
  strokes > LEAST_STROKES + field.baselineFrom(FAIRWAY, field.distanceM(u, v));

/**
 * The cheapest relief of Rule 19 for a ball at a place, for one penalty stroke: back on the line from the flag, or within two club-lengths and no
 * nearer the flag. From sand both stay in it, and for one stroke more the ball goes back out of it. `undefined` where no place is legal.
 */
export function unplayable(field: Field, lie: number, u: number, v: number): Dropped | undefined {
  const distanceM = field.distanceM(u, v);
  if (lie === PENALTY || !(distanceM > 0)) return undefined;
  let best: Dropped | undefined;
  const offer = (du: number, dv: number): void => {
    const to = lieAt(field, du, dv);
    if (to === undefined) return;
    const inSand = field.raster.surface[cellAt(field.raster, du, dv)] === BUNKER;
    const penaltyStrokes = lie === BUNKER && !inSand ? 2 : 1;
    const strokes = strokesFromDrop(field, du, dv, to);
    const better = best === undefined || penaltyStrokes + strokes < best.penaltyStrokes + best.strokes;
    if (better) best = { u: du, v: dv, lie: to, penaltyStrokes, strokes };
  };
  for (let t = 1; t <= BACK_M; t++) {
    offer(u + ((u - field.flag.u) * t) / distanceM, v + ((v - field.flag.v) * t) / distanceM);
  }
  besides(field, u, v, (du, dv) => {
    if (lie !== BUNKER || field.raster.surface[cellAt(field.raster, du, dv)] === BUNKER) offer(du, dv);
  });
  return best;
}
