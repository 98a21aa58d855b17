import type { Option } from '../player/option.ts';
import type { BallState, HoleSolution } from '../value/solution.ts';
import { showStroke, type ShownStroke } from './shown.ts';

/** A swing that the player does not own yet and what it would save at this shot. */
export interface Lesson {
  readonly shown: ShownStroke;
  readonly savesStrokes: number;
}

const LEAST_SAVING = 0.02;

/** The swings that would save at least 0.02 strokes here, the best first. */
export function worthLearning(
  solution: HoleSolution,
  from: BallState,
  learnable: readonly Option[],
  expectedStrokes: number,
): Lesson[] {
  const lessons = learnable.flatMap((option): Lesson[] => {
    const best = solution.bestOf(from, option);
    if (best === undefined || expectedStrokes - best.strokes < LEAST_SAVING) return [];
    const shown = showStroke(solution, from, best);
    const savesStrokes = expectedStrokes - shown.strokes;
    return savesStrokes < LEAST_SAVING ? [] : [{ shown, savesStrokes }];
  });
  return lessons.toSorted((a, b) => b.savesStrokes - a.savesStrokes);
}
