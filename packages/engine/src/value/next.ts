import { LIE_OF } from './arsenal.ts';
import type { Field } from './field.ts';
import type { Query } from './query.ts';
import { cellAt, FAIRWAY, GREEN, TEE } from './raster.ts';
import type { Dropped } from './relief.ts';
import type { BallState, NextState } from './solution.ts';
import type { Solving } from './sweep.ts';

/** Where a ball at rest at (u, v) after a stroke from a state is played from next: see `HoleSolution.next`. */
export function nextState(
  field: Field,
  solved: Solving,
  query: Query,
  u: number,
  v: number,
  from: BallState,
): NextState {
  const here = query.here(from);
  const code = field.raster.surface[cellAt(field.raster, u, v)]!;
  if (field.fates[code]!.played > 0) {
    const state = { at: field.frame.toPlane(u, v), lie: LIE_OF[code === TEE || code === GREEN ? FAIRWAY : code]! };
    return code === GREEN
      ? { state, penaltyStrokes: 0 }
      : (dropState(field, query.here(state).unplayable) ?? { state, penaltyStrokes: 0 });
  }
  const again: NextState = { state: from, penaltyStrokes: 1 };
  if (field.fates[code]!.lifted === 0) return again;
  const length = Math.hypot(u - here.u, v - here.v) || 1;
  const dropped = solved.relief?.relief(u, v, (u - here.u) / length, (v - here.v) / length);
  if (dropped === undefined || dropped.penaltyStrokes + dropped.strokes > 1 + here.strokes) return again;
  return dropState(field, dropped) ?? again;
}

export function dropState(field: Field, dropped: Dropped | undefined): NextState | undefined {
  if (dropped === undefined) return undefined;
  const lie = LIE_OF[dropped.lie === GREEN ? FAIRWAY : dropped.lie]!;
  return { state: { at: field.frame.toPlane(dropped.u, dropped.v), lie }, penaltyStrokes: dropped.penaltyStrokes };
}
