import { randomFrom } from '../math/random.ts';

/** Where a stroke that shows a habit is to be found, and what it cost. */
export interface Example {
  readonly round: number;
  readonly hole: string;
  readonly shot: number;
  readonly strokes: number;
}

/** A habit in strokes of 18 holes, by the yardstick of its kind. */
export interface HabitAccount<H extends string> {
  readonly habit: H;
  /** Strokes wasted in 18 holes, with four times in five. */
  readonly strokesPerRound: { readonly mean: number; readonly lo80: number; readonly hi80: number };
  /** Can it be told from nothing? Otherwise it is not shown yet. */
  readonly shown: boolean;
  /** The strokes that show it best, dearest first, at most three. */
  readonly examples: readonly Example[];
}

const EXAMPLES = 3;

/** The dearest strokes, none under what is called a tie. */
export const dearest = (shots: readonly Example[], least: number): readonly Example[] =>
  shots
    .filter(({ strokes }) => strokes >= least)
    .toSorted((a, b) => b.strokes - a.strokes)
    .slice(0, EXAMPLES);

/** Dearest first; what is shown comes before what may be chance. */
export const ranked = <H extends string>(habits: readonly HabitAccount<H>[]): HabitAccount<H>[] =>
  habits.toSorted((a, b) => Number(b.shown) - Number(a.shown) || b.strokesPerRound.mean - a.strokesPerRound.mean);

/** On fewer holes than this nothing is told from chance. */
export const LEAST_HOLES = 6;

const DRAWS = 400;
const SEED = 18;

/** Strokes in 18 holes from those of each hole; the interval comes of drawing the holes again with a fixed seed. */
export function perRound(byHole: readonly number[]): HabitAccount<string>['strokesPerRound'] {
  const each = 18 / Math.max(1, byHole.length);
  const random = randomFrom(SEED);
  const draws = Array.from(
    { length: DRAWS },
    () => each * byHole.reduce((sum) => sum + (byHole[random.below(byHole.length)] ?? 0), 0),
  ).toSorted((a, b) => a - b);
  const at = (share: number): number => draws[Math.floor(share * (DRAWS - 1))] ?? 0;
  return { mean: each * byHole.reduce((sum, x) => sum + x, 0), lo80: at(0.1), hi80: at(0.9) };
}
