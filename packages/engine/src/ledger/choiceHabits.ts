import { TIE_STROKES } from '../choice/doubt.ts';
import type { ChoiceLoss } from './choiceLoss.ts';
import { dearest, type HabitAccount, LEAST_HOLES, perRound } from './habitAccount.ts';

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

/** Under a tie no choice is called wasteful. */
const wasted = (choice: ChoiceLoss, habit: ChoiceHabit): number =>
  choice.spot + choice.number + choice.swing + choice.risk < TIE_STROKES ? 0 : Math.max(0, choice[habit]);

/**
 * The habits, dearest first. `holes` are those played, each with the strokes of it that were accounted for; the interval is of the mean over holes, by drawing holes again with
 * a fixed seed. Without holes there is nothing to tell.
 */
export function choiceHabits(holes: readonly (readonly ChosenShot[])[]): HabitAccount<ChoiceHabit>[] {
  if (holes.length === 0) return [];
  return CHOICE_HABITS.map((habit): HabitAccount<ChoiceHabit> => {
    const byHole = holes.map((shots) => shots.reduce((sum, s) => sum + wasted(s.choice, habit), 0));
    const examples = dearest(
      holes.flat().map(({ round, hole, shot, choice }) => ({ round, hole, shot, strokes: wasted(choice, habit) })),
      TIE_STROKES,
    );
    const strokesPerRound = perRound(byHole);
    return { habit, strokesPerRound, shown: strokesPerRound.lo80 > 0 && holes.length >= LEAST_HOLES, examples };
  }).toSorted((a, b) => b.strokesPerRound.mean - a.strokesPerRound.mean);
}
