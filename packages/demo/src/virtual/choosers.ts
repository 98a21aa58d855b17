import {
  type BallState,
  bearingRad,
  distanceM,
  RAD_PER_DEG,
  type Random,
  type Stroke,
  type StrokesLeft,
} from '@leeway/engine';

/** What a virtual player plays from a state, by what they believe of the hole. */
export type Chooser = (left: StrokesLeft, from: BallState, random: Random) => Stroke;

const best = (left: StrokesLeft, from: BallState): Stroke => {
  const bests = left.bests(from);
  if (bests === undefined) throw new RangeError(`nothing is played from ${from.lie}`);
  return bests.best;
};

const reachM = (left: StrokesLeft, from: BallState, stroke: Stroke): number =>
  distanceM(from.at, left.solution.placesOf(from, stroke)?.finishes ?? from.at);

/** The full swings from a state, each at its own best aim, the longest first. */
const fullSwings = (left: StrokesLeft, from: BallState): Stroke[] =>
  left.player.options
    .filter((o) => o.full && o.byLie[from.lie] !== undefined)
    .flatMap((option) => left.bests(from)?.of(option) ?? [])
    .toSorted((a, b) => reachM(left, from, b) - reachM(left, from, a));

/** Ways of choosing, each with the habits that the account may name it by. */
export const CHOOSERS = {
  /** Takes the cheapest stroke, always. */
  'chooses best': best,
  /** The best club and swing, straight at the flag. */
  'aims at the flag': (left, from) => ({
    option: best(left, from).option,
    bearingRad: bearingRad(from.at, left.solution.ground.flag),
  }),
  /** One club less than the best of that swing, but for the tee. */
  'takes a club too little': (left, from) => {
    const chosen = best(left, from);
    const shorter = left.player.options
      .flatMap((option) => left.bests(from)?.of(option) ?? [])
      .filter((s) => s.option.swing === chosen.option.swing && reachM(left, from, s) < reachM(left, from, chosen) - 4)
      .toSorted((a, b) => reachM(left, from, b) - reachM(left, from, a))[0];
    return from.lie === 'tee' ? chosen : (shorter ?? chosen);
  },
  /** A full swing wherever one is not far too long, where a shorter length of swing is the best. */
  'forces full swings': (left, from) => {
    const chosen = best(left, from);
    if (chosen.option.full) return chosen;
    const full = fullSwings(left, from).at(-1);
    return full !== undefined && reachM(left, from, full) < 1.5 * reachM(left, from, chosen) + 15 ? full : chosen;
  },
  /** The best stroke, pointed give or take 2 degrees. */
  'points about': (left, from, random) => {
    const { option, bearingRad: at } = best(left, from);
    return { option, bearingRad: at + 2 * RAD_PER_DEG * random.normal() };
  },
} as const satisfies { readonly [way: string]: Chooser };
