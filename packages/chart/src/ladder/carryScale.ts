import { YARD_M } from '@leeway/engine';
import type { Ladder } from './ladder.ts';

/** Carries across the sheet: whole units to px. */
export interface CarryScale {
  readonly unitM: number;
  readonly from: number;
  readonly to: number;
  readonly x: (m: number) => number;
  /** Every bar's end, and every figure, in units. */
  readonly tens: readonly number[];
  readonly twenties: readonly number[];
}

/** Boxes, claims and gaps lie on the scale whole; so do all good balls on its right; what is short of its left end the drawing leaves out. */
export function carryScale({ rungs, units }: Ladder, leftPx: number, rightPx: number): CarryScale {
  const unitM = units === 'yd' ? YARD_M : 1;
  const longest = rungs.flatMap((r) => r.balls.filter((b) => !b.mishit).map((b) => b.carryM));
  const ends = rungs.flatMap((r) => [r.lo80M, r.hi80M, r.claimedM ?? r.carryM, r.carryM * 0.9, r.carryM * 1.08]);
  const from = Math.max(0, 20 * Math.floor(Math.min(...ends) / unitM / 20));
  const to = 10 * Math.ceil((Math.max(...ends, ...longest) / unitM + 4) / 10);
  const pxPerUnit = (rightPx - leftPx) / Math.max(20, to - from);
  const steps = (step: number): number[] => {
    const first = Math.ceil(from / step) * step;
    return Array.from({ length: Math.floor((to - first) / step) + 1 }, (_, i) => first + i * step);
  };
  return {
    unitM,
    from,
    to,
    x: (m) => leftPx + (m / unitM - from) * pxPerUnit,
    tens: steps(10),
    twenties: steps(20),
  };
}
