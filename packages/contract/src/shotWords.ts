import {
  capital,
  hundredBalls,
  lengthWords,
  optionWords,
  outWords,
  spotWords,
  type Units,
  wholeLength,
} from '@leeway/engine';
import type { ShotDocument, StrokeDocument } from './plan.ts';

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

/** Does the shot go for the flag? Otherwise its spots are told by how far out they lie. */
export const goesForFlag = (shot: ShotDocument): boolean => shot.atFlag !== undefined;

/** "6 yd left of the flag and 7 yd short of it"; from further back "224 yd out, 10 yd left of the flag line". */
export const spotPlace = (shot: ShotDocument, units: Units): string =>
  goesForFlag(shot) ? spotWords(shot.spot, units) : outWords(shot.toFlagM, shot.spot, units);

/** "9-iron, full, 5 yd left and 13 yd short", of the flag; from further back "3-wood, full, 197 yd out, 9 yd left". */
export function strokeWords(
  { option, spot }: Pick<StrokeDocument, 'option' | 'spot'>,
  shot: ShotDocument,
  units: Units,
): string {
  const across = wholeLength(spot.rightOfFlagM, units);
  const along = wholeLength(spot.beyondFlagM, units);
  const side = across === 0 ? [] : [`${Math.abs(across)} ${units} ${across < 0 ? 'left' : 'right'}`];
  const what = capital(optionWords(option));
  if (!goesForFlag(shot))
    return [what, `${lengthWords(shot.toFlagM + spot.beyondFlagM, units)} out`, ...side].join(', ');
  const depth = along === 0 ? [] : [`${Math.abs(along)} ${units} ${along < 0 ? 'short' : 'past'}`];
  return `${what}, ${[...side, ...depth].join(' and ') || 'at the flag'}`;
}

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
