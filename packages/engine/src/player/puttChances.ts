import { puttChanceRows, puttingPrior, type PuttChances } from './putting.ts';

/** Players who need as many putts from somewhere part them into ones, twos and threes much alike: those of this index stand for all. */
const INDEX = 15;
/** A mean beyond the longest row is made up with putts of this number. */
const MOST = 4;

let rows: readonly PuttChances[] | undefined;

/**
 * Chances of one, two, three and four putts where so many are expected: those of a distance at which a player of index 15 expects as many. Their
 * mean is what was asked for, between 1 and 4.
 */
export function puttChances(mean: number): readonly [number, number, number, number] {
  rows ??= puttChanceRows(puttingPrior({ handicapIndex: INDEX }));
  const k = rows.findIndex((row) => row.mean >= mean);
  if (k === 0) return [1, 0, 0, 0];
  const low = rows.at(k < 0 ? -1 : k - 1)!;
  const high: PuttChances = k < 0 ? { mean: MOST, chances: [0, 0, 0, 1] } : rows[k]!;
  const t = Math.min(1, (mean - low.mean) / (high.mean - low.mean));
  const between = (i: 0 | 1 | 2 | 3): number => low.chances[i] + t * (high.chances[i] - low.chances[i]);
  return [between(0), between(1), between(2), between(3)];
}
