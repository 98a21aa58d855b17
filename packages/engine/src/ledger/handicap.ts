/**
 * The published arithmetic of the World Handicap System (R&A and USGA, Rules of Handicapping), unofficial here: a club's committee keeps the
 * official index. Nine-hole expected scores are not in it.
 */

/** A course as rated for a set of tees. */
export interface Rating {
  readonly courseRating: number;
  readonly slope: number;
  readonly par: number;
}

/** To a tenth, a half upwards: -0.25 is -0.2. Guards against the last bit of a sum of tenths. */
const toTenth = (x: number): number => Math.floor(x * 10 + 0.5 + 1e-9) / 10;

/** (113 / slope) x (adjusted gross - course rating - the day's PCC), to a tenth. `pcc` is -1 to 3, nought when not known. */
export function scoreDifferential(adjustedGross: number, { courseRating, slope }: Rating, pcc = 0): number {
  if (!(slope >= 55 && slope <= 155)) throw new RangeError(`slope: found ${slope}; expected 55 to 155`);
  if (!(pcc >= -1 && pcc <= 3)) throw new RangeError(`PCC: found ${pcc}; expected -1 to 3`);
  return toTenth((113 / slope) * (adjustedGross - courseRating - pcc));
}

/** Strokes received on 18 holes, not rounded: index x slope / 113 + (rating - par). */
export const courseHandicap = (index: number, { courseRating, slope, par }: Rating): number =>
  (index * slope) / 113 + (courseRating - par);

/** The most that a hole counts: two over par and the strokes received there; without an index five over par. */
export const mostCounted = (par: number, received: number | undefined): number =>
  received === undefined ? par + 5 : par + 2 + received;

/** Strokes received on a hole of a stroke index from 1 to 18, of so many on the round; a plus player gives them back from the easiest hole. */
export function strokesReceived(onRound: number, strokeIndex: number): number {
  const strokes = Math.round(onRound);
  const each = Math.floor(strokes / 18);
  return each + (strokeIndex <= strokes - 18 * each ? 1 : 0);
}

/** Of so many differentials the lowest ones that count, and what is added to their mean. */
const COUNTED: readonly { readonly from: number; readonly lowest: number; readonly add: number }[] = [
  { from: 3, lowest: 1, add: -2 },
  { from: 4, lowest: 1, add: -1 },
  { from: 5, lowest: 1, add: 0 },
  { from: 6, lowest: 2, add: -1 },
  { from: 7, lowest: 2, add: 0 },
  { from: 9, lowest: 3, add: 0 },
  { from: 12, lowest: 4, add: 0 },
  { from: 15, lowest: 5, add: 0 },
  { from: 17, lowest: 6, add: 0 },
  { from: 19, lowest: 7, add: 0 },
  { from: 20, lowest: 8, add: 0 },
];

const HIGHEST = 54;

/** The index that the last 20 differentials give, newest last, before caps; `undefined` for fewer than three. */
export function indexFrom(differentials: readonly number[]): number | undefined {
  const last = differentials.slice(-20);
  const counted = COUNTED.findLast(({ from }) => last.length >= from);
  if (counted === undefined) return undefined;
  const lowest = last.toSorted((a, b) => a - b).slice(0, counted.lowest);
  const mean = lowest.reduce((sum, d) => sum + d, 0) / lowest.length;
  return Math.min(HIGHEST, toTenth(mean + counted.add));
}

/** An index held back by the caps: half of what is above 3.0 over the lowest of the last year, and never more than 5.0 over it. */
export function cappedIndex(index: number, lowIndex: number | undefined): number {
  if (lowIndex === undefined || index - lowIndex <= 3) return index;
  return toTenth(Math.min(lowIndex + 5, lowIndex + 3 + (index - lowIndex - 3) / 2));
}

/** What an exceptional score takes off each of the last 20 differentials: 1 when it is 7.0 better than the index, 2 from 10.0 on. */
export const exceptionalCut = (differential: number, index: number): 0 | 1 | 2 => {
  const better = toTenth(index - differential);
  return better >= 10 ? 2 : better >= 7 ? 1 : 0;
};
