import type { NormalPart } from '@leeway/engine';
import { type Level, march } from '../contour/march.ts';
import type { Xy } from '../marks.ts';
import type { Rect } from '../plane/quad.ts';

/** Balls in a hundred that each line holds, and how thick it is. */
export const HELD = [
  [50, 1.5],
  [80, 1.1],
  [95, 0.8],
] as const;
const STEP_PX = 4;

/**
 * The lines of equal density that hold 50, 80 and 95 balls in 100. The share that a line holds is summed over a grid of 4 px, densest first; balls
 * beyond the grid are not counted. `densityAt` gives balls a square metre at a place of the paper.
 */
export function heldLines(inner: Rect, pxPerM: number, densityAt: (p: Xy) => number): readonly Level[] {
  const columns = Math.ceil((inner.right - inner.left) / STEP_PX) + 1;
  const rows = Math.ceil((inner.bottom - inner.top) / STEP_PX) + 1;
  const grid = { columns, rows, left: inner.left, top: inner.top, stepPx: STEP_PX };
  const dense = Float64Array.from({ length: columns * rows }, (_, i) =>
    densityAt({ x: inner.left + (i % columns) * STEP_PX, y: inner.top + Math.floor(i / columns) * STEP_PX }),
  );
  return march(
    sharesHeld(dense, (STEP_PX / pxPerM) ** 2),
    grid,
    HELD.map(([balls]) => balls / 100),
  );
}

/** Density of a mixture of normals at a place, balls a square metre. */
export function density(parts: readonly NormalPart[], alongM: number, acrossM: number): number {
  return parts.reduce((sum, part) => {
    const x = (alongM - part.alongM) / part.sdAlongM;
    const y = (acrossM - part.acrossM) / part.sdAcrossM;
    const rest = 1 - part.corr ** 2;
    const power = (x * x - 2 * part.corr * x * y + y * y) / (2 * rest);
    return sum + (part.weight * Math.exp(-power)) / (2 * Math.PI * part.sdAlongM * part.sdAcrossM * Math.sqrt(rest));
  }, 0);
}

/** For each cell, the share of balls that fall where it is at least as dense as there. */
function sharesHeld(dense: Float64Array, cellSqM: number): Float64Array {
  const order = Array.from(dense.keys()).sort((a, b) => dense[b]! - dense[a]!);
  const held = new Float64Array(dense.length);
  let sum = 0;
  for (const i of order) {
    sum += dense[i]! * cellSqM;
    held[i] = sum - 0.5 * dense[i]! * cellSqM;
  }
  return held;
}
