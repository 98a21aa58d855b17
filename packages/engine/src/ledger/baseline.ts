import { interpolateRows } from '../math/interpolate.ts';
import { puttingPrior, puttingRows } from '../player/putting.ts';
import { YARD_M } from '../quantity/units.ts';
import { type BaselineLie, DISTANCES_YD, STROKES } from './baselineTable.ts';

/** Average strokes to hole out of players of one standard, by lie and distance alone. */
export type Baseline = (lie: BaselineLie | 'green', toFlagM: number) => number;

/** The handicap index whose putting and table are the tour's. */
export const TOUR_INDEX = -5.5;

type Rows = readonly (readonly number[])[];

/**
 * The baseline of a handicap index, -5.5 (the tour) to 30: linear between the tables of the two indexes about it; putts by the putting prior.
 * Within 10 yd of the hole the row of 10 yd is held, beyond 600 yd the last; from a tee nearer than 100 yd a tee counts as fairway.
 */
export function baselineOf(index: number): Baseline {
  if (!(index >= TOUR_INDEX && index <= 30))
    throw new RangeError(`baseline: found index ${index}; expected -5.5 to 30`);
  const above = Math.max(
    1,
    STROKES.findIndex((s) => s.index >= index),
  );
  const [low, high] = [STROKES[above - 1], STROKES[above]];
  if (low === undefined || high === undefined) throw new RangeError('baseline: no tables');
  const share = (index - low.index) / (high.index - low.index);
  const rowsOf = (lie: BaselineLie): Rows =>
    DISTANCES_YD.flatMap((yd, i) => {
      const [a, b] = [low.table[lie][i], high.table[lie][i]];
      return typeof a !== 'number' || typeof b !== 'number' ? [] : [[yd * YARD_M, a + share * (b - a)]];
    });
  const fairway = rowsOf('fairway');
  const tee = rowsOf('tee');
  const byLie: { readonly [L in BaselineLie]: Rows } = {
    tee: [...fairway.filter(([m = 0]) => m < (tee[0]?.[0] ?? 0)), ...tee],
    fairway,
    rough: rowsOf('rough'),
    bunker: rowsOf('bunker'),
    recovery: rowsOf('recovery'),
  };
  const putts: Rows = puttingRows(puttingPrior({ handicapIndex: index })).map((r) => [r.distanceM, r.strokes]);
  return (lie, toFlagM) => interpolateRows(lie === 'green' ? putts : byLie[lie], toFlagM);
}
