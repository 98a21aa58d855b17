import { interpolateRows } from '../math/interpolate.ts';
import type { Surface } from '../quantity/lies.ts';
import { YARD_M } from '../quantity/units.ts';

/**
 * Run after the pitch by carry, yards: [carry, run on a fairway, run on a green], normal firmness. The rows from 200 yd are drives, the
 * ones below approach shots; between them lie the rebound model's normal rows (Penner's bounce with parameters set to observed runs).
 */
const RUN_YD: readonly (readonly [number, number, number])[] = [
  [0, 0, 0],
  [60, 1.9, 2.1],
  [100, 2.2, 2.4],
  [150, 3.0, 3.6],
  [200, 11.7, 12.8],
  [230, 17.5, 18.5],
  [280, 19, 20],
];

/** Long grass, trees and scrub stop a ball in about a quarter of the fairway's run. */
const ROUGH_SHARE = 0.25;

/**
 * How far a ball runs on after a carry, metres, on flat ground of normal firmness; monotone in carry, held beyond the last row.
 * One figure a surface is all this is: expect the truth within +-40 % on average, and half the run from shot to shot.
 */
export function runM(carryM: number, surface: Surface): number {
  const column = surface === 'green' ? 2 : 1;
  return shareOf(surface) * YARD_M * interpolateRows(RUN_YD, Math.max(0, carryM) / YARD_M, column);
}

function shareOf(surface: Surface): number {
  switch (surface) {
    case 'green':
    case 'fairway':
    case 'tee':
      return 1;
    case 'rough':
    case 'recovery':
    case 'out':
      return ROUGH_SHARE;
    case 'bunker':
    case 'penalty':
      return 0;
  }
}
