import type { ScoreChances } from '../value/scoreChances.ts';

/** Chances of the score on a hole. */
export interface Scores {
  readonly parOrBetter: number;
  readonly doubleOrWorse: number;
}

/** The chances of a hole whose first `taken` strokes are played already. */
export const scoreChances = (toPlay: ScoreChances, taken: number): ScoreChances => [
  ...Array.from({ length: taken }, () => 0),
  ...toPlay,
];

const chanceOf = (chances: ScoreChances, counts: (score: number) => boolean): number =>
  chances.reduce((sum, p, score) => sum + (counts(score) ? p : 0), 0);

/** Par or better, and double or worse; `received` strokes of a handicap make both net. */
export const scoresOn = (chances: ScoreChances, par: number, received = 0): Scores => ({
  parOrBetter: chanceOf(chances, (score) => score - received <= par),
  doubleOrWorse: chanceOf(chances, (score) => score - received >= par + 2),
});

/** Mean points under Stableford: two for a net par, one more for every stroke better and one less for every stroke worse, none below nought. */
export const stablefordPoints = (chances: ScoreChances, par: number, received = 0): number =>
  chances.reduce((sum, p, score) => sum + p * Math.max(0, 2 + par + received - score), 0);

/** Chances of winning, halving and losing a hole against another's score; `received` is what this player gets of the other, less than nought to give. */
export function matchChances(
  own: ScoreChances,
  other: ScoreChances,
  received = 0,
): { readonly win: number; readonly halve: number; readonly lose: number } {
  let [win, halve, lose] = [0, 0, 0];
  own.forEach((p, score) =>
    other.forEach((q, theirs) => {
      const net = score - received;
      if (net < theirs) win += p * q;
      else if (net > theirs) lose += p * q;
      else halve += p * q;
    }),
  );
  return { win, halve, lose };
}
