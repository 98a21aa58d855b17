import { hundredBalls } from '@leeway/engine';
import type { ShotDocument } from './plan.ts';

/** Words for a shot of a plan that every surface uses alike. */

/** A difference in strokes below this is called a tie. */
export const TIE_STROKES = 0.02;
/** A stroke is said to start away from its spot when they lie this far apart. */
export const DRIFT_M = 0.75;

const ORDINALS = ['Tee', 'Second', 'Third', 'Fourth', 'Fifth', 'Sixth', 'Seventh', 'Eighth', 'Ninth', 'Tenth'];

/** "Tee shot", "Second shot", by its place in the plan from 0. */
export const shotTitle = (index: number): string => `${ORDINALS[index] ?? `${index + 1}th`} shot`;

/** ", from the rough"; nothing from the tee. */
export const fromWords = (lie: ShotDocument['lie']): string => (lie === 'tee' ? '' : `, from ${LIE_WORDS[lie]}`);

const LIE_WORDS: { readonly [L in ShotDocument['lie']]: string } = {
  tee: 'the tee',
  fairway: 'the fairway',
  rough: 'the rough',
  bunker: 'sand',
  recovery: 'the trees',
  penalty: 'the penalty area',
};

const PLACES: readonly (readonly [keyof ShotDocument['chances'], string])[] = [
  ['green', 'green'],
  ['fairway', 'fairway'],
  ['rough', 'rough'],
  ['bunker', 'sand'],
  ['recovery', 'trees'],
  ['penalty', 'penalty area'],
  ['outOfBounds', 'out of bounds'],
  ['unmapped', 'not mapped'],
];

/** Where a hundred balls finish: the places that any of them find, with how many. */
export function finishWords(chances: ShotDocument['chances']): (readonly [string, number])[] {
  const balls = hundredBalls(PLACES.map(([key]) => chances[key]));
  return PLACES.map(([, name], i) => [name, balls[i] ?? 0] as const).filter(([, n]) => n > 0);
}

/** What a shot's figures rest on. */
export function evidenceWords({ evidence, doubt }: ShotDocument): string {
  switch (evidence) {
    case 'stated':
      return 'the pattern is stated in the player file, not measured';
    case 'fitted':
      return `${doubt.balls} ball${doubt.balls === 1 ? '' : 's'} of this club and swing`;
    case 'claimed':
      return 'the carry is claimed, no balls measured, the spread is usual for the handicap';
    case 'prior':
      return 'no balls measured, carry and spread are usual for the handicap and the other clubs';
    case 'short game':
      return 'no balls measured, the short game is the one usual for the handicap';
  }
}
