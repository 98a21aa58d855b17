import {
  type AccountedHole,
  accountHole,
  choiceHabits,
  type ChosenShot,
  clubKey,
  type HabitAccount,
  type Option,
  type PlayerModel,
  type Random,
  type StrokesLeft,
  swingKey,
  virtualHole,
} from '@leeway/engine';
import type { Chooser } from './choosers.ts';

/** A hole as its player believes it to be, and as it is for their true patterns. */
export interface BelievedHole {
  readonly believed: StrokesLeft;
  readonly truth: StrokesLeft;
}

/** The holes, played so many times each by a way of choosing, every ball from the true pattern, and accounted for by what is believed. */
export function roundsOf(
  holes: readonly BelievedHole[],
  chooser: Chooser,
  rounds: number,
  random: Random,
): readonly AccountedHole[] {
  return Array.from({ length: rounds }, (_, round) =>
    holes.map(({ believed, truth }): AccountedHole => {
      const shots = virtualHole(
        truth,
        (from) => {
          const { option, bearingRad } = chooser(believed, from, random);
          return { option: asIn(truth.player, option), bearingRad };
        },
        random,
      );
      const account = accountHole(believed, shots);
      if (account === undefined) throw new RangeError('a stroke from a lie that nothing is played from');
      return { round: round + 1, left: believed, shots, account };
    }),
  ).flat();
}

const asIn = (player: PlayerModel, { club, swing }: Option): Option => {
  const found = player.options.find((o) => clubKey(o.club) === clubKey(club) && swingKey(o.swing) === swingKey(swing));
  if (found === undefined) throw new RangeError(`${club}, ${swing}: not a swing of ${player.name}`);
  return found;
};

/** The strokes of each hole whose choice was accounted for. */
export const chosenOn = (holes: readonly AccountedHole[]): readonly (readonly ChosenShot[])[] =>
  holes.map(({ round, left, account }) =>
    account.shots.flatMap(({ shot, choice }) =>
      choice === undefined ? [] : [{ round, hole: left.solution.ground.hole, shot, choice }],
    ),
  );

/** Strokes in 18 holes lost by choice, and over what the best choice expects from the tee. */
export function lossesOf(holes: readonly AccountedHole[]): { readonly choice: number; readonly overBest: number } {
  const each = 18 / holes.length;
  let [choice, overBest] = [0, 0];
  for (const { account } of holes) {
    overBest += each * (account.score - account.expected);
    for (const { choice: c } of account.shots)
      if (c !== undefined) choice += each * (c.spot + c.number + c.swing + c.risk);
  }
  return { choice, overBest };
}

export const choiceOf = (
  holes: readonly AccountedHole[],
): readonly HabitAccount<'spot' | 'number' | 'swing' | 'risk'>[] => choiceHabits(chosenOn(holes));
