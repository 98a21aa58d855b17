import type { PuttingRow } from '../player/option.ts';

/** Expected putts on an even grid, so that a read costs no search. */
export interface Putts {
  readonly stepM: number;
  readonly strokes: Float64Array;
}

const STEP_M = 0.05;

/** The table on a grid of 5 cm: linear between rows, the first and last rows held. */
export function puttsOf(rows: readonly PuttingRow[]): Putts {
  const last = rows.at(-1);
  if (last === undefined) return { stepM: STEP_M, strokes: Float64Array.of(2, 2) };
  const strokes = new Float64Array(Math.ceil(last.distanceM / STEP_M) + 2);
  let k = 0;
  for (let i = 0; i < strokes.length; i++) {
    const d = i * STEP_M;
    while (k + 1 < rows.length && rows[k + 1]!.distanceM <= d) k++;
    const a = rows[k]!;
    const b = rows[Math.min(k + 1, rows.length - 1)]!;
    const t = b.distanceM > a.distanceM ? (d - a.distanceM) / (b.distanceM - a.distanceM) : 0;
    strokes[i] = a.strokes + Math.min(1, Math.max(0, t)) * (b.strokes - a.strokes);
  }
  return { stepM: STEP_M, strokes };
}

export function puttsAt(p: Putts, distanceM: number): number {
  const x = distanceM / p.stepM;
  const last = p.strokes.length - 1;
  if (x >= last) return p.strokes[last]!;
  const i = x | 0;
  return p.strokes[i]! + (x - i) * (p.strokes[i + 1]! - p.strokes[i]!);
}
