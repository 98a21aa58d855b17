import type { PlanePoint } from '@leeway/engine';
import { offsetOf, type Pattern } from '@leeway/engine';
import { march } from '../contour/march.ts';
import type { Mark } from '../marks.ts';
import { keepWhere } from '../plane/line.ts';
import { inRect } from '../plane/quad.ts';
import type { Sheet } from '../sheet.ts';
import { runOf, type ShotMarks } from './shotMarks.ts';

/** Balls in a hundred that each line holds, and how thick it is. */
const LINES = [
  [50, 1.5],
  [80, 1.1],
  [95, 0.8],
] as const;
const STEP_PX = 4;

/**
 * The lines that hold 50, 80 and 95 balls in 100: lines of equal density of the pattern's own mixture. The share that a line holds is summed over a
 * grid of 4 px, densest first; balls of the pattern beyond the grid, which is the sheet, are not counted.
 */
export function holdingLines(sheet: Sheet, { choice }: ShotMarks): Mark[] {
  const { priced } = choice.answer;
  const { pattern } = priced;
  const { inner } = sheet;
  const columns = Math.ceil((inner.right - inner.left) / STEP_PX) + 1;
  const rows = Math.ceil((inner.bottom - inner.top) / STEP_PX) + 1;
  const grid = { columns, rows, left: inner.left, top: inner.top, stepPx: STEP_PX };
  const runM = runOf(choice);
  const densityAt = (p: PlanePoint): number => {
    const { alongM, acrossM } = offsetOf(p, choice.from.at, priced.bearingRad);
    return density(pattern, alongM - runM, acrossM);
  };
  const dense = Float64Array.from({ length: columns * rows }, (_, i) =>
    densityAt(
      sheet.toPlane({ x: inner.left + (i % columns) * STEP_PX, y: inner.top + Math.floor(i / columns) * STEP_PX }),
    ),
  );
  const held = sharesHeld(dense, (STEP_PX / sheet.pxPerM) ** 2);
  return march(
    held,
    grid,
    LINES.map(([balls]) => balls / 100),
  ).map(({ lines }, i): Mark => ({
    kind: 'stroke',
    layer: 'pattern',
    role: 'ink',
    lines: lines.flatMap((l) => keepWhere(l, (q) => inRect(q, inner))),
    closed: false,
    widthPx: LINES[i]?.[1] ?? 1,
  }));
}

/** Density of a mixture of normals at a place, balls a square metre. */
function density(pattern: Pattern, alongM: number, acrossM: number): number {
  return pattern.parts.reduce((sum, part) => {
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
