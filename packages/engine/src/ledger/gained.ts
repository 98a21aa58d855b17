import { distanceM } from '../geometry/segment.ts';
import type { PlanePoint } from '../quantity/points.ts';
import type { Baseline } from './baseline.ts';
import { type Part, partOf, PARTS, type PlayedFrom, type PlayedShot } from './played.ts';

/** Strokes gained on a baseline by part of the game; with the baseline's own score they add up to the score. */
export interface Gained {
  readonly byPart: { readonly [P in Part]: number };
  readonly total: number;
  /** What the baseline takes from the tee. */
  readonly baseline: number;
}

/** Each stroke gains what the baseline says it brought, less the stroke and its penalties. Strokes of one hole, in order, the last one holed. */
export function gainedOnHole(shots: readonly PlayedShot[], flag: PlanePoint, baseline: Baseline): Gained {
  const left = (from: PlayedFrom): number =>
    baseline(from.lie === 'penalty' ? 'recovery' : from.lie, distanceM(from.at, flag));
  const byPart = Object.fromEntries(PARTS.map((p) => [p, 0])) as { [P in Part]: number };
  shots.forEach((played, i) => {
    const next = shots[i + 1];
    const after = played.finish === 'holed' || next === undefined ? 0 : left(next.from);
    byPart[partOf(played.from, distanceM(played.from.at, flag))] +=
      left(played.from) - after - 1 - played.penaltyStrokes;
  });
  const total = PARTS.reduce((sum, p) => sum + byPart[p], 0);
  return { byPart, total, baseline: shots[0] === undefined ? 0 : left(shots[0].from) };
}
