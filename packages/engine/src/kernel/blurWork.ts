import { BLOCK, MOST_TAPS } from './layout.ts';

/** Floats of a line of inputs, edges held, for so many outputs at the same step; half as many outputs at twice the step. */
export const lineFloats = (width: number): number => Math.ceil((width + MOST_TAPS + BLOCK) / 4) * 4;

/** Floats that a blur from a grid works in: taps, two lines, and rows blurred across. */
export const blurFloats = (columns: number, rows: number): number =>
  MOST_TAPS + 2 * lineFloats(columns) + rows * (columns + BLOCK);
