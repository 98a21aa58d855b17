import { TIE_STROKES } from '../choice/doubt.ts';
import { randomFrom } from '../math/random.ts';
import type { ChoiceLoss } from './choiceLoss.ts';

/** Habits of choosing: each is measured against the player's own best choice. */
export const CHOICE_HABITS = ['spot', 'number', 'swing', 'risk'] as const;
export type ChoiceHabit = (typeof CHOICE_HABITS)[number];

/** A stroke whose choice was accounted for, and where to find it. */
export interface ChosenShot {
  readonly round: number;
  readonly hole: string;
  readonly shot: number;
  readonly choice: ChoiceLoss;
}

export interface HabitAccount {
  readonly habit: ChoiceHabit;
  /** Strokes wasted in 18 holes, with four times in five. */
  readonly strokesPerRound: { readonly mean: number; readonly lo80: number; readonly hi80: number };
  /** Can it be told from nothing? Otherwise it is not shown yet. */
  readonly shown: boolean;
  /** The strokes that show it best, dearest first, at most three. */
  readonly examples: readonly {
    readonly round: number;
    readonly hole: string;
    readonly shot: number;
    readonly strokes: number;
  }[];
}

const DRAWS = 400;
const SEED = 18;
const EXAMPLES = 3;

/** Under a tie no choice is called wasteful. */
const wasted = (choice: ChoiceLoss, habit: ChoiceHabit): number =>
  choice.spot + choice.number + choice.swing + choice.risk < TIE_STROKES ? 0 : Math.max(0, choice[habit]);

/**
 * The habits, dearest first. `holes` are those played, each with the strokes of it that were accounted for; the interval is of the mean over holes, by drawing holes again with
 * a fixed seed. Without holes there is nothing to tell.
 */
export function choiceHabits(holes: readonly (readonly ChosenShot[])[]): HabitAccount[] {
  if (holes.length === 0) return [];
  return CHOICE_HABITS.map((habit): HabitAccount => {
    const byHole = holes.map((shots) => shots.reduce((sum, s) => sum + wasted(s.choice, habit), 0));
    const perRound = (sum: number): number => (18 * sum) / holes.length;
    const random = randomFrom(SEED);
    const draws = Array.from({ length: DRAWS }, () =>
      perRound(byHole.reduce((sum) => sum + (byHole[random.below(byHole.length)] ?? 0), 0)),
    ).toSorted((a, b) => a - b);
    const at = (share: number): number => draws[Math.floor(share * (DRAWS - 1))] ?? 0;
    const examples = holes
      .flat()
      .map(({ round, hole, shot, choice }) => ({ round, hole, shot, strokes: wasted(choice, habit) }))
      .filter(({ strokes }) => strokes >= TIE_STROKES)
      .toSorted((a, b) => b.strokes - a.strokes)
      .slice(0, EXAMPLES);
    const [lo80, hi80] = [at(0.1), at(0.9)];
    const mean = perRound(byHole.reduce((sum, x) => sum + x, 0));
    return { habit, strokesPerRound: { mean, lo80, hi80 }, shown: lo80 > 0, examples };
  }).toSorted((a, b) => b.strokesPerRound.mean - a.strokesPerRound.mean);
}
